import type { AlarmMeasure } from '../../hub/contract/alarm-review.ts';
import { MEASURE_DECIMALS, MEASURE_UNITS, reviewWords } from '../words/alarm-review.ts';
import { number } from '../words/format.ts';

/** A figure of the review in words, and how far along its bar it stands. Pure. */

export interface SaidMeasure {
  readonly value: string;
  /** The target, and the second figure where there is one. */
  readonly target: string;
  /** Shares of the bar, 0 to 1. */
  readonly valueShare: number;
  readonly targetShare: number;
  readonly mostShare: number | null;
}

/** How much of the bar lies beyond the last figure, when the value is within. */
const ROOM = 1.5;

export function saidMeasure({ measure, value, target, most }: AlarmMeasure): SaidMeasure {
  const write = (amount: number) => `${written(measure, amount)}${MEASURE_UNITS[measure]}`;
  const limit = measure === 'stale' ? reviewWords.under(write(target)) : reviewWords.upTo(write(target));
  const second = most === null ? '' : `; ${reviewWords.manageableTo(write(most))}`;
  const end = Math.max((most ?? target) * ROOM, value, 1);
  return {
    value: write(value),
    target: `${reviewWords.target(limit)}${second}`,
    valueShare: value / end,
    targetShare: target / end,
    mostShare: most === null ? null : most / end,
  };
}

/** A small figure that is not nothing never reads as 0. */
function written(measure: AlarmMeasure['measure'], value: number): string {
  const decimals = Number.isInteger(value) ? 0 : (MEASURE_DECIMALS[measure] ?? 0);
  const least = 10 ** -decimals;
  return value > 0 && value < least / 2 ? `<${number(least, decimals)}` : number(value, decimals);
}
