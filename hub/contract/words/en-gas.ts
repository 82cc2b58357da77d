import type { GasUsed } from '../gas.ts';
import { elapsed } from './format.ts';

/** What is said of gas beside the alarms: how a figure came about, and what the numbers do not tell. */

/** How a firing's gas was found, and what is not in it. */
export function gasUsedText({ method, unknownSeconds }: Pick<GasUsed, 'method' | 'unknownSeconds'>): string {
  const how =
    method === 'scale'
      ? 'Weighed before and after.'
      : 'Added up from the pressure before the jet: 15 % either way for bore, coefficient, gauge, hose and gas temperature.';
  if (unknownSeconds === 0) return how;
  return `${how} For ${elapsed(unknownSeconds)} nobody knows the flow: anything from none to the most is in the range.`;
}

export const GAS_NOTICES: readonly string[] = [
  'Nothing here says that gas is safe. No reading is not a good reading.',
  'A small leak does not show in any of these numbers: soapy water at every joint after each change, and the nose at floor level.',
  'The pressure of a cylinder tells the temperature of its liquid, not how much is left, until the last liquid is gone.',
  'Flow by the jet is off by 15 % or more, always the same way in one shop. Weighing is the only reliable gauge.',
  'A count since a noted fill grows less sure with every hour, and most in hours without a reading.',
  'The last 10 to 20 % in the cold often will not come out: the short end of the range leaves it in.',
  'A flame-out is suspected from the chamber cooling; with a burner shut and the hose under pressure it looks the same.',
];

export const GAS_CAUTION =
  'An aid only. Certified gas and CO alarms, the burner maker, a competent fitter and the local code come before it: many codes keep propane cylinders out of buildings. Gas smelt: no switches, no flames, close the cylinder if that is possible without danger, everyone out, call for help.';
