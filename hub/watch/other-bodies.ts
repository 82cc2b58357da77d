import type { LoadPiece } from '../contract/load.ts';
import type { Chamber } from '../firing/load/chamber.ts';
import { LOAD_STEP_MS, type LoadTrack } from '../firing/load/load.ts';
import { mediumMeetings } from '../firing/load/media.ts';
import { type Air, coreOf, type PieceTrack, startTrack, stepTrack } from '../firing/load/model.ts';
import { furnaceMeetings } from '../firing/load/place.ts';
import { bodiesOf, type LoadBody } from '../firing/load/steel-body.ts';
import type { FiringCase } from '../firing/types.ts';

/**
 * The pieces of a load that the judge need not compute while it runs: those between the slowest and the quickest.
 * They are carried along the same chamber, the same places and the same grid, taken to lie where it is coldest.
 */

/** A load of many different sections: more than this are judged by the slowest of all, which is said. */
const MOST_OTHERS = 10;
/** Cold steel that nobody has measured, °C; as the judge takes it. */
const COLD_CELSIUS = 20;

/** Bodies of pieces that are neither the slowest nor the quickest, one for each section and steel. */
export function otherBodies(c: FiringCase, known: readonly LoadBody[]): readonly LoadBody[] {
  if (known.length === 0) return [];
  const seen = new Set(known.map(({ piece }) => likeness(piece)));
  const found: LoadBody[] = [];
  for (const piece of c.pieces) {
    const key = likeness(piece);
    if (seen.has(key) || found.length >= MOST_OTHERS) continue;
    seen.add(key);
    found.push(...bodiesOf([piece]));
  }
  return found;
}

/** Pieces that take heat alike: the same section of the same steel. */
export function likeness({
  section: { shape, thicknessMm },
  steel,
}: Pick<LoadPiece, 'section' | 'steel'>): string {
  return JSON.stringify([shape, thicknessMm, steel.composition]);
}

/** Where they are at the first instant that the load is known. */
export function startOthers(bodies: readonly LoadBody[], { chamber }: LoadTrack): PieceTrack[] {
  const cold = Math.min(chamber.coldest, COLD_CELSIUS);
  return bodies.map((body) => startTrack(body, { value: cold, low: cold, high: chamber.coldest }));
}

/** Carries them from one step of the load to the next. */
export function moveOthers(
  c: FiringCase,
  bodies: readonly LoadBody[],
  tracks: readonly PieceTrack[],
  step: { readonly from: LoadTrack; readonly to: LoadTrack },
): PieceTrack[] {
  const { from, to } = step;
  const ms = to.steppedTo - from.steppedTo;
  const isBack = to.place === 'furnace' && from.place !== 'furnace';
  const before = isBack ? to.chamber : from.chamber;
  const air = airOf(before, to.chamber, ms > 2 * LOAD_STEP_MS);
  return bodies.flatMap((body, i) => {
    const was = tracks[i];
    if (was === undefined) return [];
    const track = isBack ? brought(body, was) : was;
    const meetings = to.place === 'furnace' ? furnaceMeetings(c) : mediumMeetings(to.place, body);
    return [stepTrack(body, track, ms / 1000, { meetings, air })];
  });
}

function brought(body: LoadBody, was: PieceTrack): PieceTrack {
  const high = Math.max(COLD_CELSIUS, coreOf(was.high));
  return { ...startTrack(body, { value: COLD_CELSIUS, low: COLD_CELSIUS, high }), high: was.high };
}

function airOf(before: Chamber, now: Chamber, bridged: boolean): Record<'value' | 'low' | 'high', Air> {
  const value = { were: before.coldest, are: now.coldest };
  const high = { were: before.hottest, are: now.hottest };
  if (!bridged) return { value, low: value, high };
  const least = Math.min(before.coldest, now.coldest);
  const most = Math.max(before.hottest, now.hottest);
  return { value, low: { were: least, are: least }, high: { were: most, are: most } };
}
