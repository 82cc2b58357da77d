import { describe, expect, it } from 'vitest';
import { countChart, shareChart } from '../../../hub/physics/statistics/attribute-charts.ts';
import vectors from '../../reference/spc-vectors.json' with { type: 'json' };

describe('the faults a wafer of NIST 6.3.3.1', () => {
  const { counts, expected, points_strictly_above_ucl_0_based } = vectors.count;

  it('have the published limits', () => {
    const { limits } = countChart(counts);
    expect(limits).toEqual({ centre: expected.c_bar, lower: expected.lcl, upper: expected.ucl });
  });

  it('count as outside only when strictly beyond', () => {
    const { above, below } = countChart(counts);
    expect(above).toEqual(points_strictly_above_ucl_0_based);
    expect(below).toEqual([]);
  });
});

describe('the failed shares of NIST 6.3.3.2', () => {
  const { n_per_sample, fraction_defective, expected, recomputed, points_above_ucl_0_based } = vectors.share;
  const batches = fraction_defective.map((share) => ({
    pieces: n_per_sample,
    failed: Math.round(share * n_per_sample),
  }));

  it('have the published mean and limits', () => {
    const { centre, limits } = shareChart(batches);
    expect([centre, limits[0]?.upper, limits[0]?.lower].map((x) => x?.toFixed(4))).toEqual([
      String(expected.p_bar),
      String(expected.ucl),
      String(expected.lcl),
    ]);
    expect(limits[29]?.upper).toBeCloseTo(recomputed.ucl, 12);
  });

  it('are above the limit where published', () => {
    const { above, below } = shareChart(batches);
    expect(above).toEqual(points_above_ucl_0_based);
    expect(below).toEqual([]);
  });

  it('have wider limits for a small batch, never beyond 0 and 1', () => {
    const { limits } = shareChart([...batches, { pieces: 4, failed: 1 }]);
    expect(limits[30]?.upper ?? 0).toBeGreaterThan(limits[0]?.upper ?? 1);
    expect(limits[30]?.lower).toBe(0);
    expect(shareChart([{ pieces: 2, failed: 1 }]).limits[0]?.upper).toBe(1);
  });
});

describe('charts of counts', () => {
  it('refuse fractions, empty batches and more failed than there were', () => {
    const bad = expect.objectContaining({ code: 'bad-input' });
    expect(() => countChart([1.5])).toThrow(bad);
    expect(() => countChart([])).toThrow(bad);
    expect(() => shareChart([])).toThrow(bad);
    expect(() => shareChart([{ pieces: 0, failed: 0 }])).toThrow(bad);
    expect(() => shareChart([{ pieces: 3, failed: 4 }])).toThrow(bad);
  });
});
