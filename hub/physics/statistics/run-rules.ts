/**
 * Tests for special causes on a control chart: Nelson's eight, and the four of Western Electric.
 *
 * Sources: L. S. Nelson, Journal of Quality Technology 16(4), 1984; Western Electric, Statistical Quality Control
 * Handbook, 1956 (from memory). Where the wording leaves a choice, ours is:
 * beyond means strictly farther; a window must be full and ends at the point reported; in "2 of 3" and "4 of 5" the
 * point reported is itself one of those beyond; a tie breaks a trend and an alternation; a value exactly on the
 * centre line breaks a run on one side.
 */
import { requireValues } from './describe.ts';

export const NELSON_RULES = ['N1', 'N2', 'N3', 'N4', 'N5', 'N6', 'N7', 'N8'] as const;
export const WESTERN_ELECTRIC_RULES = ['W1', 'W2', 'W3', 'W4'] as const;

export type RuleId = (typeof NELSON_RULES)[number] | (typeof WESTERN_ELECTRIC_RULES)[number];

/** A rule that fired, and the point that completed its pattern. */
export interface RuleFinding {
  readonly rule: RuleId;
  /** Index of the last point of the pattern. */
  readonly index: number;
  /** Index of the first point of the window looked at. */
  readonly from: number;
}

/** A window of values in sigmas, the point to be reported last. */
type Pattern = { readonly points: number; readonly holds: (window: readonly number[]) => boolean };

const BEYOND_THREE: Pattern = { points: 1, holds: ([z = 0]) => Math.abs(z) > 3 };
const TWO_OF_THREE: Pattern = { points: 3, holds: (window) => countBeyond(window, 2) >= 2 };
const FOUR_OF_FIVE: Pattern = { points: 5, holds: (window) => countBeyond(window, 1) >= 4 };

const PATTERNS: Readonly<Record<RuleId, Pattern>> = {
  N1: BEYOND_THREE,
  N2: { points: 9, holds: onOneSide },
  N3: { points: 6, holds: (window) => isTrend(window) },
  N4: { points: 14, holds: (window) => isAlternating(window) },
  N5: TWO_OF_THREE,
  N6: FOUR_OF_FIVE,
  N7: { points: 15, holds: (window) => window.every((z) => Math.abs(z) <= 1) },
  N8: { points: 8, holds: (window) => window.every((z) => Math.abs(z) > 1) && !onOneSide(window) },
  W1: BEYOND_THREE,
  W2: TWO_OF_THREE,
  W3: FOUR_OF_FIVE,
  W4: { points: 8, holds: onOneSide },
};

/**
 * Every point at which a rule holds, rule by rule in the order asked.
 *
 * @param sigmas values as distances from the centre line in standard deviations, see `individualsChart`
 * @param rules which tests to make; each one more makes false alarms more frequent (rule 1 alone: one in 370
 *   points of a steady process; the four of Western Electric together: one in 92)
 * @throws PhysicsError `bad-input` for a value that is not finite
 */
export function ruleFindings(sigmas: readonly number[], rules: readonly RuleId[]): RuleFinding[] {
  requireValues(sigmas, 0);
  return rules.flatMap((rule) => {
    const { points, holds } = PATTERNS[rule];
    return sigmas
      .map((_, index) => ({ rule, index, from: index + 1 - points }))
      .filter(({ index, from }) => from >= 0 && holds(sigmas.slice(from, index + 1)));
  });
}

function onOneSide(window: readonly number[]): boolean {
  return window.every((z) => z > 0) || window.every((z) => z < 0);
}

/** How many lie beyond `sigmas` on the side of the last one; 0 when the last one is not beyond. */
function countBeyond(window: readonly number[], sigmas: number): number {
  const last = window.at(-1) ?? 0;
  if (Math.abs(last) <= sigmas) return 0;
  return window.filter((z) => z * Math.sign(last) > sigmas).length;
}

function steps(window: readonly number[]): number[] {
  return window.slice(1).map((z, i) => Math.sign(z - (window[i] ?? z)));
}

function isTrend(window: readonly number[]): boolean {
  const [first = 0, ...rest] = steps(window);
  return first !== 0 && rest.every((step) => step === first);
}

function isAlternating(window: readonly number[]): boolean {
  const all = steps(window);
  return all.every((step, i) => step !== 0 && (i === 0 || step === -(all[i - 1] ?? 0)));
}
