import type { Segment } from '../contract/schedule.ts';
import { dropConditions } from './finding-events.ts';
import { bandOf } from './limits.ts';
import { coreNow } from './load/load.ts';
import { withEvent, withSegment } from './track.ts';
import {
  CONDITION_NAMES,
  type ConditionName,
  type Direction,
  type FiringCase,
  type FiringState,
  type SegmentTrack,
} from './types.ts';
import { isAway, isUnwatched, type Measured, viewOf } from './view.ts';

/** How segments begin and end. */

/** Which way a ramp has to go from here; inside the band or astride it, the way the schedule says. */
function directionFrom(c: FiringCase, index: number, measured: Measured): Direction | null {
  const segment = c.schedule.segments[index];
  const band = bandOf(segment);
  if (segment?.kind !== 'ramp' || band === null) return null;
  const low = measured.coldest < band.low;
  const high = measured.hottest > band.high;
  if (low !== high) return low ? 'up' : 'down';
  const before = c.schedule.segments[index - 1];
  return before !== undefined && before.targetCelsius > band.target ? 'down' : 'up';
}

/** Notes the first measured value of a segment, and its extremes. */
export function observe(c: FiringCase, state: FiringState): FiringState {
  const track = state.segments[state.index];
  const view = viewOf(c, state);
  if (track === undefined || view.kind !== 'seen') return state;
  const band = bandOf(c.schedule.segments[state.index]);
  const direction = track.direction ?? directionFrom(c, state.index, view);
  const over = band !== null && direction !== 'down' ? view.hottest - band.high : 0;
  return withSegment(state, state.index, {
    direction,
    startCelsius: track.startCelsius ?? view.coldest,
    peakCelsius: Math.max(track.peakCelsius ?? view.hottest, view.hottest),
    lowestCelsius: Math.min(track.lowestCelsius ?? view.coldest, view.coldest),
    overCelsius: Math.max(track.overCelsius, over),
  });
}

/** True when the running segment has got what it wanted. While blind, never. */
export function reached(c: FiringCase, state: FiringState): boolean {
  const segment = c.schedule.segments[state.index];
  const track = state.segments[state.index];
  if (segment === undefined || track === undefined) return false;
  if (isAway(segment) && track.confirmedAt === null) return false;
  const view = viewOf(c, state);
  if (view.kind === 'unwatched') return true;
  if (view.kind === 'blind') return segment.kind === 'soak' && soakDone(segment, track);
  switch (segment.kind) {
    case 'ramp':
      return track.direction === 'down'
        ? view.hottest <= segment.targetCelsius + segment.toleranceCelsius
        : view.coldest >= segment.targetCelsius - segment.toleranceCelsius;
    case 'soak':
      return soakDone(segment, track);
    case 'cool':
      return view.hottest <= segment.targetCelsius;
    default:
      throw segment satisfies never;
  }
}

function soakDone(segment: Extract<Segment, { kind: 'soak' }>, track: SegmentTrack): boolean {
  return track.soakMs >= segment.durationSeconds * 1000;
}

/** Ends the running segment at `state.at` and starts the next one. */
export function endSegment(
  c: FiringCase,
  state: FiringState,
  outcome: 'done' | 'skipped',
  endedBy: NonNullable<SegmentTrack['endedBy']>,
): FiringState {
  const view = viewOf(c, state);
  const index = state.index;
  const ended = withSegment(state, index, {
    state: outcome,
    endedAt: state.at,
    endedBy,
    endCelsius: view.kind === 'seen' ? view.coldest : null,
    endCoreCelsius: coreNow(c, state)?.value ?? null,
  });
  const told = withEvent(ended, 'segment-ended', { segment: index, params: { by: endedBy } });
  return endedBy === 'finished' ? told : startSegment(c, told, index + 1);
}

/** Starts segment `index` at `state.at`. Past the last one, the schedule is over. */
export function startSegment(c: FiringCase, state: FiringState, index: number): FiringState {
  const before = c.schedule.segments[state.index];
  const segment = c.schedule.segments[index];
  const moved = { ...dropConditions(c, state, staleConditions(segment)), index };
  if (segment === undefined) return moved;
  const running = withSegment(moved, index, { state: 'running', startedAt: state.at });
  const told = withEvent(running, 'segment-started', { segment: index });
  const sameProbes = isAway(before) === isAway(segment);
  return observe(c, sameProbes ? told : forgetTrend(told));
}

/** A trend over a gap, or over a change of probes, would be an invention. */
export function forgetTrend(state: FiringState): FiringState {
  return { ...state, coldestWindow: [], hottestWindow: [], longWindow: [] };
}

/** From a ramp into its soak an overshoot goes on; everything else starts afresh with the segment. */
function staleConditions(next: Segment | undefined): readonly ConditionName[] {
  if (next === undefined || next.kind === 'cool') return CONDITION_NAMES;
  return CONDITION_NAMES.filter((name) => name !== 'overshoot' && name !== 'overshoot-ahead');
}

/** True while the smith has something to do and to confirm in the running segment. */
export function waitsForSmith(c: FiringCase, state: FiringState): boolean {
  const track = state.segments[state.index];
  if (state.finishedAt !== null || track === undefined) return false;
  return isAway(c.schedule.segments[state.index]) && track.confirmedAt === null;
}

/** The smith says that the work of segment `segment` is done. Another segment than the running one: no effect. */
export function confirmSegment(c: FiringCase, state: FiringState, segment: number): FiringState {
  if (segment !== state.index || state.segments[segment] === undefined) return state;
  const told = withEvent(state, 'confirmed', { segment });
  const plan = c.schedule.segments[segment];
  if (!waitsForSmith(c, state)) return endSegment(c, told, 'skipped', 'confirmed');
  const out = withSegment(told, segment, { confirmedAt: state.at });
  return isUnwatched(c, plan) ? endSegment(c, out, 'done', 'confirmed') : out;
}

/** The firing is over: what still runs is cut short. */
export function finishFiring(c: FiringCase, state: FiringState): FiringState {
  const over = { ...dropConditions(c, state, CONDITION_NAMES), finishedAt: state.at };
  const track = state.segments[state.index];
  return track?.state === 'running' ? endSegment(c, over, 'skipped', 'finished') : over;
}
