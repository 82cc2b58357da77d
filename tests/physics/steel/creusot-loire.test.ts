import { describe, expect, it } from 'vitest';
import type { Composition } from '../../../hub/physics/steel/composition.ts';
import {
  AUSTENITISING_J_PER_MOL,
  logLimitingRate,
  structureHardness,
  TEMPERING_J_PER_MOL,
  temperedBainiteHv,
  temperedMartensiteHv,
  timeTemperatureKelvin,
} from '../../../hub/physics/steel/creusot-loire.ts';
import { codes, refusal } from './support.ts';

/** All check values: worked independently from Maynier 1978 as transcribed. */
const STEEL_1045 = { C: 0.45, Mn: 0.75, Si: 0.25 };
const STEEL_1080 = { C: 0.8, Mn: 0.75, Si: 0.25 };
const STEEL_4140 = { C: 0.4, Mn: 0.88, Si: 0.25, Cr: 0.95, Mo: 0.2 };
const STEEL_4340 = { C: 0.4, Mn: 0.7, Si: 0.25, Ni: 1.83, Cr: 0.8, Mo: 0.25 };

describe('Maynier 1978', () => {
  it('folds time and temperature into one temperature', () => {
    expect(timeTemperatureKelvin(550, 1, TEMPERING_J_PER_MOL)).toBeCloseTo(823.15, 2);
    expect(timeTemperatureKelvin(550, 2, TEMPERING_J_PER_MOL)).toBeCloseTo(832.6, 1);
    expect(timeTemperatureKelvin(550, 10, TEMPERING_J_PER_MOL)).toBeCloseTo(855.4, 1);
    expect(Math.abs(timeTemperatureKelvin(850, 0.5, AUSTENITISING_J_PER_MOL) - 1107)).toBeLessThan(1);
  });

  it('gives the hardness of each structure by composition and cooling rate', () => {
    const hv = (...args: Parameters<typeof structureHardness>) => structureHardness(...args).value;
    expect(hv('martensite', STEEL_4140, 1e5)).toBeCloseTo(643, 0);
    expect(hv('martensite', STEEL_1045, 1e5)).toBeCloseTo(674, 0);
    expect(hv('bainite', STEEL_4140, 1e4)).toBeCloseTo(349, 0);
    expect(hv('ferrite-pearlite', STEEL_1045, 10 ** 3.5)).toBeCloseTo(196.5, 1);
    expect(hv('ferrite-pearlite', STEEL_1080, 10 ** 3.5)).toBeCloseTo(274.5, 1);
    expect(hv('ferrite-pearlite', STEEL_1080, 28)).toBeCloseTo(263.7, 1);
  });

  it('flags 1080, which lies outside its carbon range, and not 4140', () => {
    expect(codes(structureHardness('ferrite-pearlite', STEEL_1080, 28))).toEqual(['outside-validity']);
    expect(codes(structureHardness('ferrite-pearlite', STEEL_4140, 28))).toEqual([]);
  });

  it('meets the worked limits for full martensite, austenitising parameter in kelvin', () => {
    const perSecond = (log: number) => 10 ** log / 3600;
    const rates = [STEEL_1045, STEEL_4140, STEEL_4340].map((steel) =>
      logLimitingRate('martensite-100', steel, 1107.4),
    );
    expect(rates[0]).toBeCloseTo(4.917, 3);
    expect(rates[1]).toBeCloseTo(4.404, 3);
    expect(rates[2]).toBeCloseTo(3.647, 3);
    expect(perSecond(rates[0] ?? 0)).toBeCloseTo(22.9, 1);
  });

  it('puts half martensite at slower cooling than nine tenths, and that slower than all, in °C only', () => {
    const limit = (name: Parameters<typeof logLimitingRate>[0], steel: Composition, pa: number) =>
      logLimitingRate(name, steel, pa);
    for (const steel of [STEEL_1045, STEEL_4140, STEEL_4340]) {
      expect(limit('martensite-50', steel, 834)).toBeLessThan(limit('martensite-90', steel, 834));
      expect(limit('martensite-90', steel, 834)).toBeLessThan(limit('martensite-100', steel, 834));
    }
    expect(limit('martensite-90', STEEL_1045, 1107)).toBeGreaterThan(
      limit('martensite-100', STEEL_1045, 1107),
    );
  });

  it('tempers 4140 at 550 °C for 1 h to 379 HV, where the other copy of the formula gives 431', () => {
    // Grange & Baughman's measured 4140 interpolates to 37.6 HRC = 368 HV there.
    expect(temperedMartensiteHv(STEEL_4140, 823.15)).toBeCloseTo(379, 0);
  });

  it('softens martensite and bainite as tempering goes on', () => {
    for (const [mild, strong] of [
      [700, 750],
      [800, 900],
    ] as const) {
      expect(temperedMartensiteHv(STEEL_4140, strong)).toBeLessThan(temperedMartensiteHv(STEEL_4140, mild));
      expect(temperedBainiteHv(STEEL_4140, strong)).toBeLessThan(temperedBainiteHv(STEEL_4140, mild));
    }
  });

  it('refuses times and rates that mean nothing', () => {
    expect(refusal(() => timeTemperatureKelvin(550, 0, TEMPERING_J_PER_MOL))).toBe('out-of-range');
    expect(refusal(() => structureHardness('bainite', STEEL_4140, 0))).toBe('out-of-range');
  });
});
