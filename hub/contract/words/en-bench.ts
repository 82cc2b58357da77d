import type { Params } from '../alarm.ts';
import type { BenchReasonCode } from '../bench.ts';
import type { DisplayUnit } from '../schedule.ts';
import { difference, numberOf, temperature, textOf } from './format.ts';

/** Why pieces stand together on the bench list, and why in this order. */

function at(params: Params, name: string, unit: DisplayUnit): string {
  return temperature(numberOf(params, name), unit);
}

function sections(params: Params): string {
  const factor = numberOf(params, 'factor');
  const most = numberOf(params, 'mostFactor');
  return `The thickest takes about ${factor?.toFixed(1) ?? '?'} times as long to heat through as the thinnest (at most ${most ?? '?'}: common practice, no source)`;
}

function furnace(params: Params, rated: string): string {
  const name = textOf(params, 'furnace', 'This furnace');
  return params.usual === 1
    ? `${name} is rated for ${rated} and usual for this step (common practice, no source)`
    : `${name} is rated for ${rated}; another kind is usual for this step (common practice, no source)`;
}

/** The sentence for a code and its numbers. */
export function benchWords(code: BenchReasonCode, params: Params, unit: DisplayUnit): string {
  switch (code) {
    case 'share-window':
      return `${at(params, 'lowCelsius', unit)} to ${at(params, 'highCelsius', unit)} suits all of them`;
    case 'share-section':
      return sections(params);
    case 'share-schedule':
      return 'They name the same schedule';
    case 'alone-no-window':
      return 'The heat of this step is not known for this steel: choose a schedule for it';
    case 'alone-no-partner':
      return 'Nothing else that is due suits its heat and its section';
    case 'furnace-fits':
      return furnace(params, at(params, 'ratedCelsius', unit));
    case 'no-furnace':
      return `No furnace is rated for ${at(params, 'targetCelsius', unit)}`;
    case 'temper-first':
      return 'Hardened and not tempered: before anything else (common practice, no source)';
    case 'nearest-heat':
      return `${difference(numberOf(params, 'stepCelsius'), unit)} from where the furnace is then`;
    case 'first-heat-unknown':
      return 'Nobody reads this furnace now: counted from a cold one';
    case 'furnace-runs':
      return 'The furnace is in a firing: after that one';
    default:
      throw code satisfies never;
  }
}
