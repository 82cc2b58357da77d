import type { Material } from '../../../physics/heat/material.ts';
import { WatchError } from '../../../watch/errors.ts';

/**
 * Bounds of what one request may make the hub compute: judging firings shares its thread. Counted in work and
 * not in time, so that the same question always gets the same answer.
 */

/**
 * Times that a control volume may be brought to equilibrium in one request. Each costs 0.25 to 0.5 µs with its
 * share of the solve, so a request holds the thread for about 0.1 s.
 */
const MOST_SETTLED = 300_000;
/** Steps of 1 K along a measured curve; the dearest integral (a tempering with all its opinions) takes 1 µs a step. */
const MOST_CURVE_STEPS = 100_000;

/** Wraps materials so that all of them together can settle only so often. */
export function workMeter(most = MOST_SETTLED): (material: Material) => Material {
  let left = most;
  return (material) => ({
    ...material,
    settle: (enthalpyJKg, memory) => {
      left -= 1;
      if (left < 0) {
        throw new WatchError(
          'too-much-work',
          'this would hold the hub up for too long: ask for a shorter time, fewer points or a thicker piece',
        );
      }
      return material.settle(enthalpyJKg, memory);
    },
  });
}

/** Refuses a curve that swings so much that walking along it would take long. */
export function requireModestCurve<Point extends { readonly celsius: number }>(
  curve: readonly Point[],
): readonly Point[] {
  let steps = 0;
  for (const [index, point] of curve.entries()) {
    const before = curve[index - 1] ?? point;
    steps += Math.max(1, Math.abs(point.celsius - before.celsius));
  }
  if (steps <= MOST_CURVE_STEPS) return curve;
  throw new WatchError(
    'too-much-work',
    `this curve goes up and down by ${Math.round(steps)} °C in all, the bound is ${MOST_CURVE_STEPS}: send a part of it`,
  );
}

/** At most `most` of the points, evenly picked; the first and the last are always among them. */
export function evenly<Point>(points: readonly Point[], most: number): readonly Point[] {
  if (points.length <= most) return points;
  const stride = (points.length - 1) / (most - 1);
  return Array.from({ length: most }, (_, i) => points[Math.round(i * stride)]).filter(
    (point) => point !== undefined,
  );
}
