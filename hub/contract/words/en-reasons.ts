import type { Params } from '../alarm.ts';
import type { DisplayUnit } from '../schedule.ts';
import { difference, elapsed, numberOf, rate, temperature } from './format.ts';
import type { ReasonCode } from './types.ts';

/** Why a segment was not met, or only with doubts. */

function early(start: string, params: Params, unit: DisplayUnit): string {
  const planned = numberOf(params, 'plannedSeconds');
  if (planned !== null) {
    return `${start}: the soak clock had ${elapsed(numberOf(params, 'soakSeconds'))} of ${elapsed(planned)}`;
  }
  const measured = numberOf(params, 'measuredCelsius');
  const target = temperature(numberOf(params, 'targetCelsius'), unit);
  return measured === null
    ? `${start}: before ${target} was seen`
    : `${start}: at ${temperature(measured, unit)} of ${target}`;
}

function above(params: Params, unit: DisplayUnit): string {
  const over = difference(numberOf(params, 'overCelsius'), unit);
  return `${over} above the tolerance for ${elapsed(numberOf(params, 'seconds'))}`;
}

/** One reason as a sentence. */
export function reasonWords(code: ReasonCode, params: Params, unit: DisplayUnit): string {
  const time = elapsed(numberOf(params, 'seconds'));
  const measured = rate(numberOf(params, 'measuredCelsiusPerHour'), unit);
  const limit = rate(numberOf(params, 'limitCelsiusPerHour'), unit);
  switch (code) {
    case 'moved-on-early':
      return early('Moved on early', params, unit);
    case 'finished-early':
      return early('Finished early', params, unit);
    case 'not-begun':
      return 'Never begun';
    case 'not-confirmed':
      return 'Nobody confirmed that this was done';
    case 'overshoot':
      return above(params, unit);
    case 'short-overshoot':
      return `${above(params, unit)}: short`;
    case 'blind':
      return `Nothing was measured for ${time}`;
    case 'interrupted':
      return `Outside tolerance for ${time} after the soak had begun`;
    case 'rate-not-seen':
      return 'The cooling rate was not measured: no probe on the piece';
    case 'heated-too-fast':
      return `Heated at ${measured}, planned ${limit}`;
    case 'heated-slowly':
      return `Heated slowly: ${measured}, planned ${limit}`;
    case 'cooled-too-fast':
      return `Cooled too fast: ${measured} on average, at most ${limit} allowed, too fast for ${time}`;
    case 'cooled-too-fast-briefly':
      return `Cooled faster than ${limit} for ${time}`;
    case 'cooled-too-slowly':
      return `Cooled too slowly: ${measured} on average, at least ${limit} wanted`;
    default:
      throw code satisfies never;
  }
}
