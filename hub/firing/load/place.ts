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

type Triple = readonly [low: number, value: number, high: number];

/**
 * What furnaces do to a piece that lies free, while nobody has fitted this one. Oxidised steel radiates with 0.8 and
 * less is left between walls and neighbours; burner gas moves, oven air hardly does; molten salt wets. Common
 * practice, no source.
 */
const USUAL: Readonly<
  Record<FiringCase['furnaceKind'], { readonly emissivity: Triple; readonly film: Triple }>
> = {
  'gas-forge': { emissivity: [0.6, 0.75, 0.9], film: [10, 25, 50] },
  'electric-oven': { emissivity: [0.5, 0.7, 0.85], film: [5, 10, 20] },
  'salt-bath': { emissivity: [0, 0, 0], film: [300, 600, 1000] },
};

/** A fitted furnace is still another load on another day: ours. */
const FIT_SLACK = 0.1;

/** What the load meets in this furnace. */
export function furnaceMeetings(c: Pick<FiringCase, 'furnaceKind' | 'fit'>): Meetings {
  const { emissivity: e, film: h } = c.fit === null ? USUAL[c.furnaceKind] : fitted(c.fit);
  const meeting = (i: 0 | 1 | 2): Meeting => ({ emissivity: e[i], film: h[i], celsius: null });
  return { low: meeting(0), value: meeting(1), high: meeting(2) };
}

function fitted({ emissivity, filmWM2K }: NonNullable<FiringCase['fit']>): {
  emissivity: Triple;
  film: Triple;
} {
  const around = (value: number, most: number): Triple => [
    value * (1 - FIT_SLACK),
    value,
    Math.min(most, value * (1 + FIT_SLACK)),
  ];
  return { emissivity: around(emissivity, 1), film: around(filmWM2K, 1e5) };
}
