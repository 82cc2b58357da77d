/** A control chart as places on a drawing. Pure; values in the unit that is shown, places in CSS pixels. */

/** Limits of the values from one index to before another. */
export interface ControlLines {
  readonly from: number;
  readonly to: number;
  readonly centre: number;
  readonly lower: number;
  readonly upper: number;
}

export interface ControlPicture {
  readonly values: readonly number[];
  readonly lines: readonly ControlLines[];
  readonly tolerance: { readonly lower: number | null; readonly upper: number | null } | null;
  /** Indices of the first value after each change. */
  readonly changes: readonly number[];
  /** Of each value: its number in the table of marked ones; null: no test fires. */
  readonly marks: readonly (number | null)[];
}

export interface Frame {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** The ends of the value axis: every value and limit is on it, and a tolerance as long as it is not far away. */
export function valueEnds({ values, lines, tolerance }: ControlPicture): { low: number; high: number } {
  const near = [...values, ...lines.flatMap(({ lower, upper }) => [lower, upper])];
  const [low, high] = [Math.min(...near), Math.max(...near)];
  const reach = Math.max(high - low, 1);
  const limits = [tolerance?.lower ?? null, tolerance?.upper ?? null].filter((limit) => limit !== null);
  // A tolerance ten times as wide as the scatter would press the chart into a line.
  const shown = limits.filter((limit) => limit > low - reach && limit < high + reach);
  const all = [...near, ...shown];
  const room = 0.08 * Math.max(Math.max(...all) - Math.min(...all), 1e-6);
  return { low: Math.min(...all) - room, high: Math.max(...all) + room };
}

/** Where the n-th of `count` values stands. */
export function placeX(index: number, count: number, { left, right }: Frame): number {
  return count <= 1 ? (left + right) / 2 : left + ((right - left) * (index + 0.5)) / count;
}

/** Where the limits of a stretch begin and end: half way to the values beside it. */
export function stretchX(
  { from, to }: Pick<ControlLines, 'from' | 'to'>,
  count: number,
  frame: Frame,
): [number, number] {
  return [
    from === 0 ? frame.left : changeX(from, count, frame),
    to >= count ? frame.right : changeX(to, count, frame),
  ];
}

/** Where a change stands: half way between the value before and its own. */
export function changeX(index: number, count: number, frame: Frame): number {
  return (placeX(index - 1, count, frame) + placeX(index, count, frame)) / 2;
}

export function placeY(value: number, ends: { low: number; high: number }, { top, bottom }: Frame): number {
  return bottom - ((value - ends.low) / (ends.high - ends.low)) * (bottom - top);
}

/** A number for each value that a test marks, in order; null for the others. */
export function numbered(marked: readonly boolean[]): (number | null)[] {
  let next = 0;
  return marked.map((yes) => {
    if (!yes) return null;
    next += 1;
    return next;
  });
}
