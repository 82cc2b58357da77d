import { describe, expect, it } from 'vitest';
import {
  normalQuantile,
  normalShareBelow,
  studentHalfWidth,
  studentQuantile,
} from '../../../hub/physics/statistics/distributions.ts';

describe('quantiles', () => {
  it('of the normal distribution are those of the tables', () => {
    // NIST/SEMATECH e-Handbook 1.3.6.7.1, and 15 digits from memory of published constants.
    expect(normalQuantile(0.975)).toBeCloseTo(1.959963984540054, 13);
    expect(normalQuantile(0.9)).toBeCloseTo(1.2815515655446004, 13);
    expect(normalShareBelow(-3) * 2).toBeCloseTo(0.0026997960632601866, 15);
  });

  it.each([
    // NIST/SEMATECH e-Handbook 1.3.6.7.2, upper critical values of Student's t.
    [0.9, 1, 3.078],
    [0.975, 1, 12.706],
    [0.975, 5, 2.571],
    [0.99, 3, 4.541],
    [0.9, 10, 1.372],
    [0.95, 30, 1.697],
    [0.975, 100, 1.984],
  ])('of Student: %f at %i degrees is %f', (share, freedom, value) => {
    expect(studentQuantile(share, freedom)).toBeCloseTo(value, 3);
    expect(studentQuantile(1 - share, freedom)).toBeCloseTo(-value, 3);
  });

  it('of Student take broken degrees of freedom and end in the normal ones', () => {
    const between = studentQuantile(0.975, 17.776);
    expect(between).toBeLessThan(studentQuantile(0.975, 17));
    expect(between).toBeGreaterThan(studentQuantile(0.975, 18));
    expect(studentQuantile(0.975, 1e7)).toBeCloseTo(normalQuantile(0.975), 6);
    expect(studentQuantile(0.5, 4)).toBe(0);
    expect(studentHalfWidth(0.95, 5)).toBe(studentQuantile(0.975, 5));
  });

  it('are refused at 0 and 1, and without a degree of freedom', () => {
    const range = expect.objectContaining({ code: 'out-of-range' });
    for (const share of [0, 1, -0.1, Number.NaN]) expect(() => normalQuantile(share)).toThrow(range);
    expect(() => studentQuantile(0.9, 0)).toThrow(range);
    expect(() => studentHalfWidth(1, 3)).toThrow(range);
  });
});
