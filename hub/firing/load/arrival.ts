import { PhysicsError } from '../../physics/errors.ts';
import type { ChainState } from '../../physics/heat/chain.ts';
import { timeToTolerance } from '../../physics/heat/soak-time.ts';
import type { Band } from '../limits.ts';
import type { FiringCase } from '../types.ts';
import { type LoadTrack, loadOf } from './load.ts';
import { pieceOf, type Side } from './model.ts';
import { furnaceMeetings } from './place.ts';

/** When the core of the slowest piece will be inside a band, under each assumption about the furnace. */

/** Farther than this nobody plans by it, s. */
const FARTHEST_SECONDS = 3 * 3600;

/** The chamber from now on: straight to where it is going, and held there. */
export interface ChamberAhead {
  readonly celsius: number;
  readonly perSecond: number;
  readonly towards: number;
}

/** Seconds from when it was asked for; null: not within three hours. */
export interface CoreArrival {
  readonly likely: number | null;
  readonly earliest: number | null;
  readonly latest: number | null;
}

/** Looks for it. Null when no piece is known, or the load is not in the furnace. */
export function coreArrival(
  c: FiringCase,
  load: LoadTrack | null,
  band: Band,
  chamber: ChamberAhead,
): CoreArrival | null {
  const track = load?.pieces[0];
  if (track === undefined || load?.place !== 'furnace') return null;
  const ask = (side: Side) => secondsTo(c, track[side], side, band, chamber);
  const value = ask('value');
  return { likely: value, earliest: ask('high'), latest: ask('low') };
}

function secondsTo(
  c: FiringCase,
  chain: ChainState,
  side: Side,
  band: Band,
  chamber: ChamberAhead,
): number | null {
  const body = loadOf(c)[0];
  if (body === undefined) return null;
  const { emissivity, film } = furnaceMeetings(c)[side];
  try {
    const { seconds } = timeToTolerance({
      from: pieceOf(body, chain),
      surroundings: (after) => along(chamber, after),
      emissivity,
      film,
      targetCelsius: band.target,
      toleranceCelsius: band.high - band.target,
      limitSeconds: FARTHEST_SECONDS,
    });
    return seconds;
  } catch (fault) {
    if (fault instanceof PhysicsError) return null;
    throw fault;
  }
}

function along({ celsius, perSecond, towards }: ChamberAhead, seconds: number): number {
  const gone = celsius + perSecond * seconds;
  return towards >= celsius ? Math.min(towards, gone) : Math.max(towards, gone);
}
