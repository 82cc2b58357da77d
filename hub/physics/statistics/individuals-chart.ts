/** Individuals and moving-range chart: one value a firing, in the order in which the firings were. */
import { PhysicsError } from '../errors.ts';
import { controlConstants } from './control-constants.ts';
import { describe, meanOf, requireValues } from './describe.ts';

/** Centre line and three-sigma limits. */
export interface ControlLimits {
  readonly centre: number;
  readonly lower: number;
  readonly upper: number;
}

/** The chart of a row of values, in their own unit. */
export interface IndividualsChart {
  readonly values: ControlLimits;
  readonly ranges: ControlLimits;
  /** One less than there are values: the range between each and the one before. */
  readonly movingRanges: readonly number[];
  /** Standard deviation from one value to the next, mean moving range / d2. */
  readonly sigmaWithin: number;
  /** Standard deviation of all values used for the limits. */
  readonly sigmaOverall: number;
  /** Each value in sigmas from the centre; 0 for all when nothing varies. */
  readonly sigmas: readonly number[];
  /** How many values the limits come from; the others are only held against them. */
  readonly baseline: number;
}

/**
 * Charts individual values: limits at mean ± 3 mean moving range / d2 with exact d2 = 2/√π (printed tables round
 * 3/d2 to 2.66), moving ranges up to D4 times their mean.
 *
 * Source: NIST/SEMATECH e-Handbook 6.3.2.2.
 *
 * @param baseline so many of the first values make the limits; default: all
 * @throws PhysicsError `bad-input` for fewer than 2 values in the baseline, or a value that is not finite
 */
export function individualsChart(
  values: readonly number[],
  baseline: number = values.length,
): IndividualsChart {
  requireBaseline(values, baseline);
  const used = values.slice(0, baseline);
  const { mean, standardDeviation } = describe(used);
  const movingRanges = values.slice(1).map((value, i) => Math.abs(value - (values[i] ?? value)));
  const meanRange = meanOf(movingRanges.slice(0, baseline - 1));
  const { d2, D3, D4 } = controlConstants(2);
  const sigmaWithin = meanRange / d2;
  return {
    values: { centre: mean, lower: mean - 3 * sigmaWithin, upper: mean + 3 * sigmaWithin },
    ranges: { centre: meanRange, lower: D3 * meanRange, upper: D4 * meanRange },
    movingRanges,
    sigmaWithin,
    sigmaOverall: standardDeviation,
    sigmas: values.map((value) => (sigmaWithin > 0 ? (value - mean) / sigmaWithin : 0)),
    baseline,
  };
}

function requireBaseline(values: readonly number[], baseline: number): void {
  requireValues(values, 2);
  if (Number.isInteger(baseline) && baseline >= 2 && baseline <= values.length) return;
  const message = `Limits come from 2 to ${values.length} of the first values, not from ${baseline}`;
  throw new PhysicsError('bad-input', message, { baseline });
}
