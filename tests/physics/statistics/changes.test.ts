import { describe, expect, it } from 'vitest';
import { drift, shiftBetween, stagedChart } from '../../../hub/physics/statistics/changes.ts';
import { seededNoise } from '../../reference/seeded-noise.ts';
import { REGRESSION } from '../../reference/strd.ts';

/** Student's sleep data (Biometrika 6, 1908), as distributed with R. */
const ONE = [0.7, -1.6, -0.2, -1.2, -0.1, 3.4, 3.7, 0.8, 0, 2];
const TWO = [1.9, 0.8, 1.1, 0.1, -0.1, 4.4, 5.5, 1.6, 4.6, 3.4];

describe('the shift between two stretches', () => {
  it('has the band that R prints for its sleep data (Welch, 17.776 degrees of freedom)', () => {
    // R documentation of t.test: means 0.75 and 2.33, 95 percent confidence interval -3.3654832 0.2054832.
    const shift = shiftBetween(ONE, TWO, 0.95);
    expect(shift.value).toBeCloseTo(1.58, 12);
    expect(shift.low).toBeCloseTo(-0.2054832, 7);
    expect(shift.high).toBeCloseTo(3.3654832, 7);
    expect(shift.sure).toBe(false);
  });

  it('is sure where the band leaves zero out', () => {
    expect(shiftBetween(ONE, TWO, 0.9).sure).toBe(true);
    expect(shiftBetween([5, 5], [7, 7])).toEqual({ value: 2, low: 2, high: 2, sure: true });
  });

  it('is rarely sure when nothing changed', () => {
    const noise = seededNoise(21);
    const row = (n: number) => Array.from({ length: n }, () => noise());
    const wrong = Array.from({ length: 2000 }, () => shiftBetween(row(6), row(9))).filter((s) => s.sure);
    // One in twenty by its own promise; standard error 0.5 %.
    expect(wrong.length / 2000).toBeGreaterThan(0.03);
    expect(wrong.length / 2000).toBeLessThan(0.07);
  });

  it('wants two values on either side', () => {
    expect(() => shiftBetween([1], TWO)).toThrow(expect.objectContaining({ code: 'bad-input' }));
  });
});

describe('a chart in stages', () => {
  const noise = seededNoise(5);
  const values = Array.from({ length: 24 }, (_, i) => (i < 12 ? 860 : 866) + noise());

  it('gives each stretch limits of its own and tells the shift', () => {
    const [before, after] = stagedChart(values, [12]);
    expect(before).toMatchObject({ from: 0, to: 12, shift: null });
    expect(after).toMatchObject({ from: 12, to: 24, shift: { sure: true } });
    expect(Math.abs((after?.chart?.values.centre ?? 0) - 866)).toBeLessThan(1);
    expect(after?.shift?.value).toBeGreaterThan(4.5);
  });

  it('is one stage without changes, and knows nothing of a single value', () => {
    expect(stagedChart(values, [])).toHaveLength(1);
    expect(stagedChart(values, [23])[1]).toEqual({ from: 23, to: 24, chart: null, shift: null });
  });

  it('refuses changes out of order or outside', () => {
    for (const changes of [[0], [24], [8, 8], [9, 3], [1.5]]) {
      expect(() => stagedChart(values, changes)).toThrow(expect.objectContaining({ code: 'bad-input' }));
    }
  });
});

describe('drift', () => {
  it('is the slope of Norris with its certified standard error (NIST SRD 140)', () => {
    const norris = REGRESSION.find((set) => set.name === 'Norris');
    const found = drift(norris?.rows.map(([x = 0]) => x) ?? [], norris?.y ?? [], 0.95);
    expect(found.value).toBeCloseTo(1.00211681802045, 12);
    // t(0.975; 34) = 2.0322 (t tables).
    expect((found.high - found.value) / 0.000429796848199937).toBeCloseTo(2.0322, 4);
  });

  it('is not sure in noise, and cannot be told at one instant', () => {
    expect(drift([1, 2, 3, 4], [5, 4, 6, 5]).sure).toBe(false);
    expect(() => drift([1, 1, 1, 1], [5, 4, 6, 5])).toThrow(expect.objectContaining({ code: 'no-solution' }));
  });
});
