import { type Entry, readNumber } from '../parts/number-entry.ts';
import { number } from '../words/format.ts';

/** Lengths as people in this shop write them; millimetres inside. Pure. */

export const LENGTH_UNITS = ['mm', 'in'] as const;
export type LengthUnit = (typeof LENGTH_UNITS)[number];

/** Exact: the international inch of 1959. */
const MM_PER_INCH = 25.4;

function scaleOf(unit: LengthUnit): number {
  return unit === 'mm' ? 1 : MM_PER_INCH;
}

/** Reads a length; in inches also a fraction ("5/8", "1 1/4"). Millimetres. */
export function readLength(text: string, unit: LengthUnit): Entry<number | null> {
  const fraction = unit === 'in' ? /^\s*(?:(\d+)[\s-]+)?(\d+)\s*\/\s*([1-9]\d*)\s*"?\s*$/.exec(text) : null;
  if (fraction) {
    const [, whole = '0', top = '0', bottom = '1'] = fraction;
    return { ok: true, value: (Number(whole) + Number(top) / Number(bottom)) * MM_PER_INCH };
  }
  const entry = readNumber(text);
  if (!entry.ok || entry.value === null) return entry;
  return { ok: true, value: Number((entry.value * scaleOf(unit)).toPrecision(9)) };
}

/** Millimetres as the text of a field: a tenth of a millimetre, a thousandth of an inch. */
export function writeLength(millimetres: number, unit: LengthUnit): string {
  const decimals = unit === 'mm' ? 1 : 3;
  return String(Number((millimetres / scaleOf(unit)).toFixed(decimals)));
}

/** "25 mm", "0.98 in": as many figures as a rule or a caliper at the forge gives. */
export function length(millimetres: number, unit: LengthUnit): string {
  const value = millimetres / scaleOf(unit);
  const decimals = unit === 'mm' ? (value < 10 ? 1 : 0) : 2;
  const text = number(value, decimals);
  return `${text.includes('.') ? text.replace(/\.?0+$/, '') : text} ${unit}`;
}

/** The number that a length axis shows for millimetres. */
export function inLength(millimetres: number, unit: LengthUnit): number {
  return millimetres / scaleOf(unit);
}

/** The same text in the other unit; a text that cannot be read stays as it is. */
export function convertLength(text: string, from: LengthUnit, to: LengthUnit): string {
  const entry = readLength(text, from);
  return entry.ok && entry.value !== null ? writeLength(entry.value, to) : text;
}
