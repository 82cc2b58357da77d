import type { Segment } from '../contract/schedule.ts';
import { slide } from '../judging/slope.ts';
import { type Band, bandOf, inside } from './limits.ts';
import { coreNow, isOnCore, nextLoadAt, stepLoad } from './load/load.ts';
import { LONG_SPACING_MS, LONG_SPAN_MS, longRate, SHORT_SPACING_MS, SHORT_SPAN_MS } from './rates.ts';
import { endSegment, forgetTrend, reached, startSegment } from './segments.ts';
import { withEvent, withGap, withSegment } from './track.ts';
import type { EventTrack, FiringCase, FiringState } from './types.ts';
import { nextStaleAt, type View, viewOf } from './view.ts';

/**
 * The passing of time. Between two inputs every value holds; the interval is cut exactly where something
 * changes by itself: a channel goes stale, the soak clock is full, the firing starts.
 */

/** Moves the state to `to` (epoch ms, not earlier), integrating exactly. */
export function advanceTo(c: FiringCase, state: FiringState, to: number): FiringState {
  let now = state;
  while (now.at < to) {
    const next = Math.min(to, nextChange(c, now) ?? to);
    now = settle(c, stepLoad(c, { ...integrate(c, now, next - now.at), at: next }));
  }
  return now;
}

function nextChange(c: FiringCase, state: FiringState): number | null {
  const instants = [nextStaleAt(c, state), soakFullAt(c, state), nextLoadAt(c, state)];
  if (state.at < c.startedAt) instants.push(c.startedAt);
  let next: number | null = null;
  for (const at of instants) {
    if (at !== null && (next === null || at < next)) next = at;
  }
  return next;
}

/** The instant at which the soak clock is full if everything stays as it is; null when it does not count. */
export function soakFullAt(c: FiringCase, state: FiringState): number | null {
  const segment = c.schedule.segments[state.index];
  const track = state.segments[state.index];
  if (segment?.kind !== 'soak' || track?.state !== 'running' || !isCounting(c, state)) return null;
  return state.at + Math.max(0, segment.durationSeconds * 1000 - track.soakMs);
}

/** True while the soak clock counts: a soak runs, nothing is blind, the core (or the coldest) is inside tolerance. */
export function isCounting(c: FiringCase, state: FiringState): boolean {
  const segment = c.schedule.segments[state.index];
  if (state.finishedAt !== null || segment?.kind !== 'soak') return false;
  return counted(c, state, segment, viewOf(c, state)).clock;
}

interface Counted {
  /** The soak clock, the air beside it, and the core by the coldest assumption. */
  readonly clock: boolean;
  readonly air: boolean;
  readonly low: boolean;
}

const NOTHING: Counted = { clock: false, air: false, low: false };

function counted(c: FiringCase, state: FiringState, segment: Segment | undefined, view: View): Counted {
  const band = segment?.kind === 'soak' ? bandOf(segment) : null;
  if (view.kind !== 'seen' || band === null) return NOTHING;
  const air = inside(band, view.coldest);
  if (!isOnCore(c)) return { clock: air, air, low: air };
  return { air, ...coreCounts(c, state, band) };
}

function coreCounts(c: FiringCase, state: FiringState, band: Band): { clock: boolean; low: boolean } {
  const core = coreNow(c, state);
  if (core === null) return { clock: false, low: false };
  const clock = inside(band, core.value);
  return { clock, low: clock && inside(band, core.low) };
}

/** Adds `ms` of the present values to the running segment. */
function integrate(c: FiringCase, state: FiringState, ms: number): FiringState {
  const track = state.segments[state.index];
  if (track?.state !== 'running' || state.finishedAt !== null || ms === 0) return state;
  const view = viewOf(c, state);
  if (view.kind === 'unwatched') return state;
  if (view.kind === 'blind') return withSegment(state, state.index, { blindMs: track.blindMs + ms });
  const segment = c.schedule.segments[state.index];
  const band = bandOf(segment);
  const counting = counted(c, state, segment, view);
  const above = band !== null && track.direction !== 'down' && view.hottest > band.high;
  const violating = state.conditions['too-fast'].raised;
  return withSegment(state, state.index, {
    seenMs: track.seenMs + ms,
    coldestIntegral: track.coldestIntegral + view.coldest * ms,
    soakMs: track.soakMs + (counting.clock ? ms : 0),
    airSoakMs: track.airSoakMs + (counting.air ? ms : 0),
    lowSoakMs: track.lowSoakMs + (counting.low ? ms : 0),
    aboveMs: track.aboveMs + (above ? ms : 0),
    interruptedMs: track.interruptedMs + (!counting.clock && track.soakMs > 0 ? ms : 0),
    rateViolationMs: track.rateViolationMs + (violating ? ms : 0),
    sinceMarkMs: track.sinceMarkMs + ms,
  });
}

/** Draws the consequences of the present values: start, blindness, ends of segments. */
export function settle(c: FiringCase, state: FiringState): FiringState {
  if (state.finishedAt !== null || state.at < c.startedAt) return state;
  let now = state.index < 0 ? startSegment(c, state, 0) : state;
  now = settleBlindness(c, now);
  while (reached(c, now)) now = settleBlindness(c, endSegment(c, now, 'done', 'reached'));
  return now;
}

/** Opens and closes the gap. */
export function settleBlindness(c: FiringCase, state: FiringState): FiringState {
  const over = state.finishedAt !== null || state.index >= state.segments.length;
  const blind = !over && viewOf(c, state).kind === 'blind';
  if (blind === (state.blindSince !== null)) return state;
  const { at, index: segment } = state;
  if (blind) return withEvent(forgetTrend({ ...state, blindSince: at }), 'blind', { segment });
  const from = state.blindSince ?? at;
  // A value that comes at the very instant at which the old one ends leaves no gap, and nothing to tell.
  if (at === from)
    return { ...state, blindSince: null, events: state.events.filter((e) => !isBlindAt(e, at)) };
  const gaps = withGap(state.gaps, { from, to: at });
  const seconds = (at - from) / 1000;
  const next = { ...state, blindSince: null, gaps };
  if (viewOf(c, state).kind !== 'seen') return next;
  return withEvent(next, 'seeing', { segment, params: { seconds } });
}

function isBlindAt(event: EventTrack, at: number): boolean {
  return event.kind === 'blind' && event.at === at;
}

/** Takes the present values into the windows that the rates are read from. */
export function sampleTrend(c: FiringCase, state: FiringState): FiringState {
  const view = viewOf(c, state);
  if (view.kind !== 'seen' || state.index < 0) return state;
  const { at } = state;
  const coldest = { at, value: view.coldest };
  const longWindow = slide(state.longWindow, coldest, LONG_SPAN_MS, LONG_SPACING_MS);
  const next = {
    ...state,
    coldestWindow: slide(state.coldestWindow, coldest, SHORT_SPAN_MS, SHORT_SPACING_MS),
    hottestWindow: slide(state.hottestWindow, { at, value: view.hottest }, SHORT_SPAN_MS, SHORT_SPACING_MS),
    longWindow,
  };
  return longWindow === state.longWindow ? next : noteSteepest(next);
}

function noteSteepest(next: FiringState): FiringState {
  const track = next.segments[next.index];
  if (track?.state !== 'running' || track.startedAt === null) return next;
  const rate = longRate(next.longWindow, track.startedAt);
  const steepest = track.steepestPerSecond;
  if (rate === null || (steepest !== null && Math.abs(rate) <= Math.abs(steepest))) return next;
  return withSegment(next, next.index, { steepestPerSecond: rate });
}
