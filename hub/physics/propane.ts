/**
 * Pure propane: how hard it pushes at a temperature, and what boiling it costs.
 *
 * Commercial gas holds ethane and propylene and reads a little higher, so a
 * pressure from here is what pure propane would show, not what is in a bottle.
 */
import { PhysicsError, requireRange } from './errors.ts';

/** J/kg, net: water leaves as vapour (2219.2 kJ/mol gross less its condensation; NIST, from memory). */
export const PROPANE_NET_HEAT_JOULES_PER_KILOGRAM = 46.34e6;

/** kg/mol. */
export const PROPANE_MOLAR_MASS_KILOGRAMS = 0.0440956;

/** kg of air that burn one kg of propane exactly. */
export const PROPANE_STOICHIOMETRIC_AIR_KILOGRAMS = 15.68;

/** One standard atmosphere, Pa. Gauge pressure = absolute pressure less this. */
export const STANDARD_ATMOSPHERE_PASCALS = 101_325;

const KELVIN_OFFSET = 273.15;
const CRITICAL_KELVIN = 369.89;
const CRITICAL_PASCALS = 4_251_200;
const LOWEST_CELSIUS = -100;
const HIGHEST_CELSIUS = 96;

/** Coefficient and exponent of each term in theta = 1 - T/Tc. */
const VAPOUR_PRESSURE_TERMS = [
  [-6.7722, 1],
  [1.6938, 1.5],
  [-1.3341, 2.2],
  [-3.1876, 4.8],
  [0.94937, 6.2],
] as const;

/**
 * Vapour pressure over liquid propane, Pa absolute.
 *
 * Source: ancillary equation of Lemmon, McLinden and Wagner (2009), from
 * memory; within 0.02 % of a table of that equation of state from -40 to 50 °C.
 *
 * @param celsius liquid temperature, -100 to 96 °C
 * @throws PhysicsError `out-of-range`
 */
export function propaneVapourPressurePascals(celsius: number): number {
  requireRange('Liquid propane temperature', celsius, LOWEST_CELSIUS, HIGHEST_CELSIUS, '°C');
  const reduced = (celsius + KELVIN_OFFSET) / CRITICAL_KELVIN;
  const theta = 1 - reduced;
  let sum = 0;
  for (const [coefficient, exponent] of VAPOUR_PRESSURE_TERMS) sum += coefficient * theta ** exponent;
  return CRITICAL_PASCALS * Math.exp(sum / reduced);
}

/**
 * Temperature at which liquid propane boils under a pressure, °C.
 *
 * @param pascals absolute pressure, within the range of
 *   {@link propaneVapourPressurePascals} (about 2.9 kPa to 4.19 MPa)
 * @throws PhysicsError `no-solution` when no temperature in that range fits
 */
export function propaneBoilingCelsius(pascals: number): number {
  const lowest = propaneVapourPressurePascals(LOWEST_CELSIUS);
  const highest = propaneVapourPressurePascals(HIGHEST_CELSIUS);
  if (!(pascals >= lowest && pascals <= highest)) {
    const message = `Propane pressure is ${pascals} Pa, outside ${Math.ceil(lowest)} to ${Math.floor(highest)} Pa`;
    throw new PhysicsError('no-solution', message, { pascals, lowest, highest });
  }
  let low = LOWEST_CELSIUS;
  let high = HIGHEST_CELSIUS;
  // Pressure rises with temperature all the way, so halving cannot miss; 50 halvings reach 1e-13 °C.
  for (let turn = 0; turn < 50; turn += 1) {
    const middle = (low + high) / 2;
    if (propaneVapourPressurePascals(middle) < pascals) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

const NORMAL_BOILING_CELSIUS = -42.11;
const NORMAL_BOILING_LATENT_JOULES = 428_000;
const WATSON_EXPONENT = 0.38;

/**
 * Heat that boils one kg of liquid propane, J/kg.
 *
 * Source: Watson's relation (exponent 0.38, from memory) carried from the
 * 428 kJ/kg at the normal boiling point of LP-gas handbooks; within 1 % at 15 °C.
 *
 * @param celsius liquid temperature, -100 to 96 °C
 * @throws PhysicsError `out-of-range`
 */
export function propaneLatentHeatJoulesPerKilogram(celsius: number): number {
  requireRange('Liquid propane temperature', celsius, LOWEST_CELSIUS, HIGHEST_CELSIUS, '°C');
  const left = 1 - (celsius + KELVIN_OFFSET) / CRITICAL_KELVIN;
  const leftAtBoiling = 1 - (NORMAL_BOILING_CELSIUS + KELVIN_OFFSET) / CRITICAL_KELVIN;
  return NORMAL_BOILING_LATENT_JOULES * (left / leftAtBoiling) ** WATSON_EXPONENT;
}
