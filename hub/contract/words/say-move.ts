import type { Params } from '../alarm.ts';
import type { NextMoveCode } from '../firing.ts';
import type { DisplayUnit } from '../schedule.ts';
import type { MOVES } from './en-moves.ts';
import { fill } from './fill.ts';
import { duration, numberOf } from './format.ts';
import type { Numbers } from './numbers.ts';

/** Which sentence of a language's table a next move is, and with which numbers. */

export type MoveKey = keyof typeof MOVES;
export type MoveTable = Readonly<Record<MoveKey, string>>;

/** The next move in one language. */
export function moveTeller(table: MoveTable, say: Numbers) {
  return (code: NextMoveCode, params: Params, unit: DisplayUnit): string => {
    const left = numberOf(params, code === 'ease-off' ? 'secondsAhead' : 'secondsLeft');
    return fill(table[keyOf(code, params)], {
      target: say.temperature(numberOf(params, 'targetCelsius'), unit),
      limit: say.temperature(numberOf(params, 'limitCelsius'), unit),
      rate: say.rate(rateOf(code, params), unit),
      left: duration(left ?? 0),
    });
  };
}

type Heater = 'gas' | 'oven' | 'bath';

function heater({ furnaceKind }: Params): Heater {
  return furnaceKind === 'gas-forge' ? 'gas' : furnaceKind === 'salt-bath' ? 'bath' : 'oven';
}

function isKnown(params: Params, name: string): boolean {
  return numberOf(params, name) !== null;
}

/** The rate to keep: the most that is allowed of what is too fast, the least of what is too slow. */
function rateOf(code: NextMoveCode, params: Params): number | null {
  const slower = code === 'heat-up-slower' || code === 'cool-slower';
  return numberOf(params, slower ? 'mostCelsiusPerHour' : 'leastCelsiusPerHour');
}

function keyOf(code: NextMoveCode, params: Params): MoveKey {
  const down = params.direction === 'down';
  switch (code) {
    case 'heat-up':
      return withLeft(down ? 'heat-up.down' : code, params);
    case 'heat-up-slower':
      return withRate(down ? 'heat-up-slower.down' : code, code, params);
    case 'heat-up-faster':
      if (down) return 'heat-up-faster.down';
      return params.stalled === 1 ? code : withRate(code, code, params);
    case 'ease-off':
      return easeOff(heater(params), params);
    case 'turn-down':
      return `turn-down.${heater(params)}`;
    case 'hold-raise':
      return params.counting === 1 ? 'hold-raise.counting' : code;
    case 'hold':
    case 'wait-core':
    case 'turn-piece':
    case 'cool-furnace':
      return withLeft(code, params);
    case 'cool-slower':
    case 'cool-faster':
      return withRate(code, code, params);
    case 'quench-now':
      return params.soaked === 1 ? 'quench-now.soaked' : code;
    case 'done':
      return params.finished === 1 ? 'done.finished' : code;
    case 'cool-still-air':
    case 'cool-bury':
    case 'wait-cooling':
    case 'leave-buried':
    case 'temper-soon':
    case 'no-reading':
      return code;
    default:
      throw code satisfies never;
  }
}

function easeOff(what: Heater, params: Params): MoveKey {
  const known = isKnown(params, 'secondsAhead') && isKnown(params, 'limitCelsius');
  return known ? `ease-off.${what}.ahead` : `ease-off.${what}`;
}

type Timed = 'heat-up' | 'heat-up.down' | 'hold' | 'wait-core' | 'turn-piece' | 'cool-furnace';

function withLeft(key: Timed, params: Params): MoveKey {
  return isKnown(params, 'secondsLeft') ? `${key}.left` : key;
}

type Rated = 'heat-up-slower' | 'heat-up-slower.down' | 'heat-up-faster' | 'cool-slower' | 'cool-faster';

function withRate(key: Rated, code: NextMoveCode, params: Params): MoveKey {
  return rateOf(code, params) === null ? key : `${key}.rate`;
}
