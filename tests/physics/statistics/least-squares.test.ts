import { describe, expect, it } from 'vitest';
import { leastSquares, predict } from '../../../hub/physics/statistics/least-squares.ts';
import { seededNoise } from '../../reference/seeded-noise.ts';
import { digits, REGRESSION } from '../../reference/strd.ts';

/** Digits that the worst coefficient, the worst standard error and the residual deviation have to agree in. */
const WANTED: Readonly<Record<string, number>> = {
  Norris: 12.5,
  Longley: 13,
  NoInt1: 14,
  NoInt2: 14,
  Pontius: 12.5,
};

describe('least squares', () => {
  it.each(REGRESSION)('keeps the certified digits of $name (NIST SRD 140)', (set) => {
    const fit = leastSquares(set);
    const wanted = WANTED[set.name] ?? 16;
    set.certified.coefficients.forEach((coefficient, i) => {
      expect(digits(fit.coefficients[i] ?? Number.NaN, coefficient)).toBeGreaterThanOrEqual(wanted);
    });
    set.certified.standardErrors.forEach((error, i) => {
      expect(digits(fit.standardErrors[i] ?? Number.NaN, error)).toBeGreaterThanOrEqual(wanted);
    });
    expect(digits(fit.residualDeviation, set.certified.residualDeviation)).toBeGreaterThanOrEqual(wanted);
    expect(digits(fit.rSquared, set.certified.rSquared)).toBeGreaterThanOrEqual(14);
  });

  it('covers every regression set of the file', () => {
    expect(new Set(REGRESSION.map((set) => set.name))).toEqual(new Set(Object.keys(WANTED)));
    expect(REGRESSION.map((set) => set.certified.coefficients.length)).toEqual([2, 7, 1, 1, 3]);
  });

  it('refuses columns that are made of each other, and one that never changes', () => {
    const none = expect.objectContaining({ code: 'no-solution' });
    const rows = [1, 2, 3, 4, 5].map((x) => [x, 3 * x - 1]);
    expect(() => leastSquares({ rows, y: [1, 2, 3, 4, 6] })).toThrow(none);
    expect(() => leastSquares({ rows: [[2], [2], [2], [2]], y: [1, 2, 3, 4] })).toThrow(none);
  });

  it('refuses too few values, rows of unequal width and what is no number', () => {
    const bad = expect.objectContaining({ code: 'bad-input' });
    expect(() => leastSquares({ rows: [[1], [2]], y: [1, 2] })).toThrow(bad);
    expect(() => leastSquares({ rows: [[1], [2], [3, 4], [5]], y: [1, 2, 3, 4] })).toThrow(bad);
    expect(() => leastSquares({ rows: [[1], [2], [3]], y: [1, 2, 3, 4] })).toThrow(bad);
    expect(() => leastSquares({ rows: [[1], [2], [Number.NaN]], y: [1, 2, 3] })).toThrow(bad);
  });
});

describe('the band of a fit', () => {
  const rows = [10, 20, 30, 40, 50].map((x) => [x]);
  const y = [1.1, 1.9, 3.2, 3.9, 5.1];

  it('is Student’s, by hand', () => {
    // Line: slope 0.1, intercept 0.04; residuals .06 -.14 .16 -.14 .06, sum of squares 0.072, s = √0.024.
    const fit = leastSquares({ rows, y });
    expect(fit.coefficients[1]).toBeCloseTo(0.1, 12);
    expect(fit.residualDeviation).toBeCloseTo(Math.sqrt(0.024), 12);
    // t(0.975; 3) = 3.1824 (any t table); leverage at 60: 1/5 + 30²/1000 = 1.1.
    const at60 = predict(fit, [60], 0.95);
    expect(at60.value).toBeCloseTo(6.04, 12);
    expect(at60.high - at60.value).toBeCloseTo(3.1824 * Math.sqrt(0.024 * 2.1), 4);
    expect(at60.curveHigh - at60.value).toBeCloseTo(3.1824 * Math.sqrt(0.024 * 1.1), 4);
  });

  it('holds four in five of the next values', () => {
    const noise = seededNoise(3);
    let held = 0;
    const tries = 4000;
    for (let i = 0; i < tries; i++) {
      const line = (x: number) => 60 - 0.2 * x + noise();
      const fit = leastSquares({ rows, y: rows.map(([x = 0]) => line(x)) });
      const { low, high } = predict(fit, [45], 0.8);
      const next = line(45);
      if (next >= low && next <= high) held++;
    }
    // Standard error of the share: 0.6 %.
    expect(Math.abs(held / tries - 0.8)).toBeLessThan(0.025);
  });

  it('is refused for a row of another width and for a share of 1', () => {
    const fit = leastSquares({ rows, y });
    expect(() => predict(fit, [1, 2], 0.8)).toThrow(expect.objectContaining({ code: 'bad-input' }));
    expect(() => predict(fit, [1], 1)).toThrow(expect.objectContaining({ code: 'out-of-range' }));
  });
});
