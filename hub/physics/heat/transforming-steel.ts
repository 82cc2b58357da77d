/**
 * High-carbon steel whose transformation takes its heat in a narrow band:
 * at Ac1 on heating, at Ar1 on cooling, with the gap between the two kept.
 *
 *   austenite 1 ┤        ┌────────────
 *               │      ╱ │╱    ╱        heating climbs the right-hand side,
 *               │    ╱↓  │   ╱↑         cooling descends the left-hand side,
 *   austenite 0 ┼──╱─────┴─╱──────      between them nothing changes
 *                 Ar1     Ac1
 *
 * Heat of transformation of plain eutectoid steel: 19.6 cal/g = 82 J/g
 * (Hagel, Pound and Mehl, Acta Met. 4 (1956) 37).
 */
import { PhysicsError, requireRange } from '../errors.ts';
import { type RisingTable, risingTable } from './enthalpy-table.ts';
import {
  heldConductivity,
  type Material,
  type Memory,
  requireShare,
  type Settled,
  sensibleEnthalpy,
} from './material.ts';
import { STEEL_DENSITY_KG_M3 } from './steel-properties.ts';

/** Where and how the steel transforms. All temperatures in °C. */
export interface Transformation {
  /** Transformation on heating: from 0 to all austenite between these. Default 725 to 745. */
  readonly heatingFromCelsius: number;
  readonly heatingToCelsius: number;
  /** Transformation on cooling: from all austenite to none between these. Default 690 to 675. */
  readonly coolingFromCelsius: number;
  readonly coolingToCelsius: number;
  /** Heat of the whole transformation, J/kg. Default 82 000; scale by the pearlite share. */
  readonly latentJoulesPerKg: number;
  /**
   * How far below `coolingFromCelsius` steel without any pearlite must go before
   * it starts. More than 0 gives the visible re-heating of recalescence. Default 0.
   */
  readonly undercoolingCelsius: number;
  /** Shortest time in which all austenite can go on cooling, s. Default 0: no limit. */
  readonly coolingSeconds: number;
}

export const EUTECTOID: Transformation = {
  heatingFromCelsius: 725,
  heatingToCelsius: 745,
  coolingFromCelsius: 690,
  coolingToCelsius: 675,
  latentJoulesPerKg: 82_000,
  undercoolingCelsius: 0,
  coolingSeconds: 0,
};

/** Heat contents over temperature: no austenite, and along the two transforming ways. */
interface Ways {
  readonly sensible: RisingTable;
  readonly heating: RisingTable;
  readonly cooling: RisingTable;
}

/**
 * @param options what differs from {@link EUTECTOID}
 * @throws PhysicsError `bad-input` when the bands are empty or out of order,
 *   `out-of-range` when a temperature or the heat is implausible
 */
export function transformingSteel(options: Partial<Transformation> = {}): Material {
  const how = checked({ ...EUTECTOID, ...options });
  const latent = how.latentJoulesPerKg;
  const ways: Ways = {
    sensible: risingTable(sensibleEnthalpy),
    heating: alongRamp(how.heatingFromCelsius, how.heatingToCelsius, latent),
    cooling: alongRamp(how.coolingToCelsius, how.coolingFromCelsius, latent),
  };
  return {
    densityKgM3: STEEL_DENSITY_KG_M3,
    conductivity: heldConductivity,
    enthalpy: (celsius, austenite) =>
      ways.sensible.at(celsius) + latent * requireShare('austenite', austenite),
    settle: (enthalpyJKg, memory) => settle(ways, how, enthalpyJKg, memory),
    austeniteAtRest: (celsius) => ramp(celsius, how.heatingFromCelsius, how.heatingToCelsius),
  };
}

/**
 * Try leaving the austenite share alone; if the temperature that follows lies
 * beyond a transforming way, the point is on that way. Both ways rise, so there
 * is exactly one answer.
 */
function settle(ways: Ways, how: Transformation, enthalpyJKg: number, memory: Memory): Settled {
  const latent = how.latentJoulesPerKg;
  const still = held(ways, how, enthalpyJKg, memory, memory.austenite);
  if (share(ways.heating, ways.sensible, still.celsius, latent) > memory.austenite) {
    return onWay(ways.heating, ways.sensible, enthalpyJKg, latent);
  }
  if (share(ways.cooling, ways.sensible, still.celsius, latent) >= memory.austenite) return still;
  if (!started(how, memory)) return still;
  const free = onWay(ways.cooling, ways.sensible, enthalpyJKg, latent);
  const least = leastAustenite(how, memory);
  return free.austenite < least ? held(ways, how, enthalpyJKg, memory, least) : free;
}

/**
 * Steel that already holds pearlite needs no undercooling: the product grows on
 * what is there. Judged at the start of the step, so that within one step
 * temperature rises with heat content without a jump.
 */
function started(how: Transformation, memory: Memory): boolean {
  const under = how.undercoolingCelsius;
  return under === 0 || memory.austenite < 1 || memory.celsius <= how.coolingFromCelsius - under;
}

function leastAustenite(how: Transformation, memory: Memory): number {
  return how.coolingSeconds > 0 ? Math.max(0, memory.austenite - memory.seconds / how.coolingSeconds) : 0;
}

function held(
  ways: Ways,
  how: Transformation,
  enthalpyJKg: number,
  memory: Memory,
  austenite: number,
): Settled {
  const celsius = ways.sensible.inverse(enthalpyJKg - how.latentJoulesPerKg * austenite, memory.celsius);
  return { celsius, austenite, capacityJKgK: ways.sensible.slopeAt(celsius) };
}

function onWay(way: RisingTable, sensible: RisingTable, enthalpyJKg: number, latent: number): Settled {
  const celsius = way.inverse(enthalpyJKg, 700);
  const austenite = share(way, sensible, celsius, latent);
  return { celsius, austenite, capacityJKgK: way.slopeAt(celsius) };
}

/**
 * The share is read from the tables, not from the ramp, so that heat in equals
 * heat out to rounding; a billionth short of whole counts as whole, for "no
 * pearlite at all" decides whether undercooling is needed.
 */
function share(way: RisingTable, sensible: RisingTable, celsius: number, latent: number): number {
  const raw = (way.at(celsius) - sensible.at(celsius)) / latent;
  if (raw < 1e-9) return 0;
  return raw > 1 - 1e-9 ? 1 : raw;
}

function alongRamp(from: number, to: number, latent: number): RisingTable {
  return risingTable((celsius) => sensibleEnthalpy(celsius) + latent * ramp(celsius, from, to));
}

function ramp(celsius: number, from: number, to: number): number {
  return Math.min(1, Math.max(0, (celsius - from) / (to - from)));
}

function checked(how: Transformation): Transformation {
  requireRange('start of transformation on heating', how.heatingFromCelsius, 600, 900, '°C');
  requireRange(
    'end of transformation on heating',
    how.heatingToCelsius,
    how.heatingFromCelsius + 1,
    950,
    '°C',
  );
  requireRange('end of transformation on cooling', how.coolingToCelsius, 300, 900, '°C');
  requireRange('latent heat', how.latentJoulesPerKg, 1, 200_000, 'J/kg');
  requireRange('undercooling', how.undercoolingCelsius, 0, 100, 'K');
  requireRange('duration of transformation on cooling', how.coolingSeconds, 0, 86_400, 's');
  const ordered =
    how.coolingToCelsius + 1 <= how.coolingFromCelsius &&
    how.coolingFromCelsius <= how.heatingFromCelsius &&
    how.coolingToCelsius <= how.heatingToCelsius;
  if (ordered) return how;
  throw new PhysicsError('bad-input', 'cooling must transform below heating, each over 1 K or more', {
    ...how,
  });
}
