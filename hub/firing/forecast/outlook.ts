import type { FiringForecast, ForetoldInstant } from '../../contract/firing.ts';
import { crossingCourse, type Times, timesOf } from '../../physics/forecast/crossing.ts';
import type { Forecaster } from '../../physics/forecast/forecaster.ts';
import { isCounting } from '../advance.ts';
import type { CoreTimes } from '../estimate.ts';
import { type Band, bandOf } from '../limits.ts';
import { isOnCore } from '../load/load.ts';
import type { FiringCase, FiringState } from '../types.ts';
import { isAway, viewOf } from '../view.ts';
import { secondsAhead } from './ahead.ts';
import { outlookOf } from './snapshot.ts';
import { isFollowingPlan } from './trust.ts';

/**
 * What the wall draws and says of the future. Worked out when it is asked for, never on the way: an outlook costs as
 * much as twenty readings.
 */

/** What the forecast needs besides the state: the core's way, worked out once for all who ask. */
export interface Foresight {
  readonly core: CoreTimes | null;
}

/** The soak that runs, or that begins where the running ramp ends. */
function soakAhead(c: FiringCase, state: FiringState): { index: number; missingMs: number } | null {
  const at = c.schedule.segments[state.index]?.kind === 'ramp' ? state.index + 1 : state.index;
  const segment = c.schedule.segments[at];
  if (segment?.kind !== 'soak') return null;
  const gone = state.segments[at]?.soakMs ?? 0;
  return { index: at, missingMs: Math.max(0, segment.durationSeconds * 1000 - gone) };
}

/** The forecast at the instant the state stands at; null while nothing can be foretold. */
export function forecastOf(c: FiringCase, state: FiringState, { core }: Foresight): FiringForecast | null {
  const segment = c.schedule.segments[state.index];
  if (state.finishedAt !== null || segment === undefined || isAway(segment)) return null;
  const view = viewOf(c, state);
  if (view.kind !== 'seen') return null;
  const place = c.watched.findIndex(({ id }) => id === view.coldestChannel);
  const forecaster = state.snapshot.index === state.index ? state.snapshot.forecasters[place] : null;
  if (forecaster == null) return null;
  const { start, end } = soakTimes(c, state, forecaster, core);
  return {
    points: pointsUntil(c, state, forecaster, end?.at ?? null),
    soakStartsAt: start,
    soakEndsAt: end,
    limitInSeconds: secondsAhead(state),
    limitProbability: Math.round(state.ahead.probability * 1000) / 1000,
  };
}

interface SoakTimes {
  readonly start: ForetoldInstant | null;
  readonly end: ForetoldInstant | null;
}

function soakTimes(
  c: FiringCase,
  state: FiringState,
  forecaster: Forecaster,
  core: CoreTimes | null,
): SoakTimes {
  const soak = soakAhead(c, state);
  const band = bandOf(c.schedule.segments[soak?.index ?? -1]);
  if (soak === null || band === null) return { start: null, end: null };
  if (isCounting(c, state)) {
    const at = state.at + soak.missingMs;
    // The clock cannot be full sooner; how often it will stand nobody can say.
    return { start: null, end: { at, low: at, high: null } };
  }
  const start = !isOnCore(c) ? byAir(state, forecaster, band) : core === null ? null : byCore(core);
  if (start === null) return { start: null, end: null };
  const later = (instant: number | null) => (instant === null ? null : instant + soak.missingMs);
  return { start, end: { at: start.at + soak.missingMs, low: later(start.low), high: later(start.high) } };
}

function byCore({ likely, earliest, latest }: CoreTimes): ForetoldInstant | null {
  return likely === null ? null : { at: likely, low: earliest, high: latest };
}

/** The soak clock goes by what the probe shows. */
function byAir(state: FiringState, forecaster: Forecaster, band: Band): ForetoldInstant | null {
  const points = outlookOf(forecaster, 'probe').filter(({ atMs }) => atMs >= state.at);
  const down = (points[0]?.celsius ?? band.low) > band.high;
  const course = down
    ? crossingCourse(points, band.high, 'falling')
    : crossingCourse(points, band.low, 'rising');
  return instantOf(timesOf(course));
}

function instantOf({ earliestMs, likelyMs, latestMs }: Times): ForetoldInstant | null {
  return likelyMs === null ? null : { at: likelyMs, low: earliestMs, high: latestMs };
}

/**
 * The points of the running segment. Nobody's next act is foretold: a soak's end cuts them, and so does the target
 * of a ramp whose controller will do there what it was set to.
 */
function pointsUntil(
  c: FiringCase,
  state: FiringState,
  forecaster: Forecaster,
  soakEndsAt: number | null,
): FiringForecast['points'] {
  const segment = c.schedule.segments[state.index];
  const points = outlookOf(forecaster, 'body').filter(({ atMs }) => atMs >= state.at);
  const cut = points.findIndex(({ atMs, celsius }) => {
    if (segment?.kind === 'soak') return soakEndsAt !== null && atMs > soakEndsAt;
    if (segment?.kind === 'cool') return celsius < segment.targetCelsius;
    return isAtTarget(c, state, forecaster, celsius);
  });
  const kept = cut < 0 ? points : points.slice(0, cut);
  return kept.map(({ atMs, celsius, low, high }) => ({
    at: Math.round(atMs),
    celsius: tenth(celsius),
    low: tenth(low),
    high: tenth(high),
  }));
}

function isAtTarget(c: FiringCase, state: FiringState, forecaster: Forecaster, celsius: number): boolean {
  const segment = c.schedule.segments[state.index];
  if (segment?.kind !== 'ramp' || !isFollowingPlan(c, state, forecaster)) return false;
  return state.segments[state.index]?.direction === 'down'
    ? celsius < segment.targetCelsius
    : celsius > segment.targetCelsius;
}

const tenth = (celsius: number): number => Math.round(celsius * 10) / 10;
