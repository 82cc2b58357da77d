import { PhysicsError } from '../../hub/physics/errors.ts';

/** Code of the refusal that `run` ends in; undefined when it does not refuse. */
export function codeOf(run: () => unknown): string | undefined {
  try {
    run();
    return undefined;
  } catch (error) {
    if (error instanceof PhysicsError) return error.code;
    throw error;
  }
}
