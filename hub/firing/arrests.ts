import type { ChannelReading } from '../contract/reading.ts';
import type { LoadPoint } from '../physics/time-at-temperature/arrest-legs.ts';
import { type Arrest, findArrests } from '../physics/time-at-temperature/arrests.ts';
import { chamberOf } from './load/chamber.ts';
import type { EventTrack, FiringCase, FiringState } from './types.ts';

/**
 * Arrests as they happen: where steel turned to austenite and back, in the record of a thermocouple on the load. The
 * record is bounded, and looked at only when the piece has moved on by some degrees.
 */

/** What has been measured of the leg that runs; empty outside the range where steel turns. */
export interface ArrestTrack {
  readonly record: readonly LoadPoint[];
  /** Where it was looked at last, °C; null: not yet. */
  readonly askedCelsius: number | null;
  /** Arrests up to this instant have been told, epoch ms. */
  readonly toldTo: number;
}

/** Both searches with their shoulders: 700 to 790 °C heating, 550 to 720 °C cooling, 60 °C around. */
const RANGE = { low: 485, high: 855 } as const;
const MOST_POINTS = 1500;
/** Points that tell nothing new are not kept: 1 s apart at least, and 5 s when the piece hardly moves. */
const SPACING = { leastMs: 1000, idleMs: 5000, celsius: 0.5 } as const;
const ASK_EVERY_CELSIUS = 6;
/** An arrest is over when the piece is past its end by this, °C: before that its end is not known. */
const PAST_CELSIUS = 15;
/** Below this the two methods disagree, or the heat is not that of steel. */
const LEAST_CONFIDENCE = 0.5;

const NONE: ArrestTrack = { record: [], askedCelsius: null, toldTo: 0 };

/** Nothing seen yet, for each watched channel. */
export function startArrests(c: FiringCase): readonly ArrestTrack[] {
  return c.watched.map(() => NONE);
}

/** Takes a good reading of the watched channel in `place` in, and tells the arrests that it completes. */
export function watchArrests(
  c: FiringCase,
  state: FiringState,
  place: number,
  { at, value }: ChannelReading,
): FiringState {
  const before = state.arrests[place];
  if (before === undefined || c.watched[place]?.role !== 'load' || at < c.startedAt) return state;
  const within = value >= RANGE.low && value <= RANGE.high;
  if (!within && before.record.length === 0) return state;
  const record = extended(before.record, { atMs: at, celsius: value, ...chamberAt(c, state) });
  const asked = before.askedCelsius;
  const due = !within || asked === null || Math.abs(value - asked) >= ASK_EVERY_CELSIUS;
  const found = due ? completed(record, value, before.toldTo) : [];
  const toldTo = Math.max(before.toldTo, ...found.map((arrest) => arrest.toMs));
  const next = within ? { record, askedCelsius: due ? value : asked, toldTo } : { ...NONE, toldTo };
  const arrests = state.arrests.map((track, i) => (i === place ? next : track));
  return found.reduce<FiringState>((now, arrest) => told(c, now, place, arrest), { ...state, arrests });
}

function chamberAt(c: FiringCase, state: FiringState): { chamberCelsius?: number } {
  const chamber = chamberOf(c, state);
  return chamber === null ? {} : { chamberCelsius: chamber.coldest };
}

function extended(record: readonly LoadPoint[], point: LoadPoint): readonly LoadPoint[] {
  const last = record.at(-1);
  if (last === undefined) return [point];
  const ms = point.atMs - last.atMs;
  const moved = Math.abs(point.celsius - last.celsius) >= SPACING.celsius;
  if (ms < SPACING.leastMs || (!moved && ms < SPACING.idleMs)) return record;
  return [...(record.length >= MOST_POINTS ? record.slice(1) : record), point];
}

function completed(record: readonly LoadPoint[], celsius: number, toldTo: number): Arrest[] {
  return findArrests({ record }).arrests.filter(
    ({ confidence, fromMs, direction, lowCelsius, highCelsius }) =>
      confidence >= LEAST_CONFIDENCE &&
      fromMs > toldTo &&
      (direction === 'heating' ? celsius > highCelsius + PAST_CELSIUS : celsius < lowCelsius - PAST_CELSIUS),
  );
}

/** The event stands at the middle of the arrest, where the chart marks it: among the others, in order. */
function told(c: FiringCase, state: FiringState, place: number, arrest: Arrest): FiringState {
  const at = Math.round((arrest.fromMs + arrest.toMs) / 2);
  const segment = state.segments.findLastIndex(({ startedAt }) => startedAt !== null && startedAt <= at);
  const event: EventTrack = {
    at,
    kind: 'arrest',
    segment: segment < 0 ? null : segment,
    finding: null,
    params: {
      celsius: Math.round(arrest.celsius),
      lowCelsius: Math.round(arrest.lowCelsius),
      highCelsius: Math.round(arrest.highCelsius),
      direction: arrest.direction,
      confidence: arrest.confidence,
      channel: c.watched[place]?.id ?? null,
      fromMs: arrest.fromMs,
      toMs: arrest.toMs,
    },
  };
  const after = state.events.findIndex((other) => other.at > at);
  const events = state.events.toSpliced(after < 0 ? state.events.length : after, 0, event);
  return { ...state, events };
}
