import type { Params } from '../contract/alarm.ts';
import type { Gap } from '../contract/reading.ts';
import type { EventTrack, FiringState, SegmentTrack } from './types.ts';

/** Small immutable updates of a firing's state, and the bounds that keep it small. */

/** A probe with a loose contact must not be able to grow the record without end. */
const MOST_EVENTS = 400;
const MOST_GAPS = 400;

export const WAITING: SegmentTrack = {
  state: 'waiting',
  startedAt: null,
  endedAt: null,
  endedBy: null,
  confirmedAt: null,
  direction: null,
  startCelsius: null,
  endCelsius: null,
  endCoreCelsius: null,
  soakMs: 0,
  airSoakMs: 0,
  lowSoakMs: 0,
  blindMs: 0,
  seenMs: 0,
  coldestIntegral: 0,
  peakCelsius: null,
  lowestCelsius: null,
  overCelsius: 0,
  aboveMs: 0,
  interruptedMs: 0,
  steepestPerSecond: null,
  rateViolationMs: 0,
  markCelsius: null,
  sinceMarkMs: 0,
};

/** The state with one segment changed. */
export function withSegment(state: FiringState, index: number, change: Partial<SegmentTrack>): FiringState {
  const segments = state.segments.map((track, i) => (i === index ? { ...track, ...change } : track));
  return { ...state, segments };
}

/** The state with one event more. Past the bound the oldest seeing and blind go first, then the oldest. */
export function withEvent(
  state: FiringState,
  kind: EventTrack['kind'],
  extra: {
    readonly segment?: number | null;
    readonly finding?: EventTrack['finding'];
    readonly params?: Params;
  },
): FiringState {
  const event: EventTrack = {
    at: state.at,
    kind,
    segment: extra.segment ?? null,
    finding: extra.finding ?? null,
    params: extra.params ?? {},
  };
  const events = [...state.events, event];
  if (events.length > MOST_EVENTS) {
    const minor = events.findIndex((e) => e.kind === 'blind' || e.kind === 'seeing');
    events.splice(Math.max(0, minor), 1);
  }
  return { ...state, events };
}

/** Adds a gap; past the bound the last two are joined, which tells of more blindness, never of less. */
export function withGap(gaps: readonly Gap[], gap: Gap): readonly Gap[] {
  const last = gaps.at(-1);
  if (last === undefined || gaps.length < MOST_GAPS) return [...gaps, gap];
  return [...gaps.slice(0, -1), { from: last.from, to: gap.to }];
}
