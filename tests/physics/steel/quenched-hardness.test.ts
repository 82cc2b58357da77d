import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { halfMartensiteHardness, quenchedHardness } from '../../../hub/physics/steel/quenched-hardness.ts';
import { codes, refusal } from './support.ts';

describe('hardness of untempered martensite', () => {
  it.each([
    [0.1, 38.5, 38],
    [0.2, 44.4, 44],
    [0.22, 45.6, 45],
    [0.3, 50.5, 50],
    [0.4, 56.3, 56],
    [0.45, 58.9, 59],
    [0.5, 61.2, 61],
    [0.6, 64.6, 64],
    [0.69, 65.8, 65],
  ])('at %f %% C meets the A255 polynomial, %f HRC, and its table, %i HRC', (carbon, polynomial, table) => {
    // Polynomial: text quoting ASTM A255-10. Table: from memory, ASTM A255.
    const { value, formula } = quenchedHardness(carbon);
    expect(Math.abs(value - polynomial)).toBeLessThan(0.051);
    expect(Math.abs(value - table)).toBeLessThan(1);
    expect(formula).toBe('ASTM A255 initial hardness');
  });

  it.each([
    [0.56, 63],
    [0.74, 66.5],
    [0.89, 67],
    [0.98, 66.5],
    [1.15, 64.5],
  ])('holds the hardness measured as quenched at %f %% C, %f HRC', (carbon, hrc) => {
    // Source: Hollomon & Jaffe 1945, via a public compilation.
    const { value, low, high } = quenchedHardness(carbon);
    expect(Math.abs(value - hrc)).toBeLessThan(0.6);
    expect(low).toBeLessThan(hrc);
    expect(high).toBeGreaterThan(hrc);
  });

  it('holds what Hodge & Orehoski report for 99.9 % martensite: 56, 64 and 65 to 66 HRC', () => {
    // Source: Hodge & Orehoski 1946 at 0.40, 0.60, 0.80 % C, second-hand.
    for (const [carbon, hrc] of [
      [0.4, 56],
      [0.6, 64],
      [0.8, 65.5],
    ] as const) {
      expect(quenchedHardness(carbon).low).toBeLessThan(hrc);
      expect(quenchedHardness(carbon).high).toBeGreaterThan(hrc);
    }
  });

  it('leaves the standard above 0.70 % C and says so', () => {
    expect(codes(quenchedHardness(0.7))).toEqual([]);
    expect(codes(quenchedHardness(0.75))).toEqual(['above-a255']);
    expect(codes(quenchedHardness(1))).toContain('retained-austenite');
  });

  it('has no step at 0.70 % C and rises with carbon up to 0.6 %', () => {
    expect(quenchedHardness(0.7001).value - quenchedHardness(0.7).value).toBeLessThan(0.01);
    fc.assert(
      fc.property(fc.double({ min: 0.1, max: 0.59, noNaN: true }), (carbon) => {
        expect(quenchedHardness(carbon + 0.01).value).toBeGreaterThan(quenchedHardness(carbon).value);
      }),
    );
  });

  it('refuses carbon outside 0.10 to 1.15 %', () => {
    expect(refusal(() => quenchedHardness(0.05))).toBe('out-of-range');
    expect(refusal(() => quenchedHardness(1.3))).toBe('out-of-range');
  });
});

describe('half martensite', () => {
  it('meets the A255 table and stays well below full martensite', () => {
    // From memory: ASTM A255 table, 50 % martensite.
    for (const [carbon, hrc] of [
      [0.2, 32],
      [0.3, 37],
      [0.4, 43],
      [0.45, 45],
      [0.5, 47],
      [0.6, 51],
    ] as const) {
      expect(halfMartensiteHardness(carbon).value).toBe(hrc);
      expect(quenchedHardness(carbon).value - hrc).toBeGreaterThan(10);
    }
  });

  it('refuses carbon off the table', () => {
    expect(refusal(() => halfMartensiteHardness(0.8))).toBe('out-of-range');
  });
});
