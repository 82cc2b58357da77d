import { describe, expect, it } from 'vitest';
import {
  NELSON_RULES,
  type RuleId,
  ruleFindings,
  WESTERN_ELECTRIC_RULES,
} from '../../../hub/physics/statistics/run-rules.ts';
import { seededNoise } from '../../reference/seeded-noise.ts';
import vectors from '../../reference/spc-vectors.json' with { type: 'json' };

interface RuleVector {
  readonly id: string;
  readonly note: string;
  readonly z: readonly number[];
  readonly fires: Readonly<Record<string, readonly number[]>>;
}

const VECTORS = vectors.rules.vectors as unknown as readonly RuleVector[];
/** W1, W2 and W3 are N1, N5 and N6 word for word: the vectors name them once. */
const NAMED: readonly RuleId[] = [...NELSON_RULES, 'W4'];

function fired(z: readonly number[], rules: readonly RuleId[]): Record<string, number[]> {
  const found: Record<string, number[]> = {};
  for (const { rule, index } of ruleFindings(z, rules)) found[rule] = [...(found[rule] ?? []), index];
  return found;
}

describe('rules for special causes', () => {
  it.each(VECTORS)('$id: $note', ({ z, fires }) => {
    expect(fired(z, NAMED)).toEqual(fires);
  });

  it.each(VECTORS)('$id looks the same upside down', ({ z, fires }) => {
    expect(
      fired(
        z.map((value) => -value),
        NAMED,
      ),
    ).toEqual(fires);
  });

  it('have three of Western Electric in common with Nelson', () => {
    const noise = seededNoise(7);
    const z = Array.from({ length: 2000 }, () => 1.4 * noise());
    for (const [one, two] of [
      ['W1', 'N1'],
      ['W2', 'N5'],
      ['W3', 'N6'],
    ] as const) {
      const indices = ruleFindings(z, [one]).map((finding) => finding.index);
      expect(indices).toEqual(ruleFindings(z, [two]).map((finding) => finding.index));
      expect(indices.length).toBeGreaterThan(10);
    }
  });

  it('report the point only when it is itself one of those beyond', () => {
    expect(fired([2.3, 2.2, 0.1], ['N5'])).toEqual({});
    expect(fired([2.3, 0.1, 2.2], ['N5'])).toEqual({ N5: [2] });
    expect(fired([1.3, 1.2, 1.6, 1.1, 0.3], ['N6'])).toEqual({});
  });

  it('wait for a full window', () => {
    expect(fired([2.3, 2.2], ['N5'])).toEqual({});
    expect(ruleFindings([0, 0.3, 2.3, 2.2], ['N5'])).toEqual([{ rule: 'N5', index: 3, from: 1 }]);
  });

  it('are quiet on an empty chart and refuse what is no number', () => {
    expect(ruleFindings([], NELSON_RULES)).toEqual([]);
    expect(() => ruleFindings([0, Number.NaN], ['N1'])).toThrow(
      expect.objectContaining({ code: 'bad-input' }),
    );
  });
});

describe('run length of a steady process', () => {
  /** Mean number of points to the first finding, over many rows of independent normal values. */
  function meanRunLength(rules: readonly RuleId[], runs: number, seed: number): number {
    const noise = seededNoise(seed);
    let points = 0;
    for (let run = 0; run < runs; run++) {
      const window: number[] = [];
      do {
        window.push(noise());
        points++;
      } while (
        ruleFindings(window.slice(-8), rules).every(({ index }) => index < Math.min(7, window.length - 1))
      );
    }
    return points / runs;
  }

  it('is near the published 91.75 points with the four of Western Electric (Champ and Woodall 1987)', () => {
    // Run lengths scatter about as much as they are long: 3000 runs leave 1.8 % of standard error.
    const { westernElectric } = vectors.averageRunLength;
    expect(Math.abs(meanRunLength(WESTERN_ELECTRIC_RULES, 3000, 11) / westernElectric - 1)).toBeLessThan(
      0.07,
    );
  });
});
