import { lineTrend, type Sample } from '../judging/slope.ts';

/** Rates out of the two windows that a firing keeps. */

export const SHORT_SPAN_MS = 60_000;
/** Bounds the window at 121 samples, however fast a node sends. */
export const SHORT_SPACING_MS = 500;
export const LONG_SPAN_MS = 300_000;
export const LONG_SPACING_MS = 5000;
/** A trend over less than this is noise. */
const LEAST_SHORT_SPAN_MS = 15_000;
const LEAST_LONG_SPAN_MS = 280_000;

export const SECONDS_PER_HOUR = 3600;

function span(window: readonly Sample[]): number {
  const first = window[0];
  const last = window.at(-1);
  return first === undefined || last === undefined ? 0 : last.at - first.at;
}

/** Rate over about five minutes inside one segment, °C per second; null until there is that much. */
export function longRate(window: readonly Sample[], segmentStartedAt: number): number | null {
  const first = window[0];
  if (first === undefined || first.at < segmentStartedAt || span(window) < LEAST_LONG_SPAN_MS) return null;
  return lineTrend(window)?.perSecond ?? null;
}

/** Rate over the last minute, °C per second; null until there are at least 15 s of it. */
export function shortRate(window: readonly Sample[]): number | null {
  if (span(window) < LEAST_SHORT_SPAN_MS) return null;
  return lineTrend(window)?.perSecond ?? null;
}

/** True when the window is long enough to read a trend from. */
export function isLongEnough(window: readonly Sample[]): boolean {
  return span(window) >= LEAST_SHORT_SPAN_MS;
}
