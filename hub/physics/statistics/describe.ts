/** Mean, standard deviation and lag-1 autocorrelation, by algorithms that keep their digits. */
import { PhysicsError } from '../errors.ts';

/** A row of numbers, described. */
export interface Description {
  readonly count: number;
  readonly mean: number;
  /** With n - 1 below the root; 0 for a single value. */
  readonly standardDeviation: number;
  /**
   * How much each value resembles the one before, -1 to 1; null when nothing varies. High values (readings taken
   * faster than the furnace can change) make control limits too narrow: thin the data first.
   */
  readonly lagOneAutocorrelation: number | null;
}

/**
 * Describes a row of numbers, in any unit, in the order in which they came.
 *
 * The sum is compensated and the squares are taken about the mean: the textbook sum of squares has no digit left
 * when the spread is small beside the mean (NIST StRD NumAcc4), and a furnace temperature is such a number.
 *
 * @throws PhysicsError `bad-input` for no values, or one that is not finite
 */
export function describe(values: readonly number[]): Description {
  requireValues(values, 1);
  const mean = meanOf(values);
  const off = values.map((value) => value - mean);
  const squares = sum(off.map((d) => d * d));
  // What rounding left in the deviations themselves (Chan, Golub and LeVeque 1983).
  const corrected = Math.max(0, squares - sum(off) ** 2 / values.length);
  const products = sum(off.slice(1).map((d, i) => d * (off[i] ?? 0)));
  return {
    count: values.length,
    mean,
    standardDeviation: values.length > 1 ? Math.sqrt(corrected / (values.length - 1)) : 0,
    lagOneAutocorrelation: squares > 0 ? products / squares : null,
  };
}

/** Mean of at least one number. */
export function meanOf(values: readonly number[]): number {
  const first = sum(values) / values.length;
  // A second pass over what is left takes the rounding out of the division.
  return first + sum(values.map((value) => value - first)) / values.length;
}

/** Sum with Neumaier's compensation: the digits that a large partial sum would drop are kept beside it. */
export function sum(values: readonly number[]): number {
  let total = 0;
  let lost = 0;
  for (const value of values) {
    const next = total + value;
    lost += Math.abs(total) >= Math.abs(value) ? total - next + value : value - next + total;
    total = next;
  }
  return total + lost;
}

/**
 * Refuses too few values and values that are no numbers.
 *
 * @throws PhysicsError `bad-input` telling the index of the first that is not finite
 */
export function requireValues(values: readonly number[], least: number): void {
  if (values.length < least) {
    throw new PhysicsError('bad-input', `This wants ${least} values or more, got ${values.length}`);
  }
  const index = values.findIndex((value) => !Number.isFinite(value));
  if (index < 0) return;
  throw new PhysicsError('bad-input', `Value ${index} is not a number: ${values[index]}`, { index });
}
