import type { DisplayUnit } from '../../hub/contract/schedule.ts';
import type { ShopSettings } from '../../hub/contract/shop.ts';
import {
  BASE_UNIT,
  differenceFromBase,
  findUnit,
  fromBase,
  type Quantity,
  type Unit,
} from '../../hub/contract/units.ts';

/** How numbers, times and durations are written for people. Pure: the time zone can be given. */

type SettingsUnits = Pick<ShopSettings, 'displayUnit' | 'pressureUnit' | 'massUnit'>;

/** The unit with this code. Throws when the contract does not know it: a fault of the program, not of a user. */
export function unitNamed(code: string): Unit {
  const unit = findUnit(code);
  if (unit === undefined) throw new Error(`unit-unknown: no unit is called "${code}"`);
  return unit;
}

/** A number with a fixed count of decimals and a real minus sign. Never "-0". */
export function number(value: number, decimals = 0): string {
  const text = value.toFixed(decimals);
  const isZero = Number(text) === 0;
  return isZero ? text.replace('-', '') : text.replace('-', '−');
}

/** The same words with every number kept on one line with its unit. */
export function unbroken(text: string): string {
  return text.replaceAll(/(\d) (?=(?:°C|°F|K|min|h|s|ppm)(?![a-z]))/g, '$1\u00a0');
}

/** A temperature given in °C, as a whole number of the display unit, without the unit's sign. */
export function degrees(celsius: number, unit: DisplayUnit): string {
  return number(fromBase(celsius, unitNamed(unit)));
}

/** A temperature given in °C, with its sign: "860 °C". */
export function temperature(celsius: number, unit: DisplayUnit): string {
  return `${degrees(celsius, unit)} ${unitNamed(unit).label}`;
}

/** A difference of temperatures given in °C (a tolerance), without the unit's sign. */
export function degreesDifference(celsius: number, unit: DisplayUnit): string {
  return number(differenceFromBase(celsius, unitNamed(unit)));
}

/** A rate given in °C per hour, in the display unit: "100 °C/h". */
export function rate(celsiusPerHour: number, unit: DisplayUnit): string {
  return `${degreesDifference(celsiusPerHour, unit)} ${unitNamed(unit).label}/h`;
}

/** The unit in which the shop wants to see a quantity. */
export function shownUnit(quantity: Quantity, settings: SettingsUnits): Unit {
  switch (quantity) {
    case 'temperature':
      return unitNamed(settings.displayUnit);
    case 'pressure':
      return unitNamed(settings.pressureUnit);
    case 'mass':
      return unitNamed(settings.massUnit);
    case 'emf':
      return unitNamed('mV');
    case 'carbon-monoxide':
    case 'carbon-dioxide':
    case 'oxygen':
    case 'relative-humidity':
      return unitNamed(BASE_UNIT[quantity]);
    default:
      return quantity satisfies never;
  }
}

/** Decimals that a person can use, by unit code; 0 for the rest. */
const SHOWN_DECIMALS: Readonly<Record<string, number>> = {
  bar: 2,
  kPa: 1,
  '[psi]': 1,
  "[in_i'H2O]": 1,
  kg: 1,
  '[lb_av]': 1,
  mV: 3,
  '%': 1,
};

/** A base-unit value as number and unit label, the way the shop wants it. */
export function amount(
  value: number,
  quantity: Quantity,
  settings: SettingsUnits,
): { readonly number: string; readonly unit: string } {
  const unit = shownUnit(quantity, settings);
  return {
    number: number(fromBase(value, unit), SHOWN_DECIMALS[unit.code] ?? 0),
    unit: unit.label,
  };
}
