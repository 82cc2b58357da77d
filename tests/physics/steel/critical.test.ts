import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Composition } from '../../../hub/physics/steel/composition.ts';
import { criticalTemperatures, formulaOpinions } from '../../../hub/physics/steel/critical.ts';
import { evaluate } from '../../../hub/physics/steel/formula.ts';
import { MS_FORMULAS } from '../../../hub/physics/steel/formulas-ms.ts';
import { CRITICAL_ROWS } from '../../reference/steel-critical.ts';
import { anySteel, codes, numberOf, refusal } from './support.ts';

describe('criticalTemperatures', () => {
  it.each(CRITICAL_ROWS)('$steel: gives Andrews where he is valid and never Ac3 below Ac1', (row) => {
    const { ac1, ac3 } = criticalTemperatures(row.composition);
    expect(numberOf(ac1)).toBeCloseTo(row.andrewsAc1, 0);
    expect(numberOf(ac3)).toBeCloseTo(Math.max(row.andrewsAc1, row.andrewsAc3), 0);
    expect(codes(ac3).includes('ac3-at-ac1')).toBe(row.bracketed.includes('andrews'));
  });

  it('carries formula, standing and source on every answer', () => {
    const { ac1, ms } = criticalTemperatures({ C: 0.45, Mn: 0.75, Si: 0.25 });
    expect(ac1).toMatchObject({
      unit: 'celsius',
      formula: 'Andrews 1965 Ac1',
      standing: 'published-secondary',
    });
    expect(ms).toMatchObject({ formula: 'van Bohemen 2012 Ms', standing: 'published-secondary' });
    expect(ac1.source).toContain('JISI 203');
  });

  it('shows Ms of 1095 as the band that the formulas span, 97 to 250 °C', () => {
    // Source: spread over the published formulas, worked out by hand for 0.95 C 0.40 Mn 0.25 Si.
    const { ms } = criticalTemperatures({ C: 0.95, Mn: 0.4, Si: 0.25 });
    expect(ms.low).toBeCloseTo(97.5, 0);
    expect(ms.high).toBeCloseTo(250.3, 0);
    expect(codes(ms)).toContain('all-carbon-dissolved');
  });

  it('gives a higher Ms when part of the carbon stays in carbides', () => {
    const steel = { C: 0.95, Mn: 0.4, Si: 0.25 };
    const bulk = criticalTemperatures(steel);
    const dissolved = criticalTemperatures(steel, { carbonInAustenitePercent: 0.68 });
    expect(numberOf(dissolved.ms)).toBeGreaterThan(numberOf(bulk.ms) + 40);
    expect(codes(dissolved.ms)).not.toContain('all-carbon-dissolved');
  });

  it('gives Acm to hypereutectoid steel alone', () => {
    expect(numberOf(criticalTemperatures({ C: 0.95, Mn: 0.4, Si: 0.25 }).acm)).toBeCloseTo(785, 0);
    const { acm, ac3 } = criticalTemperatures({ C: 0.45, Mn: 0.75, Si: 0.25 });
    expect(acm).toMatchObject({ value: null, reason: { code: 'not-hypereutectoid' } });
    expect(codes(ac3)).not.toContain('hypereutectoid');
  });

  it('refuses what no formula covers instead of extrapolating', () => {
    const d2 = criticalTemperatures({ C: 1.5, Mn: 0.35, Si: 0.35, Cr: 12, Mo: 0.95, V: 0.8 });
    for (const answer of [d2.ac1, d2.ac3, d2.ms, d2.mf, d2.ar1, d2.ar3]) {
      expect(answer).toMatchObject({ value: null, reason: { code: 'outside-validity' } });
    }
    expect(d2.ac1.flags[0]?.message).toContain('Cr 12 %');
  });

  it('answers a step beyond a limit with a flag and a wider band', () => {
    const width = (steel: Composition) => {
      const { ac1 } = criticalTemperatures(steel);
      return (ac1.high ?? 0) - (ac1.value ?? 0);
    };
    const h13 = { C: 0.38, Mn: 0.4, Si: 1, Cr: 5.1, Mo: 1.4, V: 1 };
    expect(codes(criticalTemperatures(h13).ac1)).toContain('slightly-outside-validity');
    expect(width(h13)).toBeGreaterThan(width({ ...h13, Cr: 4.9 }));
  });

  it('refuses what is no steel, by name', () => {
    expect(refusal(() => criticalTemperatures({ C: 2.5 }))).toBe('out-of-range');
    expect(refusal(() => criticalTemperatures({ C: -0.1 }))).toBe('bad-input');
    expect(refusal(() => criticalTemperatures({ C: 0.4, Cr: Number.NaN }))).toBe('bad-input');
    expect(refusal(() => criticalTemperatures({ C: 0.4 }, { carbonInAustenitePercent: 0.5 }))).toBe(
      'out-of-range',
    );
    expect(refusal(() => criticalTemperatures({ C: 0.4 }, { coolingCelsiusPerHour: 0 }))).toBe(
      'out-of-range',
    );
  });

  it('lists what every formula says, marked where it is not valid', () => {
    const opinions = formulaOpinions({ C: 0.95, Mn: 0.4, Si: 0.25 });
    expect(opinions.ac3.map((item) => item.inValidity)).toEqual([false, false, false, false, false, false]);
    expect(opinions.ac3[0]?.outside).toEqual(['C 0.95 % (0 to 0.6)']);
    expect(opinions.ms).toHaveLength(MS_FORMULAS.length);
  });
});

describe('laws that hold for any steel', () => {
  it('keeps Ac3 at or above Ac1, Ar3 at or above Ar1, Ar1 below Ac1, Acm at or above Ac1, in every part of the band', () => {
    fc.assert(
      fc.property(anySteel, fc.double({ min: 1, max: 20_000, noNaN: true }), (steel, rate) => {
        const t = criticalTemperatures(steel, { coolingCelsiusPerHour: rate });
        if (t.ac1.value === null || t.ac3.value === null) return;
        for (const key of ['low', 'value', 'high'] as const) {
          expect(t.ac3[key]).toBeGreaterThanOrEqual(t.ac1[key]);
          if (t.acm.value !== null) expect(t.acm[key]).toBeGreaterThanOrEqual(t.ac1[key]);
          if (t.ar1.value !== null && t.ar3.value !== null) {
            expect(t.ar3[key]).toBeGreaterThanOrEqual(t.ar1[key]);
            expect(t.ar1[key]).toBeLessThan(t.ac1[key]);
          }
        }
      }),
      { numRuns: 300 },
    );
  });

  it('holds the value inside its band, everywhere', () => {
    fc.assert(
      fc.property(anySteel, (steel) => {
        for (const answer of Object.values(criticalTemperatures(steel))) {
          if (answer.value === null) continue;
          expect(answer.low).toBeLessThanOrEqual(answer.value);
          expect(answer.value).toBeLessThanOrEqual(answer.high);
        }
      }),
      { numRuns: 200 },
    );
  });

  it('lets Ms fall as carbon rises, in every linear and every saturating formula', () => {
    const formulas = MS_FORMULAS.filter((formula) => formula.products === undefined);
    expect(formulas.length).toBeGreaterThanOrEqual(8);
    fc.assert(
      fc.property(anySteel, fc.double({ min: 0.01, max: 0.5, noNaN: true }), (steel, more) => {
        const richer = { ...steel, C: steel.C + more };
        for (const formula of formulas)
          expect(evaluate(formula, richer)).toBeLessThan(evaluate(formula, steel));
      }),
      { numRuns: 200 },
    );
  });
});
