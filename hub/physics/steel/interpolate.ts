/** Straight lines between points, for tables. */

/** A point of a table: x rises from one to the next. */
export type Point = readonly [x: number, y: number];

/**
 * y at x on straight lines between points sorted by x.
 *
 * @returns null outside the points: a table is never extrapolated
 */
export function interpolate(points: readonly Point[], x: number): number | null {
  for (let index = 0; index < points.length; index += 1) {
    const right = points[index];
    if (right === undefined || x > right[0]) continue;
    if (x === right[0]) return right[1];
    const left = points[index - 1];
    if (left === undefined) return null;
    return left[1] + ((right[1] - left[1]) * (x - left[0])) / (right[0] - left[0]);
  }
  return null;
}
