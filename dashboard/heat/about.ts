import type { DisplayUnit } from '../../hub/contract/schedule.ts';
import { roundToUncertainty } from '../../hub/contract/significant.ts';
import { differenceFromBase } from '../../hub/contract/units.ts';
import { number, unitNamed } from '../words/format.ts';
import { span } from '../words/span.ts';
import { duration } from '../words/time.ts';

/** Times and rates with no more figures than is known of them. Pure. */

/** Nothing here is known better than to a tenth, even where both ends of a band agree. */
const LEAST_UNKNOWN = 0.1;

/** "15 min", "2 min 10 s": a time rounded by its band (seconds), at least by a tenth of itself. */
export function aboutTime(seconds: number, low = seconds, high = seconds): string {
  const unknown = Math.max((high - low) / 2, seconds * LEAST_UNKNOWN);
  return span(roundToUncertainty(seconds, unknown));
}

/** "13 to 18 min": both ends of a band of times, the unit once where it is the same. */
export function timeBand(low: number, high: number): string {
  const unknown = Math.max((high - low) / 2, high * LEAST_UNKNOWN);
  const ends = [low, high].map((end) => roundToUncertainty(end, unknown));
  const [from = 0, to = 0] = ends;
  if (to < 120) return `${Math.round(from)} to ${Math.round(to)} s`;
  if (to < 3600 && from >= 60) return `${Math.round(from / 60)} to ${Math.round(to / 60)} min`;
  return `${duration(from)} to ${duration(to)}`;
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
