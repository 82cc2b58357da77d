import type { DisplayUnit } from '../../hub/contract/schedule.ts';
import { differenceFromBase } from '../../hub/contract/units.ts';
import { number, unitNamed } from '../words/format.ts';
import { span } from '../words/span.ts';

/** Times and rates with no more figures than is known of them. Pure. */

/** Nothing here is known better than to a tenth, even where both ends of a band agree. */
const LEAST_UNKNOWN = 0.1;
/** Steps in which people tell times, s. */
const STEPS = [1, 5, 10, 30, 60, 300, 600, 1800, 3600] as const;

/**
 * A time in steps that people tell times in, none coarser than half of what is unknown of it: 5120 s that may be
 * 1200 s less or more is told in steps of five minutes.
 */
export function inTellableSteps(seconds: number, unknownSeconds: number): number {
  const step = STEPS.findLast((one) => one <= unknownSeconds / 2) ?? STEPS[0];
  return Math.round(seconds / step) * step;
}

/** "15 min", "2 min 10 s": a time told as its band (seconds) allows, at least a tenth of itself being unknown. */
export function aboutTime(seconds: number, low = seconds, high = seconds): string {
  const unknown = Math.max((high - low) / 2, seconds * LEAST_UNKNOWN);
  return span(inTellableSteps(seconds, unknown));
}

/** "13 to 18 min": both ends of a band of times, the unit once where it is the same. Null: told, they are one. */
export function timeBand(low: number, high: number): string | null {
  const unknown = Math.max((high - low) / 2, high * LEAST_UNKNOWN);
  const [from, to] = [inTellableSteps(low, unknown), inTellableSteps(high, unknown)];
  if (from === to) return null;
  if (to < 60) return `${from} to ${to} s`;
  if (to < 3600 && from % 60 === 0 && to % 60 === 0) return `${from / 60} to ${to / 60} min`;
  return `${span(from)} to ${span(to)}`;
}

/** A number with two figures: what a computed rate is worth. */
export function twoFigures(value: number): string {
  const rounded = Number(value.toPrecision(2));
  return number(rounded, Math.abs(rounded) < 10 && rounded % 1 !== 0 ? 1 : 0);
}

const PER_HOUR_BELOW = 3600;
const PER_MINUTE_BELOW = 36_000;

/** A rate of cooling in the time that one would count it in: "28 °C/h", "59 °C/min", "53 °C/s". */
export function coolingRate(celsiusPerHour: number, unit: DisplayUnit): string {
  const { label } = unitNamed(unit);
  const shown = differenceFromBase(celsiusPerHour, unitNamed(unit));
  if (celsiusPerHour < PER_HOUR_BELOW) return `${twoFigures(shown)} ${label}/h`;
  if (celsiusPerHour < PER_MINUTE_BELOW) return `${twoFigures(shown / 60)} ${label}/min`;
  return `${twoFigures(shown / 3600)} ${label}/s`;
}

/** A difference of temperatures with two figures: "3.4 °C"; below one "less than 1 °C". */
export function aboutDifference(celsius: number, unit: DisplayUnit): string {
  const { label } = unitNamed(unit);
  const shown = differenceFromBase(Math.abs(celsius), unitNamed(unit));
  return shown < 1 ? `less than 1 ${label}` : `${twoFigures(shown)} ${label}`;
}
