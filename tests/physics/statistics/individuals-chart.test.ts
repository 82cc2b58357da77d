import { describe, expect, it } from 'vitest';
import { individualsChart } from '../../../hub/physics/statistics/individuals-chart.ts';
import { NELSON_RULES, ruleFindings } from '../../../hub/physics/statistics/run-rules.ts';
import vectors from '../../reference/spc-vectors.json' with { type: 'json' };

const { x, moving_ranges, expected_published, recomputed } = vectors.individuals;

describe('the flow rates of NIST 6.3.2.2', () => {
  const chart = individualsChart(x);

  it('have the published mean and moving ranges', () => {
    expect(chart.values.centre).toBeCloseTo(expected_published.x_bar, 12);
    expect(chart.ranges.centre).toBeCloseTo(recomputed.mr_bar, 12);
    chart.movingRanges.forEach((range, i) => {
      expect(range).toBeCloseTo(moving_ranges[i] ?? Number.NaN, 12);
    });
    expect(chart.movingRanges).toHaveLength(9);
  });

  it('have limits by the exact d2, 0.0017 inside the published ones, which round it to 1.128', () => {
    expect(chart.values.upper).toBeCloseTo(recomputed.with_exact_d2.ucl, 7);
    expect(chart.values.lower).toBeCloseTo(recomputed.with_exact_d2.lcl, 7);
    const rounded = (chart.sigmaWithin * 2) / Math.sqrt(Math.PI) / 1.128;
    expect(chart.values.centre + 3 * rounded).toBeCloseTo(expected_published.ucl, 4);
    // NIST cuts the lower limit off: 45.81591 is printed 45.8159.
    expect(chart.values.centre - 3 * rounded).toBeCloseTo(expected_published.lcl, 4);
  });

  it('have the range limit of the printed D4 within its rounding, and none below', () => {
    expect(chart.ranges.upper / recomputed['mr_ucl_D4_3.267']).toBeCloseTo(1, 3);
    expect(chart.ranges.lower).toBe(0);
  });

  it('are in control', () => {
    expect(ruleFindings(chart.sigmas, ['N1'])).toEqual([]);
    expect(chart.movingRanges.every((range) => range < chart.ranges.upper)).toBe(true);
  });
});

describe('a chart', () => {
  it('takes its limits from the baseline alone and holds later values against them', () => {
    const before = individualsChart(x);
    const after = individualsChart([...x, 60], x.length);
    expect(after.values).toEqual(before.values);
    expect(after.baseline).toBe(10);
    expect(ruleFindings(after.sigmas, ['N1']).map((finding) => finding.index)).toEqual([10]);
  });

  it('finds nothing strange in values that do not vary', () => {
    const chart = individualsChart([860, 860, 860, 860]);
    expect(chart.sigmaWithin).toBe(0);
    expect(chart.sigmas).toEqual([0, 0, 0, 0]);
    expect(ruleFindings(chart.sigmas, NELSON_RULES)).toEqual([]);
  });

  it('wants two values, and a baseline inside them', () => {
    for (const [values, baseline] of [
      [[1], 1],
      [[1, 2, 3], 4],
      [[1, 2, 3], 1],
      [[1, 2, 3], 2.5],
    ] as const) {
      expect(() => individualsChart(values, baseline)).toThrow(
        expect.objectContaining({ code: 'bad-input' }),
      );
    }
  });
});
