import type { Params } from '../alarm.ts';
import type { CLOCK } from './en-reasons.ts';
import { fill } from './fill.ts';
import { textOf } from './format.ts';

export type ClockTable = Readonly<Record<keyof typeof CLOCK, string>>;

/** What the soak clock listens to, in one language. Params: `on`, `piece` (its mark), `corrected` 1 or 0. */
export function clockTeller(table: ClockTable) {
  return (params: Params): string => {
    if (params.on !== 'core') return table['coldest-thermocouple'];
    const template = params.corrected === 1 ? table['core.corrected'] : table.core;
    return fill(template, { piece: textOf(params, 'piece', '?') });
  };
}
