import { isCounting } from './advance.ts';
import { bandOf } from './limits.ts';
import { plannedMs } from './plan.ts';
import { longRate, shortRate } from './rates.ts';
import type { FiringCase, FiringState } from './types.ts';
import { type Measured, viewOf } from './view.ts';

/** When things will probably happen, epoch ms; null when nobody can tell. */
export interface Estimates {
  readonly arrivalAt: number | null;
  readonly endsAt: number | null;
  readonly firingEndsAt: number | null;
}

/** Slower than this the arrival is anybody's guess: 18 °C/h. */
const LEAST_PER_SECOND = 0.005;

/** The rate to estimate with: over five minutes of this segment when there are, else over the last minute. */
export function currentRate(state: FiringState): number | null {
  const startedAt = state.segments[state.index]?.startedAt ?? null;
  const long = startedAt === null ? null : longRate(state.longWindow, startedAt);
  return long ?? shortRate(state.coldestWindow);
}

/** °C still to go to where the running segment wants to be, and which way; null: it is there. */
function toGo(c: FiringCase, state: FiringState, view: Measured): number | null {
  const segment = c.schedule.segments[state.index];
  if (segment === undefined) return null;
  if (segment.kind === 'cool') return Math.min(0, segment.targetCelsius - view.hottest) || null;
  const band = bandOf(segment);
  if (band === null) return null;
  if (view.coldest < band.low) return band.low - view.coldest;
  return view.hottest > band.high ? band.high - view.hottest : null;
}

function arrival(c: FiringCase, state: FiringState): number | null {
  const view = viewOf(c, state);
  if (view.kind !== 'seen') return null;
  const distance = toGo(c, state, view);
  if (distance === null) return state.at;
  const rate = currentRate(state);
  if (rate === null || Math.abs(rate) < LEAST_PER_SECOND || rate > 0 !== distance > 0) return null;
  return Math.round(state.at + (distance / rate) * 1000);
}

function segmentEnd(c: FiringCase, state: FiringState, arrivalAt: number | null): number | null {
  const segment = c.schedule.segments[state.index];
  const track = state.segments[state.index];
  if (segment === undefined || track === undefined) return null;
  if (segment.kind !== 'soak') return arrivalAt;
  const missing = Math.max(0, segment.durationSeconds * 1000 - track.soakMs);
  if (isCounting(c, state)) return state.at + missing;
  return arrivalAt === null ? null : arrivalAt + missing;
}

/** Estimates at the instant the state stands at. */
export function estimate(c: FiringCase, state: FiringState): Estimates {
  const running = state.segments[state.index]?.state === 'running' && state.finishedAt === null;
  if (!running) return { arrivalAt: null, endsAt: null, firingEndsAt: null };
  const arrivalAt = arrival(c, state);
  const endsAt = segmentEnd(c, state, arrivalAt);
  if (endsAt === null) return { arrivalAt, endsAt, firingEndsAt: null };
  let total = endsAt;
  let from = c.schedule.segments[state.index]?.targetCelsius ?? 0;
  for (let i = state.index + 1; i < c.schedule.segments.length; i++) {
    total += plannedMs(c, state, i, from);
    from = c.schedule.segments[i]?.targetCelsius ?? from;
  }
  return { arrivalAt, endsAt, firingEndsAt: Math.round(total) };
}
