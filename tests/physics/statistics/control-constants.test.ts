import { describe, expect, it } from 'vitest';
import { controlConstants } from '../../../hub/physics/statistics/control-constants.ts';
import vectors from '../../reference/spc-vectors.json' with { type: 'json' };

const { rows } = vectors.constants;

describe('constants of control charts', () => {
  it.each(rows)('agree with the table at n = $n', (row) => {
    const found = controlConstants(row.n);
    for (const name of ['d2', 'd3', 'c4', 'A2', 'A3', 'D3', 'D4', 'B3', 'B4', 'E2'] as const) {
      // The table has five decimals.
      expect(Math.abs(found[name] - row[name])).toBeLessThanOrEqual(0.500001e-5);
    }
  });

  it('are exact for pairs, where closed forms exist', () => {
    const { d2, d3, c4, E2, D4 } = controlConstants(2);
    // Range of two normal values: half-normal with scale √2, so mean 2/√π and variance 2 - 4/π.
    expect(d2).toBeCloseTo(2 / Math.sqrt(Math.PI), 9);
    expect(d3).toBeCloseTo(Math.sqrt(2 - 4 / Math.PI), 8);
    expect(c4).toBeCloseTo(Math.sqrt(2 / Math.PI), 14);
    expect([E2, D4].map((x) => x.toFixed(3))).toEqual(['2.659', '3.267']);
  });

  it('are printed as in the tables after rounding, d2 of five', () => {
    // NIST/SEMATECH e-Handbook 6.3.2.1: 2.326, 0.864, 0.577 and 2.114 (which NIST prints as 2.115).
    const { d2, d3, A2, D4 } = controlConstants(5);
    expect([d2, d3, A2].map((x) => x.toFixed(3))).toEqual(['2.326', '0.864', '0.577']);
    expect(D4).toBeCloseTo(2.1145, 4);
  });

  it('are refused for a sample of one, a fraction and a crowd', () => {
    for (const size of [1, 2.5, 26, Number.NaN]) {
      expect(() => controlConstants(size)).toThrow(expect.objectContaining({ code: 'out-of-range' }));
    }
  });
});
