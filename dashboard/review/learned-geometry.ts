import type { TemperingLearned } from '../../hub/contract/batch-statistics.ts';
import { number } from '../words/format.ts';
import { batchWords } from '../words/review.ts';

/** The shop's own tempering curve: the ends of its axes, and what is said under it. Pure. */

interface Ends {
  readonly low: number;
  readonly high: number;
}

/** Parameters with room at both sides; whole hundreds. */
export function parameterEnds({ points }: Pick<TemperingLearned, 'points'>): Ends {
  const all = points.map(({ parameter }) => parameter);
  return {
    low: Math.floor((Math.min(...all) - 50) / 100) * 100,
    high: Math.ceil((Math.max(...all) + 50) / 100) * 100,
  };
}

/** Hardness with the band in it; even numbers of HRC. */
export function hardnessEnds({ points, curve }: Pick<TemperingLearned, 'points' | 'curve'>): Ends {
  const measured = points.map(({ hardnessHrc }) => hardnessHrc);
  const low = Math.min(...measured, ...curve.map((one) => one.low));
  const high = Math.max(...measured, ...curve.map((one) => one.high));
  return { low: Math.floor((low - 1) / 2) * 2, high: Math.ceil((high + 1) / 2) * 2 };
}

/** What the curve is good for, or why there is none. */
export function learnedSaid(
  { constant, hold, notFitted, points }: TemperingLearned,
  temperatureOf: (celsius: number) => string,
): string[] {
  const about = constant === null ? [] : [batchWords.constant(number(constant, 1))];
  const ends = hold.map(({ parameter, celsiusForOneHour }) =>
    batchWords.oneHour(number(parameter), temperatureOf(celsiusForOneHour)),
  );
  if (notFitted === 'few-pieces') return [batchWords.fewPieces(points.length), ...about];
  if (notFitted === 'tempered-alike') return [batchWords.temperedAlike, ...about];
  return [[...about, ...ends].join(' ')];
}
