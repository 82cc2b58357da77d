/** Shared by the tests of hub/physics/steel. */
import fc from 'fast-check';
import { PhysicsError } from '../../../hub/physics/errors.ts';
import type { Composition } from '../../../hub/physics/steel/composition.ts';
import type { Answer } from '../../../hub/physics/steel/estimate.ts';

/** The number of an answer that must have one. */
export function numberOf(answer: Answer): number {
  if (answer.value === null) throw new Error(`no estimate: ${answer.reason.message}`);
  return answer.value;
}

/** Codes of the flags on an answer. */
export function codes(answer: Answer): readonly string[] {
  return answer.flags.map((item) => item.code);
}

/** Code of the PhysicsError that a call throws, or null when it throws none. */
export function refusal(call: () => unknown): string | null {
  try {
    call();
    return null;
  } catch (error) {
    if (error instanceof PhysicsError) return error.code;
    throw error;
  }
}

function upTo(max: number): fc.Arbitrary<number> {
  return fc.double({ min: 0, max, noNaN: true });
}

/** Steels from plain to well beyond what the formulas cover. */
export const anySteel: fc.Arbitrary<Composition> = fc.record({
  C: fc.double({ min: 0.02, max: 1.6, noNaN: true }),
  Mn: upTo(2),
  Si: upTo(2.5),
  Cr: upTo(6),
  Ni: upTo(4),
  Mo: upTo(2),
  V: upTo(1),
  W: upTo(1),
  P: upTo(0.05),
});

/** Steels inside the reach of the tempering regression. */
export const temperableSteel: fc.Arbitrary<Composition> = fc.record({
  C: fc.double({ min: 0.3, max: 1.3, noNaN: true }),
  Mn: upTo(1.4),
  Si: upTo(2),
  Cr: upTo(1.6),
  Mo: upTo(0.3),
  V: upTo(0.2),
});
