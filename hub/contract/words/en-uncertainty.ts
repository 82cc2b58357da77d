import type { Params } from '../alarm.ts';
import type { DisplayUnit } from '../schedule.ts';
import { difference, numberOf, temperature, textOf } from './format.ts';
import type { UncertaintyCode } from './types.ts';

/** How far a channel can be trusted, and what nobody has counted. */

const CLASSES: Readonly<Record<string, string>> = {
  'iec-1': 'IEC 60584-1 class 1',
  'iec-2': 'IEC 60584-1 class 2',
  'iec-3': 'IEC 60584-1 class 3',
  'astm-standard': 'ASTM E230 standard limits',
  'astm-special': 'ASTM E230 special limits',
};

const NOT_IN_IT = 'Where the probe sits, its lead wire and an error of the terminals are not in it';

function wire(params: Params): string {
  const type = textOf(params, 'type', '');
  const named = CLASSES[textOf(params, 'tolerance', '')] ?? 'its tolerance class';
  return type === '' ? named : `${named} of type ${type}`;
}

/** One sentence or two on the ± of a channel. */
export function uncertaintyWords(code: UncertaintyCode, params: Params, unit: DisplayUnit): string {
  const plusMinus = `± ${difference(numberOf(params, 'expandedCelsius'), unit)}`;
  const at = temperature(numberOf(params, 'atCelsius'), unit);
  switch (code) {
    case 'by-class':
      return `${plusMinus} at ${at} (k = 2), from ${wire(params)}. That class is for new wire: what the wire has drifted in service is not in it. ${NOT_IN_IT}.`;
    case 'by-correction':
      return `${plusMinus} at ${at} (k = 2), from the correction of this probe. What it has drifted since then is not in it. ${NOT_IN_IT}.`;
    case 'no-probe':
      return `Nobody has said what probe this is: there is no ± to tell at ${at}.`;
    case 'no-class':
      return `Neither a tolerance class nor a correction is set up for this probe: there is no ± to tell at ${at}.`;
    case 'beyond-class':
      return `${wire(params)} does not reach ${at}: there is no ± to tell there.`;
    case 'beyond-type':
      return `Type ${textOf(params, 'type', 'of this probe')} does not reach ${at}: there is no ± to tell there.`;
    default:
      throw code satisfies never;
  }
}
