/**
 * Units of the trade's tables, for reading those tables. The house computes in
 * kg, Pa, °C, W and s; nothing outside this folder needs these.
 */

export const KILOGRAMS_PER_POUND = 0.45359237;
/** International table Btu, J. */
export const JOULES_PER_BTU = 1055.05585262;
/** W in one Btu/h. */
export const WATTS_PER_BTU_PER_HOUR = JOULES_PER_BTU / 3600;
export const PASCALS_PER_PSI = 6894.757293168;
/** Water at 4 °C. */
export const PASCALS_PER_INCH_OF_WATER = 249.08891;
export const CUBIC_METRES_PER_CUBIC_FOOT = 0.028316846592;
export const METRES_PER_INCH = 0.0254;

export function fahrenheitOf(celsius: number): number {
  return celsius * 1.8 + 32;
}

export function celsiusOf(fahrenheit: number): number {
  return (fahrenheit - 32) / 1.8;
}
