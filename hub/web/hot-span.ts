import type { ReadingStore } from '../archive/types.ts';
import type { Reading } from '../contract/reading.ts';
import type { Channel } from '../contract/shop.ts';
import { type CurvePoint, timeAbove } from '../physics/probe-time-above.ts';

/** One span of a channel against a limit. */
export interface HotSpan {
  readonly msAbove: number;
  readonly msUnknown: number;
  readonly peakCelsius: number | null;
  /** How many readings it holds: what counting it cost. */
  readonly readings: number;
}

const HOUR_MS = 3_600_000;

/**
 * Time above a limit within [from, to]. Two readings are joined by a straight line while the channel counts as
 * watching; longer stretches are unknown. The archive's own highest reading tells first whether there is anything to
 * count, so that a cold day costs no walk through its readings.
 */
export function hotSpan(
  store: ReadingStore,
  channel: Channel,
  limitCelsius: number,
  from: number,
  to: number,
): HotSpan {
  const joinedMs = channel.staleAfterSeconds * 1000;
  // Two points are the lowest and the highest good reading of the whole span.
  const extremes = store.series(channel, from, to, 2);
  const inside = curveOf(extremes.readings);
  const outside = curveOf([
    ...store.range(channel.id, from - joinedMs, from),
    ...store.range(channel.id, to, to + joinedMs),
  ]);
  const hot = [...inside, ...outside].some(({ celsius }) => celsius > limitCelsius);
  const curve = hot ? curveOf(store.range(channel.id, from - joinedMs, to + joinedMs)) : [];
  const above = timeAbove(clipped(curve, from, to, joinedMs), limitCelsius, joinedMs);
  const gaps = store.gaps(channel.id, from, to, joinedMs);
  return {
    msAbove: above.hoursAbove * HOUR_MS,
    msUnknown: gaps.reduce((sum, gap) => sum + gap.to - gap.from, 0),
    peakCelsius: inside.length === 0 ? null : Math.max(...inside.map(({ celsius }) => celsius)),
    readings: extremes.total + curve.length,
  };
}

/** Only good readings are believed; a stretch without them is bridged as long as a silence may last. */
function curveOf(readings: readonly Reading[]): CurvePoint[] {
  return readings
    .filter(({ quality }) => quality === 'good')
    .map(({ at, value }) => ({ atMs: at, celsius: value }));
}

/** The curve within [from, to], cut where a straight stretch crosses an end. */
function clipped(curve: readonly CurvePoint[], from: number, to: number, joinedMs: number): CurvePoint[] {
  const inside = curve.filter(({ atMs }) => atMs >= from && atMs <= to);
  const before = curve.findLast(({ atMs }) => atMs < from);
  const after = curve.find(({ atMs }) => atMs > to);
  const start = crossing(before, inside[0] ?? after, from, joinedMs);
  const end = crossing(inside.at(-1) ?? before, after, to, joinedMs);
  return [...start, ...inside, ...end];
}

function crossing(
  a: CurvePoint | undefined,
  b: CurvePoint | undefined,
  atMs: number,
  joinedMs: number,
): CurvePoint[] {
  if (a === undefined || b === undefined || a.atMs >= atMs || b.atMs <= atMs) return [];
  if (b.atMs - a.atMs > joinedMs) return [];
  const share = (atMs - a.atMs) / (b.atMs - a.atMs);
  return [{ atMs, celsius: a.celsius + (b.celsius - a.celsius) * share }];
}
