import { describe, expect, it } from 'vitest';
import { drift, shiftBetween, stagedChart } from '../../../hub/physics/statistics/changes.ts';
import {
  expectedHardness,
  fitHardnessCurve,
  parameterForHardness,
} from '../../../hub/physics/statistics/hardness-curve.ts';
import { leastSquares, predict } from '../../../hub/physics/statistics/least-squares.ts';
import { digits, REGRESSION } from '../../reference/strd.ts';

/** Fewest digits that must agree with the certified values. Longley is ill-conditioned by design. */
const WANTED: Readonly<Record<string, number>> = {
  Norris: 12,
  Longley: 9,
  NoInt1: 13,
  NoInt2: 13,
  Pontius: 11,
};

describe('least squares against NIST StRD (SRD 140)', () => {
  it.each(REGRESSION.map((set) => [set.name, set] as const))(
    'agrees with the certified values of %s',
    (name, set) => {
      const fit = leastSquares({ rows: set.rows, y: set.y, constant: set.constant });
      const wanted = WANTED[name] ?? Number.POSITIVE_INFINITY;
      for (const [i, value] of set.certified.coefficients.entries()) {
        expect(digits(fit.coefficients[i] ?? Number.NaN, value)).toBeGreaterThan(wanted);
      }
      for (const [i, value] of set.certified.standardErrors.entries()) {
        expect(digits(fit.standardErrors[i] ?? Number.NaN, value)).toBeGreaterThan(wanted - 3);
      }
      expect(digits(fit.residualDeviation, set.certified.residualDeviation)).toBeGreaterThan(wanted - 3);
      expect(digits(fit.rSquared, set.certified.rSquared)).toBeGreaterThan(wanted - 3);
    },
  );

  it('gives a band for the next value that is wider than that of the curve, and widest far out', () => {
    const rows = [[1], [2], [3], [4], [5]];
    const fit = leastSquares({ rows, y: [1.1, 1.9, 3.2, 3.8, 5.1] });
    const [near, far] = [predict(fit, [3], 0.8), predict(fit, [9], 0.8)];
    expect(near.high - near.low).toBeGreaterThan(near.curveHigh - near.curveLow);
    expect(far.high - far.low).toBeGreaterThan(near.high - near.low);
  });
});

describe('what changed when', () => {
  it('charts each stretch with its own limits and tells the shift between them', () => {
    const [before, after] = stagedChart([10, 11, 10, 9, 10, 14, 15, 14, 13, 14], [5]);
    expect(before?.chart?.values.centre).toBe(10);
    expect(after?.shift).toMatchObject({ value: 4, sure: true });
  });

  it('is not sure of a shift within the scatter, nor of a drift that is none', () => {
    expect(shiftBetween([10, 11, 9, 10], [10, 10, 11, 9]).sure).toBe(false);
    expect(drift([1, 2, 3, 4, 5], [10, 11, 9, 11, 10]).sure).toBe(false);
    expect(drift([1, 2, 3, 4, 5], [10, 12.1, 13.9, 16, 18])).toMatchObject({ sure: true });
  });
});

describe("the shop's own tempering curve", () => {
  // Grange and Baughman 1956, 1080 steel, 1 h, as compiled; parameter with C = 16.5 in hours and kelvin.
  const measured = [
    [204.4, 61.3],
    [260, 59.5],
    [315.6, 56.7],
    [371.1, 51],
    [426.7, 47],
    [482.2, 43.2],
    [537.8, 38.8],
    [593.3, 32.5],
  ] as const;
  const pieces = measured.map(([celsius, hardnessHrc]) => ({
    parameter: (celsius + 273.15) * 16.5,
    hardnessHrc,
  }));

  it('goes through what was measured, within its own band', () => {
    const curve = fitHardnessCurve(pieces);
    for (const { parameter, hardnessHrc } of pieces) {
      const expected = expectedHardness(curve, parameter, 0.99);
      expect(hardnessHrc).toBeGreaterThan(expected.low);
      expect(hardnessHrc).toBeLessThan(expected.high);
      expect(expected.extrapolated).toBe(false);
    }
    expect(expectedHardness(curve, 20_000).extrapolated).toBe(true);
  });

  it('finds the parameter for a hardness that is wanted', () => {
    const curve = fitHardnessCurve(pieces);
    const wanted = parameterForHardness(curve, 50);
    expect(expectedHardness(curve, wanted.parameter).hardnessHrc).toBeCloseTo(50, 6);
  });
});
