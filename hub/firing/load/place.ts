import type { Band } from '../../physics/heat/standing.ts';
import { usualFurnace } from '../../physics/heat/usual-furnace.ts';
import type { FiringCase, FiringState } from '../types.ts';
import { isAway } from '../view.ts';

/** Where the load is taken to be, and what surrounds it there. */

export type LoadPlace = 'furnace' | 'still-air' | 'ash' | 'vermiculite' | 'quench';

/**
 * A piece leaves the furnace when the smith says so, and not by the plan. It is back in it when the next segment
 * that heats begins.
 */
export function placeOf(c: FiringCase, state: FiringState): LoadPlace {
  const last = c.schedule.segments.length - 1;
  const index = Math.min(state.index, last);
  const segment = c.schedule.segments[index];
  if (segment?.kind !== 'cool' || segment.medium === 'furnace' || !isAway(segment)) return 'furnace';
  return state.segments[index]?.confirmedAt == null ? 'furnace' : segment.medium;
}

/** What a surface meets: effective emissivity and film coefficient, W/(m² K), and a fixed temperature or the chamber's. */
export interface Meeting {
  readonly emissivity: number;
  readonly film: number;
  /** Null: the chamber's. °C. */
  readonly celsius: number | null;
}

/** The likely one, and the ones that leave a heating piece coldest and hottest. */
export interface Meetings {
  readonly value: Meeting;
  readonly low: Meeting;
  readonly high: Meeting;
}

/** A fitted furnace is still another load on another day: ours. */
const FIT_SLACK = 0.1;

/** What the load meets in this furnace: what it was fitted to, else what is usual for its kind. */
export function furnaceMeetings(c: Pick<FiringCase, 'furnaceKind' | 'fit'>): Meetings {
  const usual = usualFurnace(c.furnaceKind);
  const emissivity = c.fit === null ? usual.emissivity : around(c.fit.emissivity, 1);
  const film = c.fit === null ? usual.filmWM2K : around(c.fit.filmWM2K, 1e5);
  const meeting = (side: keyof Band): Meeting => ({
    emissivity: emissivity[side],
    film: film[side],
    celsius: null,
  });
  return { low: meeting('low'), value: meeting('value'), high: meeting('high') };
}

function around(value: number, most: number): Band {
  return { low: value * (1 - FIT_SLACK), value, high: Math.min(most, value * (1 + FIT_SLACK)) };
}
