import { isCounting } from './advance.ts';
import type { Snapshot } from './forecast/snapshot.ts';
import { type Band, bandOf } from './limits.ts';
import { type CoreArrival, coreArrival } from './load/arrival.ts';
import { isOnCore } from './load/load.ts';
import { plannedMs } from './plan.ts';
import { longRate, shortRate } from './rates.ts';
import type { FiringCase, FiringState } from './types.ts';
import { type Measured, viewOf } from './view.ts';

/** When things will probably happen, epoch ms; null when nobody can tell. */
export interface Estimates {
  readonly arrivalAt: number | null;
  readonly endsAt: number | null;
  readonly firingEndsAt: number | null;
  /** When the core comes inside the running or the next soak; null: no piece known, or it counts already. */
  readonly core: CoreTimes | null;
}

/** Instants, epoch ms; null: not within three hours. */
export interface CoreTimes {
  readonly likely: number | null;
  readonly earliest: number | null;
  readonly latest: number | null;
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

/** The soak that the core is awaited for: the running one, or the one behind the running ramp. */
function bandAhead(c: FiringCase, state: FiringState): Band | null {
  const ahead = c.schedule.segments[state.index]?.kind === 'ramp' ? state.index + 1 : state.index;
  const segment = c.schedule.segments[ahead];
  return segment?.kind === 'soak' ? bandOf(segment) : null;
}

/** Answers by the snapshot that they belong to: the wall asks more often than anything changes. */
const arrivals = new WeakMap<Snapshot, CoreArrival | null>();

function coreAhead(c: FiringCase, state: FiringState): CoreTimes | null {
  const { snapshot } = state;
  if (!isOnCore(c) || isCounting(c, state) || snapshot.index !== state.index) return null;
  const known = arrivals.get(snapshot);
  const found = known === undefined ? arrivalIn(c, state) : known;
  arrivals.set(snapshot, found);
  if (found === null) return null;
  const at = (seconds: number | null) =>
    seconds === null ? null : Math.round(Math.max(state.at, snapshot.at + seconds * 1000));
  return { likely: at(found.likely), earliest: at(found.earliest), latest: at(found.latest) };
}

function arrivalIn(c: FiringCase, state: FiringState): CoreArrival | null {
  const { chamber, load, perSecond } = state.snapshot;
  const band = bandAhead(c, state);
  if (band === null || chamber === null) return null;
  const celsius = chamber.coldest;
  const there = celsius >= band.low && celsius <= band.high;
  return coreArrival(c, load, band, {
    celsius,
    perSecond: there ? 0 : (perSecond ?? 0),
    towards: there ? celsius : band.target,
  });
}

function segmentEnd(
  c: FiringCase,
  state: FiringState,
  arrivalAt: number | null,
  core: CoreTimes | null,
): number | null {
  const segment = c.schedule.segments[state.index];
  const track = state.segments[state.index];
  if (segment === undefined || track === undefined) return null;
  if (segment.kind !== 'soak') return arrivalAt;
  const missing = Math.max(0, segment.durationSeconds * 1000 - track.soakMs);
  if (isCounting(c, state)) return state.at + missing;
  if (isOnCore(c)) return core?.likely == null ? null : core.likely + missing;
  return arrivalAt === null ? null : arrivalAt + missing;
}

/** Estimates at the instant the state stands at. */
export function estimate(c: FiringCase, state: FiringState): Estimates {
  const running = state.segments[state.index]?.state === 'running' && state.finishedAt === null;
  if (!running) return { arrivalAt: null, endsAt: null, firingEndsAt: null, core: null };
  const arrivalAt = arrival(c, state);
  const core = coreAhead(c, state);
  const endsAt = segmentEnd(c, state, arrivalAt, core);
  if (endsAt === null) return { arrivalAt, endsAt, firingEndsAt: null, core };
  let total = endsAt + coreLagMs(c, state, endsAt, core);
  let from = c.schedule.segments[state.index]?.targetCelsius ?? 0;
  for (let i = state.index + 1; i < c.schedule.segments.length; i++) {
    total += plannedMs(c, state, i, from);
    from = c.schedule.segments[i]?.targetCelsius ?? from;
  }
  return { arrivalAt, endsAt, firingEndsAt: Math.round(total), core };
}

/** How long after the end of the running ramp the core comes into the soak behind it, ms. */
function coreLagMs(c: FiringCase, state: FiringState, endsAt: number, core: CoreTimes | null): number {
  if (c.schedule.segments[state.index]?.kind !== 'ramp' || core?.likely == null) return 0;
  return Math.max(0, core.likely - endsAt);
}
