import { describe, expect, it } from 'vitest';
import { hollomonJaffe, hollomonJaffeConstant } from '../../../hub/physics/steel/hollomon-jaffe.ts';
import { REGRESSION_COEFFICIENTS, regressionTerms } from '../../../hub/physics/steel/temper-models.ts';
import { pairsOf, type TemperSet } from '../../../hub/physics/steel/temper-set.ts';
import { GRANGE_BAUGHMAN } from '../../../hub/physics/steel/temper-sets-grange-baughman.ts';
import { HOLLOMON_JAFFE_SETS } from '../../../hub/physics/steel/temper-sets-hollomon-jaffe.ts';
import { PENHA } from '../../../hub/physics/steel/temper-sets-penha.ts';

const SETS: readonly TemperSet[] = [...HOLLOMON_JAFFE_SETS, ...GRANGE_BAUGHMAN, ...PENHA];

interface Row {
  readonly steel: string;
  readonly terms: readonly number[];
  readonly hrc: number;
}

const ROWS: readonly Row[] = SETS.flatMap((set) =>
  pairsOf(set).map(({ celsius, hours, hrc }) => {
    const x = hollomonJaffe(celsius, hours, hollomonJaffeConstant(set.composition.C)) / 1000;
    return { steel: set.id, terms: regressionTerms(set.composition, x), hrc };
  }),
);

/** Least squares by the normal equations, Gauss elimination with pivoting. */
function leastSquares(rows: readonly Row[]): number[] {
  const n = REGRESSION_COEFFICIENTS.length;
  const system = Array.from({ length: n }, () => new Array<number>(n + 1).fill(0));
  for (const { terms, hrc } of rows) {
    const all = [...terms, hrc];
    for (const [i, line] of system.entries()) {
      for (const [j, term] of all.entries()) line[j] = (line[j] ?? 0) + (terms[i] ?? 0) * term;
    }
  }
  return solve(system);
}

function solve(system: number[][]): number[] {
  for (let column = 0; column < system.length; column += 1) {
    const pivot = system
      .slice(column)
      .reduce((best, line) => (Math.abs(line[column] ?? 0) > Math.abs(best[column] ?? 0) ? line : best));
    system.splice(system.indexOf(pivot), 1);
    system.splice(column, 0, pivot);
    for (const line of system) {
      // Without the one vanadium steel nothing is known of vanadium: its term stays zero.
      if (line === pivot || Math.abs(pivot[column] ?? 0) < 1e-9) continue;
      const share = (line[column] ?? 0) / (pivot[column] ?? 1);
      for (const [j, value] of pivot.entries()) line[j] = (line[j] ?? 0) - share * value;
    }
  }
  return system.map((line, i) =>
    Math.abs(line[i] ?? 0) < 1e-9 ? 0 : (line[system.length] ?? 0) / (line[i] ?? 1),
  );
}

function misses(rows: readonly Row[], coefficients: readonly number[]): number[] {
  return rows.map(
    ({ terms, hrc }) => terms.reduce((sum, term, i) => sum + term * (coefficients[i] ?? 0), 0) - hrc,
  );
}

describe('the tempering regression', () => {
  it('is the least-squares fit to the 365 measured pairs, to the digits written down', () => {
    const fitted = leastSquares(ROWS);
    expect(ROWS).toHaveLength(365);
    for (const [index, coefficient] of REGRESSION_COEFFICIENTS.entries()) {
      expect(Math.abs((fitted[index] ?? Number.NaN) - coefficient), `term ${index}`).toBeLessThan(0.002);
    }
  });

  it('meets a steel left out of the fit to 3.1 HRC rms, nine pairs of ten within 5', () => {
    const left = SETS.flatMap((set) => {
      const others = ROWS.filter((row) => row.steel !== set.id);
      return misses(
        ROWS.filter((row) => row.steel === set.id),
        leastSquares(others),
      );
    });
    const rms = Math.sqrt(left.reduce((sum, miss) => sum + miss * miss, 0) / left.length);
    expect(rms).toBeCloseTo(3.14, 1);
    expect(left.filter((miss) => Math.abs(miss) <= 5).length / left.length).toBeGreaterThan(0.89);
  });
});
