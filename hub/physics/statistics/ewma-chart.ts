/** Exponentially weighted moving average: a chart that sees a small lasting shift sooner than single points do. */
import { requireRange } from '../errors.ts';
import { requireValues } from './describe.ts';
import type { ControlLimits } from './individuals-chart.ts';

export interface EwmaQuestion {
  readonly values: readonly number[];
  /** Where the average starts, and the centre line: the target or the mean of the past. */
  readonly target: number;
  /** Standard deviation of single values, above 0. */
  readonly sigma: number;
  /** Weight of the newest value, above 0, at most 1. Default 0.3, as in the source. */
  readonly weight?: number;
  /** Limits in standard deviations of the average. Default 3. */
  readonly width?: number;
}

export interface EwmaChart {
  readonly averages: readonly number[];
  /** Limits once the start is forgotten: centre ± width sigma √(w / (2 - w)). */
  readonly limits: ControlLimits;
  /** Limits that are narrower at the start, one for every value. */
  readonly earlyLimits: readonly ControlLimits[];
  /** Indices of averages outside `limits`. */
  readonly outside: readonly number[];
}

/**
 * Charts the moving average of single values.
 *
 * Source: NIST/SEMATECH e-Handbook 6.3.2.4 (limits for a long row); the exact early limits carry the factor
 * √(1 - (1 - w)^2t) of the same place.
 *
 * @throws PhysicsError `out-of-range` for a weight, sigma or width that cannot be; `bad-input` for the values
 */
export function ewmaChart(question: EwmaQuestion): EwmaChart {
  const { values, target, sigma, weight = 0.3, width = 3 } = question;
  requireValues([...values, target], 1);
  requireRange('weight', weight, Number.MIN_VALUE, 1, '');
  requireRange('sigma', sigma, Number.MIN_VALUE, Number.MAX_VALUE, '');
  requireRange('width', width, Number.MIN_VALUE, 10, 'sigmas');
  let average = target;
  const averages = values.map((value) => {
    average = weight * value + (1 - weight) * average;
    return average;
  });
  const spread = width * sigma * Math.sqrt(weight / (2 - weight));
  const limits = around(target, spread);
  const earlyLimits = values.map((_, i) =>
    around(target, spread * Math.sqrt(1 - (1 - weight) ** (2 * (i + 1)))),
  );
  const outside = [...averages.keys()].filter((i) => {
    const value = averages[i] ?? target;
    return value > limits.upper || value < limits.lower;
  });
  return { averages, limits, earlyLimits, outside };
}

function around(centre: number, spread: number): ControlLimits {
  return { centre, lower: centre - spread, upper: centre + spread };
}
