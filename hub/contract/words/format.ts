import type { Params } from '../alarm.ts';
import type { DisplayUnit } from '../schedule.ts';
import { differenceFromBase, findUnit, fromBase, type Unit } from '../units.ts';

/** Numbers as people read them. */

function unitOf(unit: DisplayUnit): Unit {
  const found = findUnit(unit);
  if (found === undefined) throw new Error(`display-unit-unknown: there is no unit ${unit}`);
  return found;
}

/** A number out of the params of a finding; null when it is missing or not a number. */
export function numberOf(params: Params, name: string): number | null {
  const value = params[name];
  return typeof value === 'number' && Number.isFinite(value) ? value : null;
}

/** A text out of the params; the fallback when it is missing or empty. */
export function textOf(params: Params, name: string, fallback: string): string {
  const value = params[name];
  return typeof value === 'string' && value !== '' ? value : fallback;
}

/** A temperature given in °C, such as "860 °C" or "1580 °F". Null reads "unknown". */
export function temperature(celsius: number | null, unit: DisplayUnit): string {
  if (celsius === null) return 'unknown';
  const shown = unitOf(unit);
  return `${whole(fromBase(celsius, shown))} ${shown.label}`;
}

/** A difference of temperatures given in °C: no offset. Below 10 with one decimal. */
export function difference(celsius: number | null, unit: DisplayUnit): string {
  if (celsius === null) return 'unknown';
  const shown = unitOf(unit);
  const value = differenceFromBase(celsius, shown);
  return `${Math.abs(value) < 10 ? trimmed(value) : whole(value)} ${shown.label}`;
}

/** A rate given in °C/h, such as "150 °C/h". */
export function rate(celsiusPerHour: number | null, unit: DisplayUnit): string {
  return celsiusPerHour === null ? 'an unknown rate' : `${difference(celsiusPerHour, unit)}/h`;
}

/** A time still to go, rounded up: "45 s", "11 min", "2 h 10 min", and from ten hours on "14 h". */
export function duration(seconds: number): string {
  if (seconds < 60) return `${Math.max(0, Math.ceil(seconds))} s`;
  const minutes = Math.ceil(seconds / 60);
  if (minutes < 60) return `${minutes} min`;
  if (minutes >= 600) return `${Math.ceil(minutes / 60)} h`;
  const rest = minutes % 60;
  return rest === 0 ? `${Math.floor(minutes / 60)} h` : `${Math.floor(minutes / 60)} h ${rest} min`;
}

/** A time that has passed, rounded down to a second (below two minutes) or to a minute. */
export function elapsed(seconds: number | null): string {
  if (seconds === null) return 'an unknown time';
  if (seconds < 120) return `${Math.floor(seconds)} s`;
  const minutes = Math.floor(seconds / 60);
  if (minutes < 60) return `${minutes} min`;
  const rest = minutes % 60;
  return rest === 0 ? `${Math.floor(minutes / 60)} h` : `${Math.floor(minutes / 60)} h ${rest} min`;
}

function whole(value: number): string {
  const rounded = Math.round(value);
  return String(rounded === 0 ? 0 : rounded);
}

function trimmed(value: number): string {
  const rounded = Math.round(value * 10) / 10;
  return String(rounded === 0 ? 0 : rounded);
}
