import type { StepWindow } from '../../hub/contract/compute/steels.ts';
import type { DisplayUnit } from '../../hub/contract/schedule.ts';
import { type BandLike, roundToUncertainty, showBand, showValue } from '../../hub/contract/significant.ts';
import { differenceFromBase, fromBase } from '../../hub/contract/units.ts';
import { degrees, degreesDifference, unitNamed } from '../words/format.ts';

/** Temperatures of steel as people read them: in their unit, with the figures that the band allows. Pure. */

/** A true minus sign, as everywhere on the screens. */
function minus(text: string): string {
  return text.replaceAll(/-(?=\d)/g, '−');
}

function inUnit(band: BandLike, unit: DisplayUnit): BandLike {
  const of = (celsius: number) => fromBase(celsius, unitNamed(unit));
  return { low: of(band.low), value: of(band.value), high: of(band.high) };
}

/** A band in °C as "733 °C (700 to 770)". */
export function bandText(band: BandLike, unit: DisplayUnit): string {
  return minus(showBand(inUnit(band, unit), unitNamed(unit).label));
}

/** The value of a band in °C alone, rounded by the half-width of its band; `label` false leaves the unit's sign out. */
export function valueText(band: BandLike, unit: DisplayUnit, label = true): string {
  const { low, value, high } = inUnit(band, unit);
  return minus(showValue(value, (high - low) / 2, label ? unitNamed(unit).label : ''));
}

/** A range in °C, rounded by the half-width between its ends: "674 to 704 °C". */
export function rangeText(lowCelsius: number, highCelsius: number, unit: DisplayUnit): string {
  if (lowCelsius === highCelsius) return `${minus(degrees(lowCelsius, unit))} ${unitNamed(unit).label}`;
  return `${degrees(lowCelsius, unit)} to ${degrees(highCelsius, unit)} ${unitNamed(unit).label}`;
}

/** The window of a step, rounded by its uncertainty: "815 to 830 °C". */
export function windowText(window: StepWindow, unit: DisplayUnit): string {
  const { label } = unitNamed(unit);
  const by = differenceFromBase(window.uncertaintyCelsius, unitNamed(unit));
  const end = (celsius: number) => roundToUncertainty(fromBase(celsius, unitNamed(unit)), by);
  const low = end(window.lowCelsius);
  const high = end(window.highCelsius);
  return low < high ? `${low} to ${high} ${label}` : `${high} ${label}`;
}

/** "± 20 °C": what is to be added on both sides. */
export function uncertaintyText(celsius: number, unit: DisplayUnit): string {
  return `± ${degreesDifference(celsius, unit)} ${unitNamed(unit).label}`;
}
