import { packingOf } from '../../physics/heat/buried.ts';
import { filmFromSeverity, mediumOf } from '../../physics/heat/media.ts';
import type { LoadPlace, Meetings } from './place.ts';
import type { LoadBody } from './steel-body.ts';

/**
 * What a piece meets outside the furnace. `low` cools fastest. Nobody says which liquid a quench is, how wide the
 * packing is or how cold the shop: the bands are wide, and meant to be.
 */

const SHOP_CELSIUS = 20;
/** Radius of packing around a piece, m: a bucket. Common practice, no source. */
const PACKING_METRES = 0.15;
/** The packing itself must warm up first and takes more heat than in the steady state: ours, see heat/buried.ts. */
const PACKING = { low: 3, value: 1.5, high: 1 } as const;

/** Oil to water, still to moving: Grossmann severities of 0.25 to 2.5 1/in, and a bath of 20 to 60 °C. */
const QUENCH: Meetings = {
  low: { emissivity: 0, film: filmFromSeverity(2.5), celsius: SHOP_CELSIUS },
  value: { emissivity: 0, film: filmFromSeverity(0.3), celsius: 45 },
  high: { emissivity: 0, film: filmFromSeverity(0.25), celsius: 60 },
};

/** What a piece meets in a place that is not the furnace. */
export function mediumMeetings(place: Exclude<LoadPlace, 'furnace'>, { body }: LoadBody): Meetings {
  switch (place) {
    case 'quench':
      return QUENCH;
    case 'still-air':
      return STILL_AIR;
    case 'ash':
    case 'vermiculite':
      return packed(place, 2 / (body.surfacePerMassM2Kg * body.piece.material.densityKgM3));
    default:
      throw place satisfies never;
  }
}

const STILL_AIR: Meetings = stillAir();

function stillAir(): Meetings {
  const { filmWM2K: h, emissivity: e } = mediumOf('still-air');
  const celsius = SHOP_CELSIUS;
  return {
    low: { emissivity: e.high, film: h.high, celsius },
    value: { emissivity: e.value, film: h.value, celsius },
    high: { emissivity: e.low, film: h.low, celsius },
  };
}

/** Steady conduction through a shell of packing around the round bar that has as much surface a mass. */
function packed(place: 'ash' | 'vermiculite', radiusMetres: number): Meetings {
  const radius = Math.min(radiusMetres, PACKING_METRES / 1.5);
  // Halfway between hot steel and cold wall.
  const conductivity = packingOf(place).material.conductivity(300);
  const film = conductivity / (radius * Math.log(PACKING_METRES / radius));
  const meeting = (share: number) => ({ emissivity: 0, film: film * share, celsius: SHOP_CELSIUS });
  return { low: meeting(PACKING.low), value: meeting(PACKING.value), high: meeting(PACKING.high) };
}
