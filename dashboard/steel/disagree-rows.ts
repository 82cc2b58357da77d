import type { z } from 'zod';
import type { FormulaOpinion } from '../../hub/contract/compute/critical-temperatures.ts';
import type { Answer } from '../../hub/contract/compute/estimate.ts';
import type { Critical } from './scale-rows.ts';

/** What each formula says, and how far they are apart. Pure; °C. */

export type Opinion = z.infer<typeof FormulaOpinion>;

export interface Disagreement {
  readonly key: 'ac1' | 'ac3' | 'ms';
  readonly symbol: string;
  /** What the page uses, or why there is nothing to use. */
  readonly answer: Answer;
  /** From the coolest to the hottest. */
  readonly opinions: readonly Opinion[];
  readonly inside: number;
  /** Null without opinions. */
  readonly spread: { readonly low: number; readonly high: number } | null;
}

export function disagreements({ ac1, ac3, ms, opinions }: Critical): readonly Disagreement[] {
  return [
    disagreement('ac1', 'Ac1', ac1, opinions.ac1),
    disagreement('ac3', 'Ac3', ac3, opinions.ac3),
    disagreement('ms', 'Ms', ms, opinions.ms),
  ];
}

function disagreement(
  key: Disagreement['key'],
  symbol: string,
  answer: Answer,
  found: readonly Opinion[],
): Disagreement {
  const opinions = [...found].sort((a, b) => a.celsius - b.celsius);
  const [first, last] = [opinions.at(0), opinions.at(-1)];
  return {
    key,
    symbol,
    answer,
    opinions,
    inside: opinions.filter(({ inValidity }) => inValidity).length,
    spread: first && last ? { low: first.celsius, high: last.celsius } : null,
  };
}

/** Ends of the strip that shows them: room on both sides, the value used and its band inside. */
export function stripEnds({ opinions, answer }: Disagreement): {
  readonly low: number;
  readonly high: number;
} {
  const values = opinions.map(({ celsius }) => celsius);
  if (answer.value !== null) values.push(answer.low, answer.high);
  const low = Math.min(...values);
  const high = Math.max(...values);
  const room = Math.max(5, (high - low) * 0.06);
  return { low: low - room, high: high + room };
}
