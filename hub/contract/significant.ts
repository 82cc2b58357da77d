/**
 * Numbers with no more figures than their uncertainty allows: a page that shows 861.4273 °C for something known
 * to 25 °C claims a knowledge that nobody has.
 *
 * Rule of the Particle Data Group (Review of Particle Physics, introduction, "Rounding"; from memory): of the three
 * leading digits of the uncertainty, 100 to 354 keeps two figures, 355 to 949 keeps one, 950 to 999 rounds up to
 * 1000 and keeps two. The value is then rounded to the same decimal place.
 */

/** A value inside its band, all three in one unit. */
export interface BandLike {
  readonly low: number;
  readonly value: number;
  readonly high: number;
}

/** Above this leading part of the uncertainty one figure is enough. */
const ONE_FIGURE_FROM = 3.55;
/** A step below this is rounding noise of doubles, not knowledge. */
const FINEST_EXPONENT = -12;

/**
 * The power of ten that a value with this uncertainty is rounded to: 1 for ± 25, 10 for ± 45, 0.01 for ± 0.12.
 *
 * @param uncertainty half-width in the unit of the value; its sign does not matter
 * @returns 0 when the uncertainty is 0 or no finite number: then nothing is known of how far to round
 */
export function significantStep(uncertainty: number): number {
  const exponent = stepExponent(uncertainty);
  return exponent === null ? 0 : 10 ** exponent;
}

/** A value rounded to what its uncertainty allows; unrounded when the uncertainty says nothing. */
export function roundToUncertainty(value: number, uncertainty: number): number {
  const exponent = stepExponent(uncertainty);
  return exponent === null ? value : Number(atExponent(value, exponent));
}

/** A value as text with the figures that its uncertainty allows, such as "733 °C". */
export function showValue(value: number, uncertainty: number, unit: string): string {
  return withUnit(atExponent(value, stepExponent(uncertainty)), unit);
}

/** A value with its uncertainty, both to the same place: "1000 ± 5 °C". */
export function showPlusMinus(value: number, uncertainty: number, unit: string): string {
  const exponent = stepExponent(uncertainty);
  return withUnit(`${atExponent(value, exponent)} ± ${atExponent(Math.abs(uncertainty), exponent)}`, unit);
}

/** A value with its band, rounded by half the width of the band: "733 °C (700 to 770)". */
export function showBand(band: BandLike, unit: string): string {
  const exponent = stepExponent((band.high - band.low) / 2);
  const [low, value, high] = [band.low, band.value, band.high].map((each) => atExponent(each, exponent));
  return exponent === null
    ? withUnit(value ?? '', unit)
    : `${withUnit(value ?? '', unit)} (${low} to ${high})`;
}

/** A value rounded to a power of ten that is fixed by a table or a standard: `showTo(41.2756, -3, 'mV')`. */
export function showTo(value: number, exponent: number, unit: string): string {
  return withUnit(atExponent(value, exponent), unit);
}

function stepExponent(uncertainty: number): number | null {
  const size = Math.abs(uncertainty);
  if (!(size > 0) || !Number.isFinite(size)) return null;
  const exponent = Math.floor(Math.log10(size));
  const leading = size / 10 ** exponent;
  return Math.max(FINEST_EXPONENT, leading < ONE_FIGURE_FROM ? exponent - 1 : exponent);
}

function atExponent(value: number, exponent: number | null): string {
  if (exponent === null) return String(value);
  const step = 10 ** Math.max(0, exponent);
  const rounded = exponent > 0 ? Math.round(value / step) * step : value;
  const text = rounded.toFixed(Math.max(0, -exponent));
  return Number(text) === 0 ? text.replace('-', '') : text;
}

function withUnit(text: string, unit: string): string {
  return unit === '' ? text : `${text} ${unit}`;
}
