/** Tabular cumulative sums: they see a small lasting shift, and tell when it began. */
import { requireRange } from '../errors.ts';
import { requireValues } from './describe.ts';

export interface CusumQuestion {
  readonly values: readonly number[];
  readonly target: number;
  /** Slack: shifts of less than twice this are let pass. Same unit as the values, 0 or more. */
  readonly slack: number;
  /** A sum beyond this is a signal. Same unit, above 0. */
  readonly decision: number;
}

/** A shift that the sums found. */
export interface CusumSignal {
  readonly side: 'high' | 'low';
  /** Index at which the sum passed the decision line. */
  readonly index: number;
  /** Index of the first value of the climb: where the shift most likely began. */
  readonly since: number;
}

export interface CusumChart {
  readonly high: readonly number[];
  readonly low: readonly number[];
  /** Plain running sum of the distances from the target. */
  readonly running: readonly number[];
  /** The first signal of each climb; a sum that stays beyond the line is told once. */
  readonly signals: readonly CusumSignal[];
}

/**
 * Charts cumulative sums of values above and below a target.
 *
 * Source: NIST/SEMATECH e-Handbook 6.3.2.3 (tabular CUSUM, from memory). The start of the shift is the value after
 * the sum was last at zero (D. C. Montgomery, Introduction to Statistical Quality Control, from memory).
 *
 * @throws PhysicsError `out-of-range` for slack or decision; `bad-input` for the values
 */
export function cusumChart(question: CusumQuestion): CusumChart {
  const { values, target, slack, decision } = question;
  requireValues([...values, target], 1);
  requireRange('slack', slack, 0, Number.MAX_VALUE, '');
  requireRange('decision', decision, Number.MIN_VALUE, Number.MAX_VALUE, '');
  const high = oneSided(values.map((value) => value - target - slack));
  const low = oneSided(values.map((value) => target - value - slack));
  let total = 0;
  const running = values.map((value) => {
    total += value - target;
    return total;
  });
  const signals = [...signalsOf(high, 'high', decision), ...signalsOf(low, 'low', decision)];
  return { high, low, running, signals: signals.sort((one, two) => one.index - two.index) };
}

function oneSided(steps: readonly number[]): number[] {
  let total = 0;
  return steps.map((step) => {
    total = Math.max(0, total + step);
    return total;
  });
}

function signalsOf(sums: readonly number[], side: CusumSignal['side'], decision: number): CusumSignal[] {
  return [...sums.keys()]
    .filter((index) => (sums[index] ?? 0) > decision && !((sums[index - 1] ?? 0) > decision))
    .map((index) => ({ side, index, since: sums.slice(0, index).lastIndexOf(0) + 1 }));
}
