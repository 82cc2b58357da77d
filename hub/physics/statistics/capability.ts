/** Capability: how the spread of a process compares with its tolerance. */
import { PhysicsError } from '../errors.ts';
import type { IndividualsChart } from './individuals-chart.ts';

/** The tolerance; null where there is no limit on that side. Same unit as the values. */
export interface ToleranceLimits {
  readonly lower: number | null;
  readonly upper: number | null;
}

/** Capability with one standard deviation. Values of 1.33 or more are commonly wanted. */
export interface CapabilityIndices {
  /** Tolerance / 6 sigma; null unless there are limits on both sides. */
  readonly potential: number | null;
  /** Distance of the mean from the upper and from the lower limit / 3 sigma; null without that limit. */
  readonly upper: number | null;
  readonly lower: number | null;
  /** The smaller of both: what is left after the mean has moved off the middle. Below 0: the mean is outside. */
  readonly actual: number;
  /** How far the mean lies off the middle, in half tolerances; null unless there are limits on both sides. */
  readonly offCentre: number | null;
}

/** Short-term (Cp, Cpk) and long-term (Pp, Ppk) capability of a charted process. */
export interface Capability {
  /** Cp and Cpk: standard deviation from one value to the next. */
  readonly within: CapabilityIndices;
  /** Pp and Ppk: standard deviation of all values, drifts and jumps included. */
  readonly overall: CapabilityIndices;
  readonly count: number;
  /** True below 25 values: the indices are then hardly more than a guess. Common practice, no single source. */
  readonly fewValues: boolean;
}

const ENOUGH_VALUES = 25;

/**
 * Indices of one mean and standard deviation.
 *
 * Source: NIST/SEMATECH e-Handbook 6.1.6.
 *
 * @param sigma above 0, same unit as the limits
 * @throws PhysicsError `bad-input` without any limit, or with the lower one not below the upper;
 *   `not-applicable` when nothing varies
 */
export function capabilityIndices(mean: number, sigma: number, limits: ToleranceLimits): CapabilityIndices {
  requireLimits(limits);
  if (!(sigma > 0)) {
    throw new PhysicsError('not-applicable', 'Values that do not vary have no capability', { sigma });
  }
  const upper = limits.upper === null ? null : (limits.upper - mean) / (3 * sigma);
  const lower = limits.lower === null ? null : (mean - limits.lower) / (3 * sigma);
  const actual = Math.min(upper ?? Number.POSITIVE_INFINITY, lower ?? Number.POSITIVE_INFINITY);
  if (limits.upper === null || limits.lower === null) {
    return { potential: null, upper, lower, actual, offCentre: null };
  }
  const width = limits.upper - limits.lower;
  const offCentre = Math.abs((limits.upper + limits.lower) / 2 - mean) / (width / 2);
  return { potential: width / (6 * sigma), upper, lower, actual, offCentre };
}

/**
 * Capability of a charted process. It speaks of the future only while the chart shows no special cause: look at
 * `ruleFindings` first.
 *
 * @throws PhysicsError as `capabilityIndices`
 */
export function capability(chart: IndividualsChart, limits: ToleranceLimits): Capability {
  const { centre } = chart.values;
  return {
    within: capabilityIndices(centre, chart.sigmaWithin, limits),
    overall: capabilityIndices(centre, chart.sigmaOverall, limits),
    count: chart.baseline,
    fewValues: chart.baseline < ENOUGH_VALUES,
  };
}

function requireLimits({ lower, upper }: ToleranceLimits): void {
  if (lower === null && upper === null) {
    throw new PhysicsError('bad-input', 'Capability wants a lower limit, an upper limit or both');
  }
  if (lower === null || upper === null || lower < upper) return;
  throw new PhysicsError('bad-input', `The lower limit ${lower} is not below the upper limit ${upper}`);
}
