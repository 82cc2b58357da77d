import { describe, expect, it } from 'vitest';
import { cusumChart } from '../../../hub/physics/statistics/cusum-chart.ts';
import vectors from '../../reference/spc-vectors.json' with { type: 'json' };

const { x, target, k, h, expected } = vectors.cusum;
const QUESTION = { values: x, target, slack: k, decision: h };

describe('the tabular sums of NIST 6.3.2.3', () => {
  const chart = cusumChart(QUESTION);

  it('run as published on both sides', () => {
    chart.high.forEach((sum, i) => {
      expect(sum).toBeCloseTo(expected.Shi[i] ?? Number.NaN, 9);
    });
    chart.low.forEach((sum, i) => {
      expect(sum).toBeCloseTo(expected.Slo[i] ?? Number.NaN, 9);
    });
    expect([chart.high.length, chart.low.length]).toEqual([20, 20]);
  });

  it('add up to the plain running sum', () => {
    chart.running.forEach((sum, i) => {
      expect(sum).toBeCloseTo(expected.cumulative_sum[i] ?? Number.NaN, 9);
    });
  });

  it('signal once, at group 14, and place the start of the shift at group 13', () => {
    const { first_signal_index_0_based: index } = expected;
    expect(chart.signals).toEqual([{ side: 'high', index, since: 12 }]);
    expect(index + 1).toBe(expected.first_signal_group_1_based);
  });
});

describe('cumulative sums', () => {
  it('find a shift downward and when it began', () => {
    const values = [0, 0.2, -0.1, 0.3, 0, -1, -1.2, -0.9, -1.1, -1, -1.2];
    const { signals } = cusumChart({ values, target: 0, slack: 0.5, decision: 2 });
    expect(signals).toEqual([{ side: 'low', index: 8, since: 5 }]);
  });

  it('signal again only after they have come back', () => {
    const values = [3, 3, 3, -3, -3, -3, -3, 3, 3, 3, 3];
    const { signals } = cusumChart({ values, target: 0, slack: 0.5, decision: 4 });
    expect(signals.map(({ side, index }) => `${side} ${index}`)).toEqual(['high 1', 'low 4', 'high 8']);
  });

  it('let small differences within the slack pass for ever', () => {
    const values = new Array<number>(500).fill(0.3);
    expect(cusumChart({ values, target: 0, slack: 0.3, decision: 1 }).signals).toEqual([]);
  });

  it('are refused with a decision of 0 or a slack below 0', () => {
    const range = expect.objectContaining({ code: 'out-of-range' });
    expect(() => cusumChart({ ...QUESTION, decision: 0 })).toThrow(range);
    expect(() => cusumChart({ ...QUESTION, slack: -1 })).toThrow(range);
  });
});
