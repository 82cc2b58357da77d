import { describe, expect, it } from 'vitest';
import { ewmaChart } from '../../../hub/physics/statistics/ewma-chart.ts';
import vectors from '../../reference/spc-vectors.json' with { type: 'json' };

const { x, ewma0, s, lambda, L, expected_published, recomputed } = vectors.ewma;
const QUESTION = { values: x, target: ewma0, sigma: s, weight: lambda, width: L };

describe('the moving average of NIST 6.3.2.4', () => {
  const chart = ewmaChart(QUESTION);

  it('runs through the published values', () => {
    expect(chart.averages).toHaveLength(20);
    chart.averages.forEach((average, i) => {
      expect(Math.abs(average - (expected_published.ewma[i] ?? 0))).toBeLessThanOrEqual(0.01);
      expect(average).toBeCloseTo(recomputed.ewma[i] ?? 0, 10);
    });
  });

  it('has the published limits, of which NIST cuts the lower one off after four digits', () => {
    expect(chart.limits.upper).toBeCloseTo(expected_published.ucl, 4);
    expect(chart.limits.lower).toBeCloseTo(recomputed.lcl, 10);
    expect(Math.abs(chart.limits.lower - expected_published.lcl)).toBeLessThan(1e-4);
  });

  it('is in control', () => {
    expect(chart.outside).toEqual([]);
  });
});

describe('a moving average', () => {
  it('is the values themselves with weight 1', () => {
    const chart = ewmaChart({ ...QUESTION, weight: 1 });
    expect(chart.averages).toEqual(x);
    expect(chart.limits.upper).toBeCloseTo(ewma0 + 3 * s, 12);
  });

  it('has limits that start narrow and widen to the lasting ones', () => {
    const { earlyLimits, limits } = ewmaChart(QUESTION);
    // First step: the average's deviation is weight · sigma.
    expect((earlyLimits[0]?.upper ?? 0) - ewma0).toBeCloseTo(L * lambda * s, 12);
    expect(earlyLimits.at(-1)?.upper).toBeCloseTo(limits.upper, 4);
  });

  it('sees a lasting shift of one and a half sigmas that no single point shows', () => {
    const shifted = [...new Array<number>(10).fill(50), ...new Array<number>(15).fill(50 + 1.5 * s)];
    const { outside } = ewmaChart({ ...QUESTION, values: shifted });
    expect(outside.length).toBeGreaterThan(0);
    expect(outside[0]).toBeGreaterThanOrEqual(10);
    expect(shifted.every((value) => value < 50 + 3 * s)).toBe(true);
  });

  it('is refused with a weight of 0, a sigma of 0, or a value that is no number', () => {
    const range = expect.objectContaining({ code: 'out-of-range' });
    expect(() => ewmaChart({ ...QUESTION, weight: 0 })).toThrow(range);
    expect(() => ewmaChart({ ...QUESTION, sigma: 0 })).toThrow(range);
    expect(() => ewmaChart({ ...QUESTION, values: [Number.NaN] })).toThrow(
      expect.objectContaining({ code: 'bad-input' }),
    );
  });
});
