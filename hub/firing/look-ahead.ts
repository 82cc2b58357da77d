import {
  curveTrend,
  lineTrend,
  riseWithin,
  type Sample,
  secondsToRise,
  type Trend,
} from '../judging/slope.ts';
import type { Band } from './limits.ts';
import { isLongEnough, SECONDS_PER_HOUR } from './rates.ts';
import type { FiringCase, FiringState } from './types.ts';
import type { Measured } from './view.ts';

/**
 * Overshoot ahead: will the hottest watched channel cross the upper limit soon? A good approach slows down, so
 * the trend is read with its curvature; and whoever holds the plan (an oven's controller, a ramp at its planned
 * rate) is trusted up to the target.
 */

/** A rate below this many of its standard errors is noise. */
const SURE = 3;
/** A ramp that is at most this much faster than planned is following its plan, on-off controllers included. */
const FOLLOWS = 1.5;
/**
 * The last seconds of a rise, in which a parabola's end is checked against a line. A fast rise stands out of the
 * noise in fewer seconds, and has to: there is less time.
 */
const RECENT_MS = 25_000;
const RECENT_FAST_MS = 12_000;
const FAST_PER_SECOND = 0.3;

/** What is rising now is read from its lowest point on: before that lies a door that was opened, or a dip. */
function sinceLowest(window: readonly Sample[]): readonly Sample[] {
  let lowest = 0;
  for (const [i, sample] of window.entries()) {
    if (sample.value < (window[lowest]?.value ?? sample.value)) lowest = i;
  }
  return window.slice(lowest);
}

/**
 * No line through the last seconds can be steeper than this, °C per second: 1.5 times the range over the span is
 * the steepest that least squares gives for evenly spaced samples. Looked at first, because it costs next to
 * nothing and settles nearly every instant of a soak.
 */
function mostRate(window: readonly Sample[]): number {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (const { value } of window) {
    if (value < low) low = value;
    if (value > high) high = value;
  }
  return (1.5 * (high - low) * 1000) / RECENT_FAST_MS;
}

function isSure(trend: Trend): boolean {
  return trend.perSecond > 0 && trend.perSecond > SURE * trend.error;
}

function recentTrend(rise: readonly Sample[], at: number): Trend | null {
  const over = (ms: number) => lineTrend(rise.filter((sample) => sample.at >= at - ms));
  const slow = over(RECENT_MS);
  return slow !== null && slow.perSecond > FAST_PER_SECOND ? (over(RECENT_FAST_MS) ?? slow) : slow;
}

/**
 * The trend of the hottest channel at this instant; null while there is too little of it, or it does not
 * surely rise. A parabola swings at its end, so the rate is never more than that of the last seconds.
 */
export function risingTrend(state: FiringState): Trend | null {
  const rise = sinceLowest(state.hottestWindow);
  if (!isLongEnough(rise)) return null;
  const recent = recentTrend(rise, state.at);
  const curve = curveTrend(rise) ?? recent;
  if (recent === null || curve === null || !isSure(recent) || !isSure(curve)) return null;
  return { ...curve, perSecond: Math.min(curve.perSecond, recent.perSecond) };
}

/** Seconds until the upper limit is crossed, or null when it is not, or when nothing needs to be said yet. */
export function overshootAheadSeconds(
  c: FiringCase,
  state: FiringState,
  view: Measured,
  band: Band,
): number | null {
  const distance = band.high - view.hottest;
  const ahead = c.settings.overshootAheadSeconds;
  if (distance < 0 || mostRate(state.hottestWindow) * ahead < distance) return null;
  const trend = risingTrend(state);
  if (trend === null) return null;
  if (view.hottest < band.target && isControlled(c, state, trend)) return null;
  if (riseWithin(trend, ahead) < distance) return null;
  return secondsToRise(trend, distance);
}

/** True when something else than the smith's hand follows a plan here. */
function isControlled(c: FiringCase, state: FiringState, trend: Trend): boolean {
  const hasController = c.furnaceKind !== 'gas-forge';
  for (let i = state.index; i >= 0; i--) {
    const segment = c.schedule.segments[i];
    if (segment?.kind !== 'ramp') continue;
    if (segment.rateCelsiusPerHour === null) return hasController;
    return trend.perSecond * SECONDS_PER_HOUR <= segment.rateCelsiusPerHour * FOLLOWS;
  }
  return hasController;
}
