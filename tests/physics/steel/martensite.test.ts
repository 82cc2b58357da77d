import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { criticalTemperatures } from '../../../hub/physics/steel/critical.ts';
import {
  martensiteFraction,
  ms,
  retainedAustenite,
  undercoolingForFraction,
} from '../../../hub/physics/steel/martensite.ts';
import { codes, numberOf, refusal } from './support.ts';

const STEEL_1045 = { C: 0.45, Mn: 0.75, Si: 0.25 };
const STEEL_1095 = { C: 0.95, Mn: 0.4, Si: 0.25 };

describe('Koistinen-Marburger', () => {
  it('reaches 90 % at 209 °C and 99 % at 419 °C below Ms', () => {
    // Worked from 1 - exp(-0.011 (Ms - T)), Koistinen & Marburger 1959.
    expect(undercoolingForFraction(0.9)).toBeCloseTo(209.3, 1);
    expect(undercoolingForFraction(0.99)).toBeCloseTo(418.7, 1);
    expect(martensiteFraction(300, 300 - undercoolingForFraction(0.5))).toBeCloseTo(0.5, 12);
  });

  it('forms nothing at or above Ms', () => {
    expect(martensiteFraction(300, 300)).toBe(0);
    expect(martensiteFraction(300, 500)).toBe(0);
  });

  it('gives M90 and Mf with the band of Ms', () => {
    const { ms: start, m90, mf } = criticalTemperatures(STEEL_1045);
    expect(numberOf(start) - numberOf(m90)).toBeCloseTo(209.3, 1);
    expect(numberOf(start) - numberOf(mf)).toBeCloseTo(418.7, 1);
    expect((mf.high ?? 0) - (mf.low ?? 0)).toBeCloseTo((start.high ?? 0) - (start.low ?? 0), 9);
    expect(codes(mf)).toContain('below-room-temperature');
  });

  it('refuses a fraction of one, which is never reached', () => {
    expect(refusal(() => undercoolingForFraction(1))).toBe('out-of-range');
  });
});

describe('retained austenite', () => {
  it('is a few percent for 1045 quenched to room temperature', () => {
    // exp(-0.011 (328 - 20)) = 0.0338 with van Bohemen's Ms of 328 °C.
    const answer = retainedAustenite({ composition: STEEL_1045 });
    expect(numberOf(answer)).toBeCloseTo(0.0338, 3);
    expect(answer.unit).toBe('fraction');
    expect(codes(answer)).toEqual([]);
  });

  it('assumes 0.60 to 0.75 % dissolved carbon above the eutectoid, and says so', () => {
    const assumed = retainedAustenite({ composition: STEEL_1095 });
    expect(codes(assumed)).toContain('dissolved-carbon-assumed');
    const all = retainedAustenite({ composition: STEEL_1095, carbonInAustenitePercent: 0.95 });
    expect(numberOf(all)).toBeGreaterThan(numberOf(assumed));
  });

  it('falls with a deeper quench and rises with dissolved carbon', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.2, max: 0.89, noNaN: true }),
        fc.double({ min: -196, max: 150, noNaN: true }),
        (carbon, celsius) => {
          const at = (c: number, t: number) =>
            numberOf(
              retainedAustenite({ composition: STEEL_1095, carbonInAustenitePercent: c, quenchCelsius: t }),
            );
          expect(at(carbon, celsius)).toBeLessThanOrEqual(at(carbon, celsius + 20));
          expect(at(carbon, celsius)).toBeLessThanOrEqual(at(carbon + 0.05, celsius));
        },
      ),
      { numRuns: 100 },
    );
  });

  it('refuses more dissolved carbon than there is, and steel that no Ms formula covers', () => {
    expect(refusal(() => retainedAustenite({ composition: STEEL_1045, carbonInAustenitePercent: 0.6 }))).toBe(
      'out-of-range',
    );
    const d2 = { C: 1.5, Mn: 0.35, Cr: 12 };
    expect(retainedAustenite({ composition: d2 })).toMatchObject({ value: null, unit: 'fraction' });
  });
});

describe('Ms', () => {
  it('uses the next formula for carbon below van Bohemen, and never invents one', () => {
    expect(ms({ C: 0.05, Mn: 1 }).formula).toBe('Andrews 1965 Ms, linear');
    expect(ms({ C: 0.8, Cr: 12 }).value).toBeNull();
  });

  it('counts the formulas that are extrapolated', () => {
    const flags = ms({ C: 0.95, Mn: 0.4, Si: 0.25 }).flags.find(
      (item) => item.code === 'band-includes-extrapolation',
    );
    expect(flags?.message).toMatch(/^8 of 10 formulas/);
  });
});
