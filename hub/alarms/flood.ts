import type { AlarmTransition } from '../contract/alarm-journal.ts';

/**
 * A flood of alarms: more than ten announced in ten minutes, until fewer than five are. Source: ISA-18.2-2016,
 * secondary (starts above 10 in 10 min, ends below 5 in 10 min).
 */

export const FLOOD_WINDOW_MS = 600_000;
const FLOOD_ABOVE = 10;
const FLOOD_ENDS_BELOW = 5;

/** A flood that began before this and never ebbed is taken as beginning here, after a restart. */
export const FLOOD_LOOK_BACK_MS = 86_400_000;

export interface FloodState {
  /** Instants of announcement of the last ten minutes, rising, epoch ms. */
  readonly recent: readonly number[];
  /** Epoch ms; null while there is no flood. */
  readonly since: number | null;
}

/** `to`: null while it still runs. */
export interface FloodSpan {
  readonly from: number;
  readonly to: number | null;
  /** Announcements, from the ten minutes that brought it on to its end. */
  readonly alarms: number;
}

export const NO_FLOOD: FloodState = { recent: [], since: null };

/** True where an alarm begins to ask for somebody: raised, come back, or taken up from a shelf. */
export function isAnnounced({ from, to }: Pick<AlarmTransition, 'from' | 'to'>): boolean {
  return to === 'unacknowledged' && from !== 'unacknowledged';
}

/** When alarms were announced, epoch ms, in the order of the transitions. */
export function announcedAt(transitions: readonly AlarmTransition[]): number[] {
  return transitions.filter(isAnnounced).map(({ at }) => at);
}

/** The flood at `at`, epoch ms, when these were announced since the last step. An instant ten minutes old is out. */
export function stepFlood(state: FloodState, announced: readonly number[], at: number): FloodState {
  const inside = (instant: number): boolean => instant > at - FLOOD_WINDOW_MS;
  const first = state.recent[0];
  if (announced.length === 0 && (first === undefined || inside(first))) return state;
  const recent = [...state.recent, ...announced].filter(inside);
  if (state.since === null) return { recent, since: recent.length > FLOOD_ABOVE ? at : null };
  return { recent, since: recent.length < FLOOD_ENDS_BELOW ? null : state.since };
}

/** The instants at which the flood may change: an announcement, and where one falls out of the window. */
function turningPoints(times: readonly number[], to: number): number[] {
  const points = new Set(times.flatMap((at) => [at, at + FLOOD_WINDOW_MS]));
  return [...points].filter((at) => at <= to).sort((a, b) => a - b);
}

function statesAlong(times: readonly number[], to: number): { at: number; state: FloodState }[] {
  let state = NO_FLOOD;
  let next = 0;
  return turningPoints(times, to).map((at) => {
    const fresh: number[] = [];
    for (let time = times[next]; time !== undefined && time <= at; time = times[++next]) fresh.push(time);
    state = stepFlood(state, fresh, at);
    return { at, state };
  });
}

/** The flood at `to` after these announcements, rising, epoch ms. */
export function floodOf(times: readonly number[], to: number): FloodState {
  return statesAlong(times, to).at(-1)?.state ?? NO_FLOOD;
}

/** Every flood up to `to`, in order. `times`: instants of announcement, rising, epoch ms. */
export function floodSpans(times: readonly number[], to: number): FloodSpan[] {
  const spans: { from: number; to: number | null }[] = [];
  let since: number | null = null;
  for (const { at, state } of statesAlong(times, to)) {
    if (since === null && state.since !== null) spans.push({ from: state.since, to: null });
    const last = spans.at(-1);
    if (since !== null && state.since === null && last) last.to = at;
    since = state.since;
  }
  return spans.map((span) => ({
    ...span,
    alarms: times.filter((at) => at > span.from - FLOOD_WINDOW_MS && at <= (span.to ?? to)).length,
  }));
}
