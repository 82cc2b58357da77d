import type { Params } from '../alarm.ts';
import type { NextMoveCode } from '../firing.ts';
import type { DisplayUnit } from '../schedule.ts';
import { duration, numberOf, rate, temperature } from './format.ts';

/** The next move: trade words, at most 34 characters. */

function heater(params: Params): string {
  return params.furnaceKind === 'gas-forge' ? 'gas' : params.furnaceKind === 'salt-bath' ? 'bath' : 'oven';
}

function toGo(text: string, params: Params): string {
  const seconds = numberOf(params, 'secondsLeft');
  return seconds === null ? text : `${text}: ${duration(seconds)} to go`;
}

/** A move with the rate to keep, or bare when nobody set one. */
function atRate(text: string, params: Params, name: string, unit: DisplayUnit): string {
  const celsiusPerHour = numberOf(params, name);
  return celsiusPerHour === null ? text : `${text}: ${rate(celsiusPerHour, unit)}`;
}

function heatUp(params: Params, target: string): string {
  return toGo(params.direction === 'down' ? `Fall to ${target}` : `Heat to ${target}`, params);
}

function heatSlower(params: Params, unit: DisplayUnit): string {
  const text = params.direction === 'down' ? 'Let it fall slower' : 'Heat slower';
  return atRate(text, params, 'mostCelsiusPerHour', unit);
}

function heatFaster(params: Params, unit: DisplayUnit): string {
  const least = numberOf(params, 'leastCelsiusPerHour');
  if (params.direction === 'down') return 'Let it fall faster';
  if (params.stalled === 1 || least === null) return 'More heat: it is not rising';
  return `Heat faster: ${rate(least, unit)}`;
}

/** The sentence for a code and its numbers. */
export function moveWords(code: NextMoveCode, params: Params, unit: DisplayUnit): string {
  const target = temperature(numberOf(params, 'targetCelsius'), unit);
  switch (code) {
    case 'heat-up':
      return heatUp(params, target);
    case 'heat-up-slower':
      return heatSlower(params, unit);
    case 'heat-up-faster':
      return heatFaster(params, unit);
    case 'ease-off':
      return `Ease the ${heater(params)} off now`;
    case 'turn-down':
      return `Turn the ${heater(params)} down now`;
    case 'hold':
      return toGo('Hold', params);
    case 'hold-raise':
      return `Raise to ${target}: clock stopped`;
    case 'quench-now':
      return 'Quench now';
    case 'cool-still-air':
      return 'Take it out, cool in still air';
    case 'cool-furnace':
      return toGo('Leave it to cool', params);
    case 'cool-bury':
      return 'Bury it, lay it straight';
    case 'cool-slower':
      return atRate('Cool slower', params, 'mostCelsiusPerHour', unit);
    case 'cool-faster':
      return atRate('Cool faster', params, 'leastCelsiusPerHour', unit);
    case 'wait-cooling':
      return `Wait: cooling to ${target}`;
    case 'no-reading':
      return 'No reading: look at the probe';
    case 'done':
      return params.finished === 1 ? 'Finished' : 'Done: press Finish';
    default:
      throw code satisfies never;
  }
}
