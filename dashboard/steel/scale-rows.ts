import type { z } from 'zod';
import type { CriticalTemperaturesAnswer } from '../../hub/contract/compute/critical-temperatures.ts';
import type { Answer, Standing } from '../../hub/contract/compute/estimate.ts';
import type { StepWindow } from '../../hub/contract/compute/steels.ts';
import type { BandLike } from '../../hub/contract/significant.ts';
import { MARK_WORDS, type MarkKey } from '../words/steel.ts';

/** What is drawn on the scale and listed in the table under it, from one list each. Pure. */

export type Critical = z.infer<typeof CriticalTemperaturesAnswer>;

/** A temperature of the steel itself, with its band, °C. */
export interface ScaleMark {
  readonly key: MarkKey;
  readonly symbol: string;
  readonly meaning: string;
  readonly band: BandLike;
  readonly standing: Standing;
  readonly source: string;
  readonly formula: string;
  /** What to know before trusting it. */
  readonly cautions: readonly string[];
}

/** A temperature that the hub refuses to give, and why. */
export interface Refused {
  readonly key: MarkKey;
  readonly symbol: string;
  readonly reason: string;
}

export interface ScaleRows {
  /** From the coolest to the hottest. */
  readonly marks: readonly ScaleMark[];
  readonly refused: readonly Refused[];
}

/** Curie point of ferrite; alloying moves it by a few degrees, so it is read as 765 to 775 °C. */
const CURIE: ScaleMark = {
  key: 'curie',
  ...MARK_WORDS.curie,
  band: { low: 765, value: 770, high: 775 },
  standing: 'from-memory',
  source: 'physics handbooks',
  formula: 'Curie point of ferrite',
  cautions: [],
};

/**
 * The rows of a steel. Above the eutectoid Acm stands in place of Ac3, which is then no more than Ac1, and Ar3 says
 * nothing that Ar1 does not.
 */
export function scaleRows(critical: Critical): ScaleRows {
  const { mf, ms, ar1, ar3, ac1, ac3, acm, magnet, carbonClass } = critical;
  const isHypo = carbonClass === 'hypoeutectoid';
  const asked: readonly (readonly [MarkKey, Answer])[] = [
    ['mf', mf],
    ['ms', ms],
    ['ar1', ar1],
    ...(isHypo ? ([['ar3', ar3]] as const) : []),
    ['ac1', ac1],
    acm.value === null ? ['ac3', ac3] : ['acm', acm],
    ['magnet', magnet.lost],
    ['magnetPlus', magnet.plus],
  ];
  const marks = asked.flatMap(([key, answer]) => markOf(key, answer));
  return {
    marks: [...marks, CURIE].sort((a, b) => a.band.value - b.band.value),
    // Where there is no magnet answer there is nothing to add to it: said once.
    refused: asked.filter(([key]) => key !== 'magnetPlus').flatMap(([key, answer]) => refusedOf(key, answer)),
  };
}

function markOf(key: MarkKey, answer: Answer): ScaleMark[] {
  if (answer.value === null) return [];
  const { low, value, high, standing, source, formula, flags } = answer;
  const cautions = flags.map(({ message }) => message);
  return [{ key, ...MARK_WORDS[key], band: { low, value, high }, standing, source, formula, cautions }];
}

function refusedOf(key: MarkKey, answer: Answer): Refused[] {
  if (answer.value !== null) return [];
  return [{ key, symbol: MARK_WORDS[key].symbol, reason: answer.reason.message }];
}

/** Whether a number stands in print somewhere; everything else is drawn hollow and says so in words. */
export function isPublished(standing: Standing): boolean {
  return standing.startsWith('published');
}

/** Windows from the coolest to the hottest, as the bars stand beside the scale. */
export function inOrder(windows: readonly StepWindow[]): readonly StepWindow[] {
  const middle = ({ lowCelsius, highCelsius }: StepWindow) => lowCelsius + highCelsius;
  return [...windows].sort((a, b) => middle(a) - middle(b));
}
