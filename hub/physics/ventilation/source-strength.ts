/**
 * What burning propane in a room does to its air, and how much carbon monoxide
 * a rich flame makes.
 *
 * How much of that leaves the mouth unburnt is unknown in practice: measure, do
 * not assume. No measured emission factor of a small forge was found.
 */
import { requireRange } from '../errors.ts';
import { PROPANE_MOLAR_MASS_KILOGRAMS, PROPANE_NET_HEAT_JOULES_PER_KILOGRAM } from '../propane.ts';

/** m³ of one mole of ideal gas at 20 °C and one atmosphere. */
const MOLE_CUBIC_METRES = 0.024055;
const OXYGEN_SHARE = 0.2095;
const CARBON_DIOXIDE_KILOGRAMS = 0.04401;
const WATER_KILOGRAMS = 0.018015;
const CARBON_MONOXIDE_KILOGRAMS = 0.02801;

/** What a full burn takes and gives each hour; volumes at 20 °C and one atmosphere. */
export interface CombustionLoad {
  readonly oxygenCubicMetresPerHour: number;
  readonly airCubicMetresPerHour: number;
  readonly carbonDioxideCubicMetresPerHour: number;
  readonly carbonDioxideKilogramsPerHour: number;
  readonly waterKilogramsPerHour: number;
  /** Net: water leaves as vapour. */
  readonly kilowattsNet: number;
}

/**
 * Load of propane burnt in full: C3H8 + 5 O2 = 3 CO2 + 4 H2O.
 *
 * @param kilogramsPerHour 0 to 1000 kg/h
 * @throws PhysicsError `out-of-range`
 */
export function combustionLoad(kilogramsPerHour: number): CombustionLoad {
  requireRange('Propane', kilogramsPerHour, 0, 1000, 'kg/h');
  const moles = kilogramsPerHour / PROPANE_MOLAR_MASS_KILOGRAMS;
  const oxygen = 5 * moles * MOLE_CUBIC_METRES;
  return {
    oxygenCubicMetresPerHour: oxygen,
    airCubicMetresPerHour: oxygen / OXYGEN_SHARE,
    carbonDioxideCubicMetresPerHour: 3 * moles * MOLE_CUBIC_METRES,
    carbonDioxideKilogramsPerHour: 3 * moles * CARBON_DIOXIDE_KILOGRAMS,
    waterKilogramsPerHour: 4 * moles * WATER_KILOGRAMS,
    kilowattsNet: (kilogramsPerHour * PROPANE_NET_HEAT_JOULES_PER_KILOGRAM) / 3.6e6,
  };
}

/**
 * Share of oxygen that a room settles at while its flame burns the room's air, 0 to 0.2095.
 *
 * @param oxygenCubicMetresPerHour what the flame takes, 0 or more
 * @param airCubicMetresPerHour fresh air, above 0
 * @returns 0 where the flame would take all of it
 * @throws PhysicsError `out-of-range`
 */
export function steadyOxygenShare(oxygenCubicMetresPerHour: number, airCubicMetresPerHour: number): number {
  requireRange('Oxygen', oxygenCubicMetresPerHour, 0, 1e6, 'm³/h');
  requireRange('Air flow', airCubicMetresPerHour, 1e-6, 1e7, 'm³/h');
  return Math.max(0, OXYGEN_SHARE - oxygenCubicMetresPerHour / airCubicMetresPerHour);
}

/** Fuel over what the air can burn; kg of CO a kg of propane with the products cooled to 1600 and 1400 K. */
const RICH_FLAME: readonly (readonly [phi: number, at1600: number, at1400: number])[] = [
  [0.8, 0.0002, 0],
  [0.9, 0.0003, 0],
  [1, 0.0034, 0.0004],
  [1.05, 0.205, 0.184],
  [1.1, 0.382, 0.344],
  [1.2, 0.67, 0.608],
  [1.3, 0.891, 0.815],
  [1.4, 1.063, 0.981],
  [1.5, 1.199, 1.116],
];

/** kg of CO a kg of propane inside the chamber, by how far the products cooled before the reaction froze. */
export interface RichFlameYield {
  readonly low: number;
  readonly high: number;
}

/**
 * Carbon monoxide inside the chamber, before any of it burns at the mouth.
 *
 * Source: equilibrium computed with Cantera and GRI-Mech 3.0, products at 1400 K (low) and 1600 K (high);
 * straight between the table's points. A quenched or badly mixed flame leaves more, above all below phi 1.
 *
 * @param phi fuel over stoichiometric fuel, 0.8 to 1.5
 * @throws PhysicsError `out-of-range`
 */
export function richFlameCarbonMonoxide(phi: number): RichFlameYield {
  requireRange('Fuel over stoichiometric', phi, 0.8, 1.5, '');
  const next = RICH_FLAME.findIndex((row) => row[0] >= phi);
  const [from, to] = [RICH_FLAME[Math.max(0, next - 1)], RICH_FLAME[next]];
  if (from === undefined || to === undefined) return { low: 0, high: 0 };
  const share = to[0] === from[0] ? 0 : (phi - from[0]) / (to[0] - from[0]);
  const between = (a: number, b: number): number => a + (b - a) * share;
  return { low: between(from[2], to[2]), high: between(from[1], to[1]) };
}

/**
 * m³/h of carbon monoxide at 20 °C that leaves into the room.
 *
 * @param kilogramsPerHour propane, 0 to 1000 kg/h
 * @param yieldKilograms kg of CO a kg of propane, 0 to 2
 * @param escapingShare what does not burn at the mouth, 0 to 1: unknown in practice
 * @throws PhysicsError `out-of-range`
 */
export function carbonMonoxideSourceCubicMetresPerHour(
  kilogramsPerHour: number,
  yieldKilograms: number,
  escapingShare: number,
): number {
  requireRange('Propane', kilogramsPerHour, 0, 1000, 'kg/h');
  requireRange('Yield', yieldKilograms, 0, 2, 'kg/kg');
  requireRange('Escaping share', escapingShare, 0, 1, '');
  const kilograms = kilogramsPerHour * yieldKilograms * escapingShare;
  return (kilograms / CARBON_MONOXIDE_KILOGRAMS) * MOLE_CUBIC_METRES;
}
