import type { GasBand, GasFurnaceNow, GasSupplyNow, GasUsed } from '../../hub/contract/gas.ts';
import type { ShopSettings } from '../../hub/contract/shop.ts';
import { fromBase } from '../../hub/contract/units.ts';
import { amount, number, shownUnit } from '../words/format.ts';
import { gasWords } from '../words/gas.ts';

/** Numbers of the gas page as people read them, and where they stand on a bar. Pure. */

export type Units = Pick<ShopSettings, 'displayUnit' | 'pressureUnit' | 'massUnit'>;

export function pressureText(pascals: number | null, units: Units): string {
  if (pascals === null) return gasWords.unknown;
  const { number: value, unit } = amount(pascals, 'pressure', units);
  return `${value} ${unit}`;
}

/** A mass with one decimal, two below one. */
export function massText(kilograms: number | null, units: Units): string {
  if (kilograms === null) return gasWords.unknown;
  const unit = shownUnit('mass', units);
  const shown = fromBase(kilograms, unit);
  return `${number(shown, Math.abs(shown) < 1 ? 2 : 1)} ${unit.label}`;
}

/** "0.75 to 1.02 kg/h": two decimals below ten, which is what 15 % deserves and no more. */
export function flowText(band: GasBand | null, units: Units): string {
  if (band === null) return gasWords.unknown;
  if (band.high === 0) return `0 ${shownUnit('mass', units).label}/h`;
  return `${rangeOf(band, (value) => fromBase(value, shownUnit('mass', units)), 2)} ${shownUnit('mass', units).label}/h`;
}

export function kilowattText(band: GasBand | null): string {
  if (band === null) return gasWords.unknown;
  return band.high === 0 ? '0 kW' : `${rangeOf(band, (value) => value, 0)} kW`;
}

export function massRange(band: GasBand, units: Units): string {
  const unit = shownUnit('mass', units);
  return `${rangeOf(band, (value) => fromBase(value, unit), 1)} ${unit.label}`;
}

function rangeOf({ low, high }: GasBand, into: (value: number) => number, decimals: number): string {
  return `${number(into(low), decimals)} to ${number(into(high), decimals)}`;
}

/** Hours as "7 h 45 min" below ten, whole hours from there on, "more than 4 days" beyond. */
export function hoursText(hours: number): string {
  if (hours > 96) return 'more than 4 days';
  if (hours >= 10) return `${Math.round(hours)} h`;
  const minutes = Math.round((hours * 60) / 5) * 5;
  const rest = minutes % 60;
  const whole = Math.floor(minutes / 60);
  if (whole === 0) return `${rest} min`;
  return rest === 0 ? `${whole} h` : `${whole} h ${rest} min`;
}

export function costText({ cost, currency }: Pick<GasUsed, 'cost' | 'currency'>): string {
  return cost === null ? '' : `${currency}${currency === '' ? '' : '\u00a0'}${number(cost.value, 2)}`;
}

/** A share of a whole as a length, 0 to 100, two decimals. */
export function along(value: number, whole: number): number {
  return whole <= 0 ? 0 : Math.round(Math.min(1, Math.max(0, value / whole)) * 10_000) / 100;
}

/** The end of the pressure bar, Pa: room above the band and above what is there now. */
export function pressureEnd({ gas, pressurePascals }: GasFurnaceNow): number {
  return Math.max(20_000, (gas.highPascals ?? 100_000) * 1.25, (pressurePascals ?? 0) * 1.1);
}

/** The end of the bar of a supply, kg: full, or what may be in it at most. */
export function contentsEnd({ contents, fullKilograms }: GasSupplyNow): number {
  return Math.max(fullKilograms ?? 0, contents?.high ?? 0, 0.1);
}

/** The end of the bar of hours. */
export function hoursEnd({ endurance }: GasSupplyNow): number {
  return Math.max(1, Math.min(96, Math.ceil((endurance?.highHours ?? 0) * 1.1)));
}
