import type { DisplayUnit } from '../../hub/contract/schedule.ts';
import {
  type Entry,
  type NumberMeaning,
  type NumberRule,
  readAmount,
  readDuration,
  writeAmount,
} from '../parts/number-entry.ts';
import { unitNamed } from '../words/format.ts';

/** The texts of a schedule's form and what they mean. Limits are the contract's: nothing here knows them. */

export function ruleOf(unit: DisplayUnit, meaning: NumberMeaning, optional = false): NumberRule {
  return { unit: unitNamed(unit), meaning, optional };
}

/** A text in the unit that the person sees, as a base-unit value. Empty is null when that is an answer. */
export function readIn(
  text: string,
  unit: DisplayUnit,
  meaning: NumberMeaning,
  optional = false,
): Entry<number | null> {
  const entry = readAmount(text, ruleOf(unit, meaning, optional));
  if (!entry.ok || entry.value === null) return entry;
  // 1500 °F is 815.555… °C: nine digits keep the typed number and spare the archive the noise of the division.
  return { ok: true, value: Number(entry.value.toPrecision(9)) };
}

/** A base-unit value as the text of a field; at most two decimals, because that is all a furnace knows. */
export function writeIn(value: number | null, unit: DisplayUnit, meaning: NumberMeaning): string {
  if (value === null) return '';
  return String(Math.round(Number(writeAmount(value, ruleOf(unit, meaning))) * 100) / 100);
}

/** "1:30", "0:20", with seconds only when there are some: "0:00:45". */
export function writeHours(seconds: number): string {
  const pad = (value: number) => String(value).padStart(2, '0');
  const whole = Math.round(seconds);
  const hours = Math.floor(whole / 3600);
  const minutes = Math.floor((whole % 3600) / 60);
  const rest = whole % 60;
  return rest === 0 ? `${hours}:${pad(minutes)}` : `${hours}:${pad(minutes)}:${pad(rest)}`;
}

/** Hours and minutes, or the same in words ("90 min"). Whole seconds. */
export function readHours(text: string): Entry<number> {
  return readDuration(text);
}

/** The same text in another unit; a text that cannot be read stays as it is, for its author to mend. */
export function convertText(
  text: string,
  from: DisplayUnit,
  to: DisplayUnit,
  meaning: NumberMeaning,
): string {
  const entry = readAmount(text, ruleOf(from, meaning, true));
  return entry.ok && entry.value !== null ? writeIn(entry.value, to, meaning) : text;
}
