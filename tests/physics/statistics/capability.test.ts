import { describe, expect, it } from 'vitest';
import { capability, capabilityIndices } from '../../../hub/physics/statistics/capability.ts';
import { individualsChart } from '../../../hub/physics/statistics/individuals-chart.ts';
import vectors from '../../reference/spc-vectors.json' with { type: 'json' };

const { usl, lsl, x_bar, s, expected } = vectors.capability;

describe('capability of NIST 6.1.6', () => {
  it('has the published indices', () => {
    const found = capabilityIndices(x_bar, s, { lower: lsl, upper: usl });
    expect(found.potential).toBeCloseTo(expected.Cp, 4);
    expect([found.upper, found.lower].map((index) => index?.toFixed(4))).toEqual(['0.6667', '1.3333']);
    expect(found.actual).toBeCloseTo(expected.Cpk, 4);
    expect(found.offCentre).toBeCloseTo(expected.k, 4);
  });

  it('follows Cpk = Cp (1 - k)', () => {
    const { potential, offCentre, actual } = capabilityIndices(x_bar, s, { lower: lsl, upper: usl });
    expect((potential ?? 0) * (1 - (offCentre ?? 0))).toBeCloseTo(actual, 12);
  });
});

describe('capability of a chart', () => {
  const { x } = vectors.individuals;
  const limits = { lower: 40, upper: 60 };

  it('takes the moving range for within and all values for overall', () => {
    const chart = individualsChart(x);
    const found = capability(chart, limits);
    expect(found.within.potential).toBeCloseTo(20 / (6 * chart.sigmaWithin), 12);
    expect(found.overall.potential).toBeCloseTo(20 / (6 * chart.sigmaOverall), 12);
    expect(found).toMatchObject({ count: 10, fewValues: true });
  });

  it('shows a drift in overall and not in within', () => {
    const drifting = individualsChart(Array.from({ length: 30 }, (_, i) => 45 + i / 3 + (i % 2)));
    const found = capability(drifting, limits);
    expect(found.overall.actual).toBeLessThan(0.6 * found.within.actual);
    expect(found.fewValues).toBe(false);
  });

  it('answers with one limit alone, and says what it then cannot know', () => {
    const found = capabilityIndices(50, 2, { lower: null, upper: 56 });
    expect(found).toEqual({ potential: null, upper: 1, lower: null, actual: 1, offCentre: null });
  });

  it('is below 0 when the mean is outside', () => {
    expect(capabilityIndices(62, 2, limits).actual).toBeCloseTo(-1 / 3, 12);
  });

  it('is refused without limits, with limits crossed, and for values that do not vary', () => {
    const bad = expect.objectContaining({ code: 'bad-input' });
    expect(() => capabilityIndices(1, 1, { lower: null, upper: null })).toThrow(bad);
    expect(() => capabilityIndices(1, 1, { lower: 2, upper: 2 })).toThrow(bad);
    expect(() => capabilityIndices(1, 0, limits)).toThrow(
      expect.objectContaining({ code: 'not-applicable' }),
    );
  });
});
