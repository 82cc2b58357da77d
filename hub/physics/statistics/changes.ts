/** What changed when: charts split where something was changed, the shift it brought, and slow drift. */
import { PhysicsError } from '../errors.ts';
import { describe, requireValues } from './describe.ts';
import { studentHalfWidth } from './distributions.ts';
import { type IndividualsChart, individualsChart } from './individuals-chart.ts';
import { leastSquares } from './least-squares.ts';

/** A difference or a rate, with the band that holds the true one with the probability asked for. */
export interface Estimated {
  readonly value: number;
  readonly low: number;
  readonly high: number;
  /** True when the band leaves zero out: the change is more than chance at this probability. */
  readonly sure: boolean;
}

/** The values between two changes. */
export interface Stage {
  /** First and one past the last index. */
  readonly from: number;
  readonly to: number;
  /** Null with fewer than 2 values. */
  readonly chart: IndividualsChart | null;
  /** Mean of this stage less that of the stage before; null for the first, or with fewer than 2 values on a side. */
  readonly shift: Estimated | null;
}

/**
 * Charts each stretch between known changes (a new thermocouple, a new cylinder) with its own limits.
 *
 * @param changes indices of the first value after each change, rising, from 1 to the last index
 * @param share probability of the bands of the shifts
 * @throws PhysicsError `bad-input` for changes that do not rise or lie outside
 */
export function stagedChart(
  values: readonly number[],
  changes: readonly number[],
  share = 0.95,
): readonly Stage[] {
  requireValues(values, 1);
  const edges = [0, ...changes, values.length];
  if (edges.some((edge, i) => !Number.isInteger(edge) || (i > 0 && edge <= (edges[i - 1] ?? edge)))) {
    const message = `Changes are rising whole indices from 1 to ${values.length - 1}, not ${changes.join(', ')}`;
    throw new PhysicsError('bad-input', message);
  }
  const part = (i: number): readonly number[] => values.slice(edges[i] ?? 0, edges[i + 1] ?? 0);
  return edges.slice(0, -1).map((from, i) => {
    const here = part(i);
    const before = i > 0 ? part(i - 1) : [];
    return {
      from,
      to: edges[i + 1] ?? values.length,
      chart: here.length >= 2 ? individualsChart(here) : null,
      shift: here.length >= 2 && before.length >= 2 ? shiftBetween(before, here, share) : null,
    };
  });
}

/**
 * Mean of the later values less mean of the earlier, without taking their spread as equal (Welch).
 *
 * Source: B. L. Welch, Biometrika 34, 1947; NIST/SEMATECH e-Handbook 7.3.1.
 *
 * @throws PhysicsError `bad-input` with fewer than 2 values on a side
 */
export function shiftBetween(before: readonly number[], after: readonly number[], share = 0.95): Estimated {
  requireValues(before, 2);
  requireValues(after, 2);
  const [one, two] = [describe(before), describe(after)];
  const first = one.standardDeviation ** 2 / one.count;
  const second = two.standardDeviation ** 2 / two.count;
  const value = two.mean - one.mean;
  if (first + second === 0) return { value, low: value, high: value, sure: value !== 0 };
  const freedom = (first + second) ** 2 / (first ** 2 / (one.count - 1) + second ** 2 / (two.count - 1));
  return estimated(value, studentHalfWidth(share, freedom) * Math.sqrt(first + second));
}

/**
 * Straight drift of values over any scale (firing number, days), value per unit of `at`.
 *
 * @throws PhysicsError `bad-input` with fewer than 3 values; `no-solution` when `at` never changes
 */
export function drift(at: readonly number[], values: readonly number[], share = 0.95): Estimated {
  const fit = leastSquares({ rows: at.map((x) => [x]), y: values });
  const error = fit.standardErrors[1] ?? Number.NaN;
  return estimated(fit.coefficients[1] ?? Number.NaN, studentHalfWidth(share, fit.freedom) * error);
}

function estimated(value: number, half: number): Estimated {
  return { value, low: value - half, high: value + half, sure: Math.abs(value) > half };
}
