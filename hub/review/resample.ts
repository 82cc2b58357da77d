import type { Gap, Reading } from '../contract/reading.ts';

/** A curve as the archive gives it: readings in time order, and the stretches in which nothing was heard. */
export interface Curve {
  readonly readings: readonly Pick<Reading, 'at' | 'value' | 'quality'>[];
  readonly gaps: readonly Gap[];
}

/**
 * Values at instants, straight between the good readings on both sides. Never joined over a gap, never carried on
 * past an end: there the value is null.
 *
 * @param instants epoch ms, rising where they are not null
 */
export function resample({ readings, gaps }: Curve, instants: readonly (number | null)[]): (number | null)[] {
  const good = readings.filter(({ quality }) => quality === 'good');
  let next = 0;
  let gap = 0;
  return instants.map((at) => {
    if (at === null) return null;
    while (gap < gaps.length && (gaps[gap]?.to ?? 0) <= at) gap += 1;
    const inGap = gaps[gap];
    while (next < good.length && (good[next]?.at ?? 0) < at) next += 1;
    const after = good[next];
    if (after?.at === at) return after.value;
    if (inGap !== undefined && at > inGap.from) return null;
    return between(good[next - 1], after, at);
  });
}

type Point = { readonly at: number; readonly value: number };

function between(before: Point | undefined, after: Point | undefined, at: number): number | null {
  if (before === undefined || after === undefined) return null;
  const share = (at - before.at) / (after.at - before.at);
  return before.value + share * (after.value - before.value);
}

/** The lowest of several curves, entry by entry; null where any of them is not known: nobody knows which was coldest. */
export function coldest(curves: readonly (readonly (number | null)[])[]): (number | null)[] {
  const [first, ...others] = curves;
  return (first ?? []).map((value, index) =>
    others.reduce<number | null>((low, curve) => {
      const other = curve[index] ?? null;
      return low === null || other === null ? null : Math.min(low, other);
    }, value),
  );
}
