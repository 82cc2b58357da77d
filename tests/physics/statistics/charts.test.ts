import { describe, expect, it } from 'vitest';
import { countChart, shareChart } from '../../../hub/physics/statistics/attribute-charts.ts';
import { capabilityIndices } from '../../../hub/physics/statistics/capability.ts';
import { cusumChart } from '../../../hub/physics/statistics/cusum-chart.ts';
import { ewmaChart } from '../../../hub/physics/statistics/ewma-chart.ts';
import vectors from '../../reference/spc-vectors.json' with { type: 'json' };

const { ewma, cusum, count, share, capability } = vectors;

describe('charts of NIST/SEMATECH e-Handbook 6.3', () => {
  it('averages the moving way of 6.3.2.4', () => {
    const chart = ewmaChart({
      values: ewma.x,
      target: ewma.ewma0,
      sigma: ewma.s,
      weight: ewma.lambda,
      width: ewma.L,
    });
    for (const [i, average] of ewma.recomputed.ewma.entries())
      expect(chart.averages[i]).toBeCloseTo(average, 9);
    for (const [i, average] of ewma.expected_published.ewma.entries())
      expect(Math.abs((chart.averages[i] ?? 0) - average)).toBeLessThan(0.0101);
    expect(chart.limits.upper).toBeCloseTo(ewma.expected_published.ucl, 3);
    expect(chart.limits.lower).toBeCloseTo(ewma.recomputed.lcl, 9);
    expect(chart.outside).toEqual([]);
  });

  it('sums up the tabular way of 6.3.2.3 and signals at group 14', () => {
    const chart = cusumChart({ values: cusum.x, target: cusum.target, slack: cusum.k, decision: cusum.h });
    for (const [i, sum] of cusum.expected.Shi.entries()) expect(chart.high[i]).toBeCloseTo(sum, 9);
    for (const [i, sum] of cusum.expected.Slo.entries()) expect(chart.low[i]).toBeCloseTo(sum, 9);
    for (const [i, sum] of cusum.expected.cumulative_sum.entries())
      expect(chart.running[i]).toBeCloseTo(sum, 9);
    expect(chart.signals[0]).toMatchObject({
      side: 'high',
      index: cusum.expected.first_signal_index_0_based,
    });
  });

  it('counts the faults of 25 wafers (6.3.3.1)', () => {
    const chart = countChart(count.counts);
    expect(chart.limits).toMatchObject({ centre: 16, upper: 28, lower: 4 });
    expect(chart.above).toEqual(count.points_strictly_above_ucl_0_based);
  });

  it('shares out the faulty chips of 30 wafers (6.3.3.2)', () => {
    const pieces = share.n_per_sample;
    const batches = share.fraction_defective.map((part) => ({ pieces, failed: Math.round(part * pieces) }));
    const chart = shareChart(batches);
    expect(chart.centre).toBeCloseTo(share.expected.p_bar, 4);
    expect(chart.limits[0]?.upper).toBeCloseTo(share.expected.ucl, 4);
    expect(chart.limits[0]?.lower).toBeCloseTo(share.expected.lcl, 4);
    expect(chart.above).toEqual(share.points_above_ucl_0_based);
  });
});

describe('capability of NIST/SEMATECH e-Handbook 6.1.6', () => {
  it('gives the indices of the example', () => {
    const found = capabilityIndices(capability.x_bar, capability.s, {
      lower: capability.lsl,
      upper: capability.usl,
    });
    expect(found.potential).toBeCloseTo(capability.expected.Cp, 4);
    expect(found.upper).toBeCloseTo(capability.expected.Cpu, 4);
    expect(found.lower).toBeCloseTo(capability.expected.Cpl, 4);
    expect(found.actual).toBeCloseTo(capability.expected.Cpk, 4);
    expect(found.offCentre).toBeCloseTo(capability.expected.k, 4);
  });

  it('speaks of one side only where there is one limit', () => {
    const found = capabilityIndices(16, 2, { lower: null, upper: 20 });
    expect(found).toMatchObject({ potential: null, lower: null, offCentre: null });
    expect(found.actual).toBeCloseTo(2 / 3, 12);
  });
});
