import {
  differenceFromBase,
  differenceToBase,
  fromBase,
  toBase,
  type Unit,
} from '../../hub/contract/units.ts';

/** Reading numbers that people type, in the unit they see, into base units. Pure. */

export type Entry<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly message: string };

/** A point on a scale (a temperature) shifts between units; a difference (a tolerance, a rate) only scales. */
export type NumberMeaning = 'point' | 'difference';

export interface NumberRule {
  readonly unit: Unit;
  readonly meaning: NumberMeaning;
  /** Whether empty is an answer (null). */
  readonly optional?: boolean;
  /** Limits in base units, both included. */
  readonly low?: number;
  readonly high?: number;
}

/** Reads what a person typed. A decimal comma is a decimal point; thousands may be set off by spaces. */
export function readNumber(text: string): Entry<number | null> {
  const compact = text
    .trim()
    .replaceAll(/[\s\u00a0\u202f]/g, '')
    .replace('−', '-');
  if (compact === '') return { ok: true, value: null };
  if (!/^[+-]?(\d+([.,]\d*)?|[.,]\d+)$/.test(compact)) {
    return { ok: false, message: `"${text.trim()}" is not a number: write it like 860 or 12.5` };
  }
  return { ok: true, value: Number(compact.replace(',', '.')) };
}

/** Reads what a person typed in the unit they see, as a base-unit value inside the rule's limits. */
export function readAmount(text: string, rule: NumberRule): Entry<number | null> {
  const typed = readNumber(text);
  if (!typed.ok) return typed;
  if (typed.value === null) {
    return rule.optional === true ? typed : { ok: false, message: 'a number is needed here' };
  }
  const base = intoBase(typed.value, rule);
  const complaint = outsideLimits(base, rule);
  return complaint === null ? { ok: true, value: base } : { ok: false, message: complaint };
}

/** A base-unit value as the text of an input, in the unit that the person sees; null is the empty text. */
export function writeAmount(base: number | null, rule: NumberRule): string {
  if (base === null) return '';
  // Seven digits: a round trip °F to °C and back must show the number that was typed.
  return String(Number(outOfBase(base, rule).toPrecision(7)));
}

/** Reads a duration: "90" or "90 min", "1:30" or "1 h 30 min", "45 s", "2 h". Seconds. */
export function readDuration(text: string): Entry<number> {
  const clean = text.trim().toLowerCase().replaceAll(',', '.');
  const clock = /^(\d{1,4}):([0-5]?\d)(?::([0-5]?\d))?$/.exec(clean);
  if (clock) {
    const [, hours = '0', minutes = '0', seconds = '0'] = clock;
    return { ok: true, value: Number(hours) * 3600 + Number(minutes) * 60 + Number(seconds) };
  }
  const seconds = secondsInWords(clean);
  if (seconds !== null) return { ok: true, value: seconds };
  return {
    ok: false,
    message: `"${text.trim()}" is not a duration: write it like 20 min, 1 h 30 min or 1:30`,
  };
}

const TIME_UNITS: readonly { readonly name: RegExp; readonly seconds: number }[] = [
  { name: /^h(ours?)?$/, seconds: 3600 },
  { name: /^m(in(utes?)?)?$/, seconds: 60 },
  { name: /^s(ec(onds?)?)?$/, seconds: 1 },
];

/** "1 h 30 min" in seconds; a number without a unit is minutes. Null when it is nothing of the kind. */
function secondsInWords(clean: string): number | null {
  if (!/^(\d+(\.\d+)?\s*[a-z]*\s*)+$/.test(clean)) return null;
  let total = 0;
  let smallest = Number.POSITIVE_INFINITY;
  for (const [, amount = '', name = ''] of clean.matchAll(/(\d+(?:\.\d+)?)\s*([a-z]*)/g)) {
    const unit = TIME_UNITS.find((candidate) => candidate.name.test(name || 'min'));
    // Units only get smaller: "5 min 2 h" is more likely a slip than a wish.
    if (unit === undefined || unit.seconds >= smallest) return null;
    smallest = unit.seconds;
    total += Number(amount) * unit.seconds;
  }
  return Math.round(total);
}

/** Seconds as the text of a duration input; `readDuration` reads it back to the same seconds. */
export function writeDuration(seconds: number): string {
  const hours = Math.floor(seconds / 3600);
  const minutes = Math.floor((seconds % 3600) / 60);
  const rest = seconds % 60;
  const words = [
    hours > 0 ? `${hours} h` : '',
    minutes > 0 ? `${minutes} min` : '',
    rest > 0 || seconds === 0 ? `${rest} s` : '',
  ];
  return words.filter((word) => word !== '').join(' ');
}

function intoBase(value: number, rule: NumberRule): number {
  return rule.meaning === 'point' ? toBase(value, rule.unit) : differenceToBase(value, rule.unit);
}

function outOfBase(value: number, rule: NumberRule): number {
  return rule.meaning === 'point' ? fromBase(value, rule.unit) : differenceFromBase(value, rule.unit);
}

function outsideLimits(base: number, rule: NumberRule): string | null {
  // A hair of room, so that a limit typed in °F is not refused for the last bit of its conversion.
  const hair = 1e-9 * Math.max(1, Math.abs(base));
  const say = (limit: number) => `${writeAmount(limit, rule)} ${rule.unit.label}`;
  if (rule.low !== undefined && base < rule.low - hair) return `at least ${say(rule.low)}`;
  if (rule.high !== undefined && base > rule.high + hair) return `at most ${say(rule.high)}`;
  return null;
}
