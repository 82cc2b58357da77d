import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { heldAt } from '../../../hub/physics/time-at-temperature/curve.ts';
import {
  astmGrainNumber,
  grainTrend,
  measuredGrain,
  measuredGrainSets,
} from '../../../hub/physics/time-at-temperature/grain-growth.ts';
import { GRAIN_SETS } from '../../../hub/physics/time-at-temperature/grain-sets.ts';
import { GRAIN_NUMBERS, LEE_LEE } from '../../reference/diffusion-values.ts';

describe('grain trend', () => {
  it.each(LEE_LEE)('carbon %d, %d °C, 1 h: %d µm by Lee and Lee', (carbonPercent, celsius, expected) => {
    const { sizeMetres } = grainTrend(heldAt(celsius, 3600), { carbonPercent });
    // The printed figures take 0 °C as 273 K, worth 0.15 % of the size, and round to 0.05 µm.
    expect(Math.abs(((sizeMetres?.value ?? 0) * 1e6) / expected - 1)).toBeLessThan(0.003);
  });

  it('its band holds every measured row: 4140 at twice the formula, pinned 1045 at a fifth', () => {
    for (const set of GRAIN_SETS) {
      for (const { celsius, micrometres } of set.rows) {
        for (const [i, measured] of micrometres.entries()) {
          const steel = { carbonPercent: set.carbonPercent, ...set.alloy };
          const { sizeMetres } = grainTrend(heldAt(celsius, set.seconds[i] ?? 0), steel);
          expect(measured * 1e-6, `${set.id} ${celsius}`).toBeGreaterThan(sizeMetres?.low ?? 0);
          expect(measured * 1e-6, `${set.id} ${celsius}`).toBeLessThan(sizeMetres?.high ?? 0);
        }
      }
    }
  });

  it('under-predicts 4140 by nearly two at 900 °C: about 21 against a measured 38.9 µm', () => {
    const { sizeMetres } = grainTrend(heldAt(900, 480), { carbonPercent: 0.4, cr: 0.95, mo: 0.2 });
    expect((sizeMetres?.value ?? 0) * 1e6).toBeCloseTo(21, 0);
    expect(measuredGrain('4140', 900, 480) * 1e6).toBeCloseTo(38.9, 6);
  });

  it('only ever grows: along any curve, and with every further heat', () => {
    const heats = fc.array(fc.integer({ min: 700, max: 1190 }), { minLength: 2, maxLength: 8 });
    fc.assert(
      fc.property(heats, fc.integer({ min: 700, max: 1190 }), (celsius, next) => {
        const curve = celsius.map((at, i) => ({ atMs: i * 300_000, celsius: at }));
        const longer = [...curve, { atMs: celsius.length * 300_000, celsius: next }];
        const size = (of: typeof curve): number =>
          grainTrend(of, { carbonPercent: 0.8 }).sizeMetres?.value ?? 0;
        expect(size(longer)).toBeGreaterThanOrEqual(size(curve));
      }),
      { seed: 24, numRuns: 60 },
    );
  });

  it('a hold cut into pieces gives the grain of the whole hold', () => {
    const whole = grainTrend(heldAt(1000, 3600), { carbonPercent: 0.8 }).sizeMetres?.value ?? 0;
    const minutes = Array.from({ length: 61 }, (_, i) => ({ atMs: i * 60_000, celsius: 1000 }));
    expect((grainTrend(minutes, { carbonPercent: 0.8 }).sizeMetres?.value ?? 0) / whole).toBeCloseTo(1, 9);
  });

  it('claims nothing for a curve that never got hot, and reports coarsening heat', () => {
    expect(grainTrend(heldAt(700, 3600), { carbonPercent: 0.8 }).sizeMetres).toBeNull();
    const overheated = grainTrend(heldAt(1210, 600), { carbonPercent: 0.8 });
    expect(overheated.secondsAbove).toBe(600);
    expect(overheated.secondsCoarsening).toBe(600);
    expect(() => grainTrend(heldAt(900, 60), { carbonPercent: 3 })).toThrow(
      expect.objectContaining({ code: 'out-of-range' }),
    );
  });
});

describe('measured grain', () => {
  it('gives back the measured rows and lies between them in between', () => {
    expect(measuredGrain('o1', 900, 3600) * 1e6).toBeCloseTo(15.8, 9);
    const between = measuredGrain('o1', 950, 3600) * 1e6;
    expect(between).toBeGreaterThan(15.8);
    expect(between).toBeLessThan(81);
    expect(measuredGrainSets().map((set) => set.id)).toContain('52100');
  });

  it('extrapolates neither temperature nor time, and knows no other steel', () => {
    const refused = expect.objectContaining({ code: 'out-of-range' });
    expect(() => measuredGrain('o1', 750, 3600)).toThrow(refused);
    expect(() => measuredGrain('o1', 900, 36_000)).toThrow(refused);
    expect(() => measuredGrain('z9', 900, 3600)).toThrow(expect.objectContaining({ code: 'bad-input' }));
  });
});

describe('ASTM grain number', () => {
  it.each(GRAIN_NUMBERS)('an intercept of %d µm is number %d', (micrometres, g) => {
    expect(Math.abs(astmGrainNumber(micrometres * 1e-6) - g)).toBeLessThan(0.01);
  });

  it('refuses an intercept of nothing', () => {
    expect(() => astmGrainNumber(0)).toThrow(expect.objectContaining({ code: 'out-of-range' }));
  });
});
