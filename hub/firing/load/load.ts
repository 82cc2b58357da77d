import type { FiringCase, FiringState } from '../types.ts';
import { type Chamber, chamberOf, hasChamber, onLoad } from './chamber.ts';
import { mediumMeetings } from './media.ts';
import { type Air, coreOf, nudged, type PieceTrack, startTrack, stepTrack } from './model.ts';
import { furnaceMeetings, type LoadPlace, type Meetings, placeOf } from './place.ts';
import { bodiesOf, type LoadBody } from './steel-body.ts';

/**
 * The load of a firing, carried along with the readings on a grid of its own, so that it comes out the same however
 * the readings are cut. While the chamber is not measured it stands still; afterwards the gap is bridged by a
 * straight line between the readings on both sides, the outer assumptions by the colder and the hotter of them.
 */

/** Grid of the computation, ms from the start of the firing. A piece moves by a few °C in this. */
export const LOAD_STEP_MS = 5000;
/** A step longer than this has bridged a gap. */
const GAP_MS = 2 * LOAD_STEP_MS;
/** A thermocouple on the piece draws the model to itself with this time constant, s. Ours. */
const CORRECTION_SECONDS = 60;
/** Cold steel that nobody has measured, °C. */
const COLD_CELSIUS = 20;

export interface LoadTrack {
  /** Computed up to this instant, epoch ms. */
  readonly steppedTo: number;
  readonly chamber: Chamber;
  readonly place: LoadPlace;
  /** In the order of `bodiesOf`: the slowest first. */
  readonly pieces: readonly PieceTrack[];
  readonly correctedBy: string | null;
  readonly bridgedMs: number;
}

const prepared = new WeakMap<FiringCase, readonly LoadBody[]>();

/** The pieces of the load that are computed, the slowest first; empty when none is known or no chamber is measured. */
export function loadOf(c: FiringCase): readonly LoadBody[] {
  const found = prepared.get(c);
  if (found !== undefined) return found;
  const made = hasChamber(c) ? bodiesOf(c.pieces) : [];
  prepared.set(c, made);
  return made;
}

/** True when the soak clock of this firing runs on the core of its slowest piece. */
export function isOnCore(c: FiringCase): boolean {
  return loadOf(c).length > 0;
}

/** The next instant of the grid, epoch ms; null when there is nothing to compute. */
export function nextLoadAt(c: FiringCase, state: FiringState): number | null {
  if (!isOnCore(c)) return null;
  const steps = Math.floor((state.at - c.startedAt) / LOAD_STEP_MS) + 1;
  return c.startedAt + Math.max(0, steps) * LOAD_STEP_MS;
}

/** Core of the slowest piece while it is known now, °C: value and the coldest it may be. */
export function coreNow(c: FiringCase, state: FiringState): { value: number; low: number } | null {
  const { load } = state;
  const slowest = load?.pieces[0];
  if (load === null || slowest === undefined || !isOnCore(c)) return null;
  if (state.at - load.steppedTo > GAP_MS) return null;
  return { value: coreOf(slowest.value), low: coreOf(slowest.low) };
}

/** Carries the load on to the instant of the state, when that lies on the grid. */
export function stepLoad(c: FiringCase, state: FiringState): FiringState {
  if (!isOnCore(c) || (state.at - c.startedAt) % LOAD_STEP_MS !== 0 || state.at < c.startedAt) return state;
  const chamber = chamberOf(c, state);
  const { load } = state;
  if (load === null) return chamber === null ? state : { ...state, load: startLoad(c, state, chamber) };
  if (load.steppedTo === state.at) return state;
  const place = placeOf(c, state);
  if (place === 'furnace' && chamber === null) return state;
  const here = { place, chamber: chamber ?? load.chamber };
  const came = place === 'furnace' && load.place !== 'furnace' ? brought(c, load, here.chamber) : load;
  return { ...state, load: corrected(c, state, moved(c, came, state.at, here)) };
}

function startLoad(c: FiringCase, state: FiringState, chamber: Chamber): LoadTrack {
  const measured = onLoad(c, state);
  const cold = Math.min(chamber.coldest, COLD_CELSIUS);
  // A hot furnace at the start: the pieces are put in now, most likely; at most they have lain in it.
  const start = { value: cold, low: cold, high: chamber.coldest };
  const pieces = loadOf(c).map((body, i) => {
    if (i > 0 || measured === null) return startTrack(body, start);
    return startTrack(body, { value: measured.celsius, low: measured.celsius, high: measured.celsius });
  });
  const correctedBy = measured?.channel ?? null;
  return { steppedTo: state.at, chamber, place: 'furnace', pieces, correctedBy, bridgedMs: 0 };
}

/** Back from outside: how long it lay there nobody measured, so the model starts from cold and says up to what. */
function brought(c: FiringCase, load: LoadTrack, chamber: Chamber): LoadTrack {
  const pieces = loadOf(c).map((body, i) => {
    const was = load.pieces[i];
    const high = Math.max(COLD_CELSIUS, was === undefined ? COLD_CELSIUS : coreOf(was.high));
    const fresh = startTrack(body, { value: COLD_CELSIUS, low: COLD_CELSIUS, high });
    return was === undefined ? fresh : { ...fresh, high: was.high };
  });
  return { ...load, chamber, pieces };
}

function moved(
  c: FiringCase,
  load: LoadTrack,
  at: number,
  here: { readonly place: LoadPlace; readonly chamber: Chamber },
): LoadTrack {
  const ms = at - load.steppedTo;
  const bridged = ms > GAP_MS;
  const inFurnace = furnaceMeetings(c);
  const pieces = loadOf(c).map((body, i) => {
    const track = load.pieces[i];
    if (track === undefined) throw new Error(`the load has no piece ${i}`);
    const meetings: Meetings = here.place === 'furnace' ? inFurnace : mediumMeetings(here.place, body);
    const air = airOf(body, load.chamber, here.chamber, bridged);
    return stepTrack(body, track, ms / 1000, { meetings, air });
  });
  const bridgedMs = load.bridgedMs + (bridged ? ms : 0);
  return { ...load, ...here, steppedTo: at, pieces, bridgedMs };
}

/** The slowest piece is taken to lie where it is coldest, the quickest where it is hottest: nobody says where. */
function airOf(
  body: LoadBody,
  before: Chamber,
  now: Chamber,
  bridged: boolean,
): Record<'value' | 'low' | 'high', Air> {
  const value: Air =
    body.part === 'quickest'
      ? { were: before.hottest, are: now.hottest }
      : { were: before.coldest, are: now.coldest };
  const low: Air = { were: before.coldest, are: now.coldest };
  const high: Air = { were: before.hottest, are: now.hottest };
  if (!bridged) return { value, low, high };
  const least = Math.min(low.were, low.are);
  const most = Math.max(high.were, high.are);
  return { value, low: { were: least, are: least }, high: { were: most, are: most } };
}

/**
 * A thermocouple on the load is taken to sit on the slowest piece, since that is the one it is for. On another piece
 * it would draw the model wrong: the wall says that it is drawn.
 */
function corrected(c: FiringCase, state: FiringState, load: LoadTrack): LoadTrack {
  const measured = onLoad(c, state);
  const body = loadOf(c)[0];
  const slowest = load.pieces[0];
  if (measured === null || body === undefined || slowest === undefined) return { ...load, correctedBy: null };
  const seconds = state.load === null ? 0 : (load.steppedTo - state.load.steppedTo) / 1000;
  const share = 1 - Math.exp(-seconds / CORRECTION_SECONDS);
  const pieces = [nudged(body, slowest, measured.celsius, share), ...load.pieces.slice(1)];
  return { ...load, pieces, correctedBy: measured.channel };
}
