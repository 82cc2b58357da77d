import { describe, expect, it } from 'vitest';
import { coolingArrests, ouchiAr3, undercooling } from '../../../hub/physics/steel/cooling-arrests.ts';
import { criticalTemperatures } from '../../../hub/physics/steel/critical.ts';
import { ARREST_ROWS } from '../../reference/steel-arrests.ts';
import { codes, numberOf, refusal } from './support.ts';

/** The reference values are recalled to ±5 °C. */
const RECALLED = 5;

describe('Ac and Ar against the table at 28 °C/h (ASM Handbook vol. 4, 1991, from memory)', () => {
  it.each(ARREST_ROWS)('$steel: measured Ac1 lies in the band', (row) => {
    const { ac1 } = criticalTemperatures(row.composition);
    expect(row.ac1).toBeGreaterThan((ac1.low ?? Number.NaN) - RECALLED);
    expect(row.ac1).toBeLessThan((ac1.high ?? Number.NaN) + RECALLED);
  });

  it.each(ARREST_ROWS)('$steel: measured Ar1 and Ar3 lie in the band', (row) => {
    const { ar1, ar3 } = criticalTemperatures(row.composition);
    expect(row.ar1).toBeGreaterThan((ar1.low ?? Number.NaN) - RECALLED);
    expect(row.ar1).toBeLessThan((ar1.high ?? Number.NaN) + RECALLED);
    expect(row.ar3).toBeGreaterThan((ar3.low ?? Number.NaN) - RECALLED);
    expect(row.ar3).toBeLessThan((ar3.high ?? Number.NaN) + RECALLED);
  });

  it('misses the measured Ac3 by 43 °C at worst, 4140, which is the one outside the band', () => {
    const misses = ARREST_ROWS.map((row) => {
      const { ac3 } = criticalTemperatures(row.composition);
      return { steel: row.steel, miss: row.ac3 - numberOf(ac3), above: row.ac3 - (ac3.high ?? 0) };
    });
    const worst = misses.reduce((a, b) => (Math.abs(b.miss) > Math.abs(a.miss) ? b : a));
    expect(worst.steel).toBe('4140');
    expect(worst.miss).toBeCloseTo(42.8, 0);
    expect(misses.filter((item) => item.above > RECALLED).map((item) => item.steel)).toEqual(['4140']);
  });

  it('misses the measured Ac1 by 27 °C at worst', () => {
    const misses = ARREST_ROWS.map((row) =>
      Math.abs(row.ac1 - numberOf(criticalTemperatures(row.composition).ac1)),
    );
    expect(Math.max(...misses)).toBeLessThan(27);
  });
});

describe('undercooling', () => {
  it('widens with the cooling rate and keeps its band in order', () => {
    const rates = [1, 5, 28, 100, 1000, 3600, 20_000];
    const gaps = rates.map((rate) => undercooling('ar1', rate));
    for (const gap of gaps) {
      expect(gap.low).toBeLessThanOrEqual(gap.value);
      expect(gap.value).toBeLessThanOrEqual(gap.high);
    }
    const values = gaps.map((gap) => gap.value);
    expect(values).toEqual([...values].sort((a, b) => a - b));
  });

  it('puts recalescence in air 30 to 100 °C below Ac1', () => {
    // Common practice, no source: air cooling of a small bar is about 1 °C/s.
    const gap = undercooling('ar1', 3600).value;
    expect(gap).toBeGreaterThan(30);
    expect(gap).toBeLessThan(100);
  });

  it('finds the one published pair of Ac1 and Ar1 that has no rate inside its band', () => {
    // Source: steel supplier page, 40Cr: Ac1 735, Ar1 700.
    const gap = undercooling('ar1', 28);
    expect(gap.low).toBeLessThanOrEqual(735 - 700);
    expect(gap.high).toBeGreaterThanOrEqual(735 - 700);
  });

  it('refuses rates outside 1 to 20 000 °C/h', () => {
    expect(refusal(() => undercooling('ar1', 0.5))).toBe('out-of-range');
    expect(refusal(() => undercooling('ar3', 30_000))).toBe('out-of-range');
  });
});

describe('coolingArrests', () => {
  it('gives none where the steel goes to martensite', () => {
    // Maynier with the austenitising parameter in °C: 4340 hardens fully above 3.9 °C/s = 14 000 °C/h.
    const steel = { C: 0.4, Mn: 0.7, Si: 0.25, Ni: 1.83, Cr: 0.8, Mo: 0.25 };
    const { ar1, ar3 } = criticalTemperatures(steel, { coolingCelsiusPerHour: 18_000 });
    expect(codes(ar1)).toEqual(['forms-martensite']);
    expect(ar3.value).toBeNull();
    expect(criticalTemperatures(steel, { coolingCelsiusPerHour: 10_000 }).ar1.value).not.toBeNull();
  });

  it('says why when Ac1 is not known', () => {
    const d2 = { C: 1.5, Mn: 0.3, Cr: 12 };
    const { ac1, ac3 } = criticalTemperatures(d2);
    expect(coolingArrests(d2, { ac1, ac3 }, 28).ar1).toMatchObject({ reason: { code: 'outside-validity' } });
  });

  it("widens the band of low-carbon steel by Ouchi's plate formula, and refuses it above 0.2 % C", () => {
    // By hand: 910 - 310*0.15 - 80*1.2 = 767.5; +0.35 per mm above 8.
    expect(numberOf(ouchiAr3({ C: 0.15, Mn: 1.2 }))).toBeCloseTo(767.5, 9);
    expect(numberOf(ouchiAr3({ C: 0.15, Mn: 1.2 }, 28))).toBeCloseTo(774.5, 9);
    expect(refusal(() => ouchiAr3({ C: 0.3 }))).toBe('out-of-range');
    const { ar3 } = criticalTemperatures({ C: 0.15, Mn: 1.2 });
    expect(ar3.low).toBeLessThanOrEqual(767.5);
    expect(ar3.high).toBeGreaterThanOrEqual(767.5);
  });
});
