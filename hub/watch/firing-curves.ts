import { isOnCore, type LoadTrack, loadOf } from '../firing/load/load.ts';
import { coreOf, type PieceTrack, surfaceOf } from '../firing/load/model.ts';
import type { LoadBody } from '../firing/load/steel-body.ts';
import type { FiringCase, FiringState } from '../firing/types.ts';
import { viewOf } from '../firing/view.ts';
import type { AirPoint, Band, BodyPoint, FiringCurves } from '../record/types.ts';
import { likeness, moveOthers, otherBodies, startOthers } from './other-bodies.ts';

/** What one judging of a firing sees on the way, kept so thin that straight lines between the points stay true. */

/** A curve is kept to within this, °C, and to at least a point a minute. */
const WITHIN_CELSIUS = 2;
const LONGEST_MS = 60_000;
/** States come every second; the air is looked at as often as the load is computed. */
const AIR_STEP_MS = 5000;

export class CurveGatherer {
  readonly #case: FiringCase;
  readonly #thin: Thinned<readonly BodyPoint[]>;
  readonly #air: Thinned<AirPoint>;
  readonly #others: readonly LoadBody[];
  #otherTracks: readonly PieceTrack[] = [];
  #load: LoadTrack | null = null;
  #corrected = false;

  constructor(c: FiringCase) {
    this.#case = c;
    this.#others = otherBodies(c, loadOf(c));
    this.#thin = new Thinned(bodiesMoved);
    this.#air = new Thinned(airMoved);
  }

  /** The judge stands here now. States come in the order of time. */
  see(state: FiringState): void {
    const c = this.#case;
    if (c.pieces.length === 0 || state.at < c.startedAt) return;
    if (isOnCore(c)) this.#seeLoad(state);
    else if (state.at >= this.#air.lastAt + AIR_STEP_MS) this.#seeAir(state);
  }

  curves(): FiringCurves {
    const rows = this.#thin.all();
    const bodies = [...loadOf(this.#case), ...this.#others].map(({ piece }, i) => ({
      pieceId: piece.pieceId,
      likeness: likeness(piece),
      points: rows.flatMap((row) => row[i] ?? []),
    }));
    return {
      bodies,
      air: this.#air.all(),
      airIsLoad: this.#case.watched.every(({ role }) => role === 'load'),
      corrected: this.#corrected,
    };
  }

  #seeLoad({ load }: FiringState): void {
    if (load === null || load.steppedTo === this.#thin.lastAt) return;
    if (load.correctedBy !== null) this.#corrected = true;
    const inFurnace = load.place === 'furnace';
    const atMs = load.steppedTo;
    const tracks = [...load.pieces, ...this.#carried(load)];
    this.#thin.take(
      atMs,
      tracks.map((track) => pointOf(atMs, track, inFurnace)),
    );
  }

  #carried(load: LoadTrack): readonly PieceTrack[] {
    const step = this.#load === null ? null : { from: this.#load, to: load };
    this.#otherTracks =
      step === null
        ? startOthers(this.#others, load)
        : moveOthers(this.#case, this.#others, this.#otherTracks, step);
    this.#load = load;
    return this.#otherTracks;
  }

  #seeAir(state: FiringState): void {
    const view = viewOf(this.#case, state);
    if (view.kind !== 'seen') return;
    this.#air.take(state.at, { atMs: state.at, coldest: view.coldest, hottest: view.hottest });
  }
}

function pointOf(atMs: number, track: PieceTrack, inFurnace: boolean): BodyPoint {
  return { atMs, core: bandOf(track, coreOf), surface: bandOf(track, surfaceOf), inFurnace };
}

function bandOf({ low, value, high }: PieceTrack, of: typeof coreOf): Band {
  const all = [of(low), of(value), of(high)];
  return { low: Math.min(...all), value: of(value), high: Math.max(...all) };
}

function bodiesMoved(a: readonly BodyPoint[], b: readonly BodyPoint[]): boolean {
  return b.some((now, i) => {
    const was = a[i];
    if (was === undefined || was.inFurnace !== now.inFurnace) return true;
    return (['low', 'value', 'high'] as const).some(
      (side) => moved(was.core[side], now.core[side]) || moved(was.surface[side], now.surface[side]),
    );
  });
}

function airMoved(a: AirPoint, b: AirPoint): boolean {
  return moved(a.coldest, b.coldest) || moved(a.hottest, b.hottest);
}

const moved = (was: number, now: number): boolean => Math.abs(now - was) >= WITHIN_CELSIUS;

/** Points that matter out of many: what moved, one a minute, and the last. */
class Thinned<Point> {
  readonly #moved: (was: Point, now: Point) => boolean;
  readonly #kept: { readonly atMs: number; readonly point: Point }[] = [];
  #waiting: { readonly atMs: number; readonly point: Point } | null = null;
  lastAt = Number.NEGATIVE_INFINITY;

  constructor(movedBetween: (was: Point, now: Point) => boolean) {
    this.#moved = movedBetween;
  }

  take(atMs: number, point: Point): void {
    const kept = this.#kept.at(-1);
    // Before a gap or a sudden move the last point stays too: the line shall not begin a minute earlier.
    if (kept === undefined) this.#kept.push({ atMs, point });
    else if (this.#moved(kept.point, point) || atMs - kept.atMs >= LONGEST_MS) this.#keep(atMs, point);
    else this.#waiting = { atMs, point };
    this.lastAt = atMs;
  }

  all(): Point[] {
    const rest = this.#waiting === null ? [] : [this.#waiting];
    return [...this.#kept, ...rest].map(({ point }) => point);
  }

  #keep(atMs: number, point: Point): void {
    if (this.#waiting !== null) this.#kept.push(this.#waiting);
    this.#waiting = null;
    this.#kept.push({ atMs, point });
  }
}
