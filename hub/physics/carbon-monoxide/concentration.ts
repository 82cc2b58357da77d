/**
 * Carbon monoxide by volume (ppm) and by mass (mg/m³).
 *
 * The law of a country states one or both, at its own reference temperature;
 * legal tables round, so a value converted here may differ from the printed one.
 */
import { requireRange } from '../errors.ts';

/** g/mol. */
export const CARBON_MONOXIDE_MOLAR_GRAMS = 28.01;
/** Density against air; CO mixes with room air rather than lying low or rising. 28.01 / 28.96. */
export const CARBON_MONOXIDE_RELATIVE_DENSITY = CARBON_MONOXIDE_MOLAR_GRAMS / 28.96;

const GAS_CONSTANT = 8.314462618;
const KELVIN_OFFSET = 273.15;
const ATMOSPHERE_PASCALS = 101_325;

/**
 * Volume of one mole of an ideal gas, litres: 24.055 at 20 °C (EU tables),
 * 24.465 at 25 °C (OSHA, NIOSH, WHO) and one atmosphere.
 *
 * @param celsius -50 to 100 °C
 * @param pascals absolute, 10 kPa to 1 MPa
 * @throws PhysicsError `out-of-range`
 */
export function molarLitres(celsius: number, pascals = ATMOSPHERE_PASCALS): number {
  requireRange('Gas temperature', celsius, -50, 100, '°C');
  requireRange('Pressure', pascals, 1e4, 1e6, 'Pa');
  return ((GAS_CONSTANT * (celsius + KELVIN_OFFSET)) / pascals) * 1000;
}

/**
 * mg/m³ of carbon monoxide = ppm x M / Vm.
 *
 * @param ppm 0 to 1e6
 * @param celsius reference temperature of the table that is compared, -50 to 100 °C
 * @throws PhysicsError `out-of-range`
 */
export function milligramsPerCubicMetre(ppm: number, celsius: number): number {
  requireRange('Carbon monoxide', ppm, 0, 1e6, 'ppm');
  return (ppm * CARBON_MONOXIDE_MOLAR_GRAMS) / molarLitres(celsius);
}

/**
 * ppm of carbon monoxide, the inverse of {@link milligramsPerCubicMetre}.
 *
 * @throws PhysicsError `out-of-range`
 */
export function ppmOf(milligrams: number, celsius: number): number {
  requireRange('Carbon monoxide', milligrams, 0, 2e6, 'mg/m³');
  return (milligrams * molarLitres(celsius)) / CARBON_MONOXIDE_MOLAR_GRAMS;
}
