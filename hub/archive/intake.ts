import type { Context } from './context.ts';
import { IntakeBatch, type IntakeParts } from './intake-batch.ts';
import type { Archive } from './types.ts';

/** One transaction for a group of payloads: all of it is kept, or none. */
export function intakePart({ write }: Context, parts: IntakeParts): Pick<Archive, 'commitIntake'> {
  return {
    commitIntake: (writes) =>
      write(() => {
        const batch = new IntakeBatch(parts);
        for (const one of writes) batch.take(one);
        return batch.finish();
      }),
  };
}
