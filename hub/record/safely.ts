import { PhysicsError } from '../physics/errors.ts';

/** What a formula says, or null where it refuses the steel or the range: then nothing is claimed. */
export function safely<T>(ask: () => T): T | null {
  try {
    return ask();
  } catch (fault) {
    if (fault instanceof PhysicsError) return null;
    throw fault;
  }
}
