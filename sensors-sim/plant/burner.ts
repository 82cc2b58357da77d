/** Propane burning in a forge: heat, flue gas, and the carbon monoxide of a rich flame. */
import {
  PROPANE_NET_HEAT_JOULES_PER_KILOGRAM,
  PROPANE_STOICHIOMETRIC_AIR_KILOGRAMS,
} from '../../hub/physics/propane.ts';

/** g of CO per kg of propane against equivalence ratio, equilibrium at 1600 K before any burning at the
 * mouth. SOURCE: computed with Cantera 3.2.0, GRI-Mech 3.0. */
const CO_GRAMS_PER_KILOGRAM: readonly (readonly [number, number])[] = [
  [0.8, 0.2],
  [0.9, 0.3],
  [1, 3.4],
  [1.05, 205],
  [1.1, 382],
  [1.2, 670],
  [1.3, 891],
  [1.4, 1063],
  [1.5, 1199],
];

/** J/(kg K) of flue gas, an effective mean: it puts the flame of an exact mixture near 1990 °C. */
export const FLUE_JOULES_PER_KILOGRAM_KELVIN = 1405;

/** What the flame gives. */
export interface Flame {
  readonly watts: number;
  readonly flueKilogramsPerSecond: number;
  /** CO in the chamber; most of it burns outside the mouth. */
  readonly carbonMonoxideKilogramsPerSecond: number;
}

/** Gas that flows through a burner whose flame has gone out: it drags cold air along and heats nothing. */
export function unlit(fuelKilogramsPerSecond: number): Flame {
  const flueKilogramsPerSecond = fuelKilogramsPerSecond * (1 + PROPANE_STOICHIOMETRIC_AIR_KILOGRAMS);
  return { watts: 0, flueKilogramsPerSecond, carbonMonoxideKilogramsPerSecond: 0 };
}

/**
 * Burns propane at an equivalence ratio (above 1 is rich: too little air, so
 * the heat is set by the air). The ratio is held inside 0.8 to 1.5.
 */
export function burn(fuelKilogramsPerSecond: number, equivalenceRatio: number): Flame {
  const ratio = Math.min(Math.max(equivalenceRatio, 0.8), 1.5);
  const burnt = Math.min(1, 1 / ratio);
  const air = PROPANE_STOICHIOMETRIC_AIR_KILOGRAMS / ratio;
  return {
    watts: fuelKilogramsPerSecond * PROPANE_NET_HEAT_JOULES_PER_KILOGRAM * burnt,
    flueKilogramsPerSecond: fuelKilogramsPerSecond * (1 + air),
    carbonMonoxideKilogramsPerSecond: (fuelKilogramsPerSecond * carbonMonoxideGrams(ratio)) / 1000,
  };
}

function carbonMonoxideGrams(ratio: number): number {
  const above = CO_GRAMS_PER_KILOGRAM.findIndex(([edge]) => edge >= ratio);
  const high = CO_GRAMS_PER_KILOGRAM[above];
  const low = CO_GRAMS_PER_KILOGRAM[above - 1] ?? high;
  if (high === undefined || low === undefined || high === low) return high?.[1] ?? 0;
  const share = (ratio - low[0]) / (high[0] - low[0]);
  return low[1] + share * (high[1] - low[1]);
}
