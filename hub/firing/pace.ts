import { aboveLimit, belowLimit } from '../judging/condition.ts';
import { longRate, SECONDS_PER_HOUR, shortRate } from './rates.ts';
import type { FiringCase, FiringState } from './types.ts';
import type { Measured } from './view.ts';

/** Too fast or too slow, against the schedule. These guide the next move; they are not alarms. */

type Side = 'too-fast' | 'too-slow';

/** A cooling rate may miss its limit by this share before it counts, and must return to within half of it. */
const RATE_SLACK = 0.15;
/** Slower than this a minute holds too few degrees to tell a rate from noise: read it over five. 1200 °C/h. */
const FAST_PER_SECOND = 1200 / SECONDS_PER_HOUR;

/** The rates that a segment allows, °C per second towards its target; null: no limit. */
export function rateLimits(c: FiringCase, index: number): { least: number | null; most: number | null } {
  const segment = c.schedule.segments[index];
  const perSecond = (rate: number | null) => (rate === null ? null : rate / SECONDS_PER_HOUR);
  if (segment === undefined || segment.kind === 'soak') return { least: null, most: null };
  if (segment.kind === 'ramp') {
    const rate = perSecond(segment.rateCelsiusPerHour);
    return { least: rate, most: rate };
  }
  return {
    least: perSecond(segment.minimumRateCelsiusPerHour),
    most: perSecond(segment.maximumRateCelsiusPerHour),
  };
}

/** True while the work goes too fast (or too slow) for the schedule. */
export function paceSignal(c: FiringCase, state: FiringState, view: Measured, side: Side): boolean {
  const limits = rateLimits(c, state.index);
  const limit = side === 'too-fast' ? limits.most : limits.least;
  if (limit === null) return false;
  return c.schedule.segments[state.index]?.kind === 'ramp'
    ? isOffPlan(c, state, view, side)
    : isOffRate(state, limit, side);
}

/**
 * A ramp is judged by where it is, not by its rate of the moment: a controller that switches on and off is off
 * rate all the time and on plan all the same. Off plan by the tolerance counts; back within half of it ends.
 */
function isOffPlan(c: FiringCase, state: FiringState, view: Measured, side: Side): boolean {
  const segment = c.schedule.segments[state.index];
  const track = state.segments[state.index];
  if (segment?.kind !== 'ramp' || segment.rateCelsiusPerHour === null) return false;
  if (track === undefined || track.startedAt === null || track.startCelsius === null) return false;
  const gone = ((state.at - track.startedAt) / 1000) * (segment.rateCelsiusPerHour / SECONDS_PER_HOUR);
  const planned = Math.min(gone, Math.abs(segment.targetCelsius - track.startCelsius));
  const lived =
    track.direction === 'down' ? track.startCelsius - view.hottest : view.coldest - track.startCelsius;
  const { toleranceCelsius: slack } = segment;
  const was = state.conditions[side].raised;
  return side === 'too-fast'
    ? aboveLimit(was, lived, planned + slack, slack / 2)
    : belowLimit(was, lived, planned - slack, slack / 2);
}

/** A cooling is judged by its rate over a minute, or over five when the limit is slow. */
function isOffRate(state: FiringState, limit: number, side: Side): boolean {
  const startedAt = state.segments[state.index]?.startedAt ?? null;
  const rate =
    limit < FAST_PER_SECOND
      ? startedAt === null
        ? null
        : longRate(state.longWindow, startedAt)
      : shortRate(state.coldestWindow);
  if (rate === null) return false;
  const was = state.conditions[side].raised;
  return side === 'too-fast'
    ? aboveLimit(was, -rate, limit * (1 + RATE_SLACK), (limit * RATE_SLACK) / 2)
    : belowLimit(was, -rate, limit * (1 - RATE_SLACK), (limit * RATE_SLACK) / 2);
}
