import type { Params } from '../alarm.ts';
import type { DisplayUnit } from '../schedule.ts';
import type { REASONS } from './en-reasons.ts';
import { fill } from './fill.ts';
import { numberOf, textOf } from './format.ts';
import type { Numbers } from './numbers.ts';
import type { ReasonCode } from './types.ts';

/** Which sentence of a language's table a reason is, and with which numbers. */

export type ReasonKey = keyof typeof REASONS;
export type ReasonTable = Readonly<Record<ReasonKey, string>>;

/** The reasons in one language. */
export function reasonTeller(table: ReasonTable, say: Numbers) {
  return (code: ReasonCode, params: Params, unit: DisplayUnit): string => {
    const number = (name: string) => numberOf(params, name);
    return fill(table[keyOf(code, params)], {
      soak: say.elapsed(number('soakSeconds')),
      planned: say.elapsed(number('plannedSeconds')),
      airTime: say.elapsed(number('airSeconds')),
      low: say.elapsed(number('lowSeconds')),
      time: say.elapsed(number('seconds')),
      measured: say.temperature(number('measuredCelsius'), unit),
      target: say.temperature(number('targetCelsius'), unit),
      core: say.temperature(number('coreCelsius'), unit),
      over: say.difference(number('overCelsius'), unit),
      rate: say.rate(number('measuredCelsiusPerHour'), unit),
      limit: say.rate(number('limitCelsiusPerHour'), unit),
      piece: textOf(params, 'piece', '?'),
    });
  };
}

function keyOf(code: ReasonCode, params: Params): ReasonKey {
  if (code !== 'moved-on-early' && code !== 'finished-early') return code;
  if (numberOf(params, 'plannedSeconds') !== null) return `${code}.soak`;
  return numberOf(params, 'measuredCelsius') === null ? `${code}.unseen` : `${code}.at`;
}
