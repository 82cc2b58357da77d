import { describe, expect, it } from 'vitest';
import {
  type BuriedPlan,
  buriedCurve,
  equivalentRadius,
  packingOf,
} from '../../../hub/physics/heat/buried.ts';
import { coolingRateAt, judgeCooling } from '../../../hub/physics/heat/cooling-rule.ts';
import { plainMaterial, structuralSteel } from '../../../hub/physics/heat/material.ts';

const IN_ASH: BuriedPlan = {
  steel: structuralSteel(),
  widthMetres: 0.04,
  thicknessMetres: 0.006,
  packing: 'ash',
  canRadiusMetres: 0.125,
  startCelsius: 850,
  shopCelsius: 20,
  untilCelsius: 600,
};

describe('a bar buried in packing', () => {
  it('approaches the steady solution 2 pi k dT / ln(R/r) when the packing weighs nothing', () => {
    const steel = plainMaterial({ densityKgM3: 7850, specificHeatJKgK: 650, conductivityWmK: 30 });
    const light = plainMaterial({ densityKgM3: 0.5, specificHeatJKgK: 900, conductivityWmK: 0.13 });
    const packing = { material: light, standing: 'derived', source: 'a test' } as const;
    const curve = buriedCurve({ ...IN_ASH, steel, packing, untilCelsius: 500 });
    const watts = (2 * Math.PI * 0.13 * (700 - 20)) / Math.log(0.125 / equivalentRadius(0.04, 0.006));
    const steady = (watts / (7850 * 0.04 * 0.006 * 650)) * 3600;
    // The can's own skin is a few degrees above the shop, so a little less.
    expect(coolingRateAt(curve, 700) / steady).toBeGreaterThan(0.9);
    expect(coolingRateAt(curve, 700) / steady).toBeLessThan(1.02);
  });

  // Conduction estimate, k 0.13, quasi-steady to a 100-150 mm can, c 650: about 770 and 265 °C/h at 700.
  it.each([
    [0.04, 0.006, 770],
    [0.025, 0.025, 265],
  ])('%d x %d m agrees with the estimate of %d °C an hour within a fifth', (width, thickness, expected) => {
    const steel = plainMaterial({ densityKgM3: 7850, specificHeatJKgK: 650, conductivityWmK: 30 });
    const light = plainMaterial({ densityKgM3: 0.5, specificHeatJKgK: 900, conductivityWmK: 0.13 });
    const packing = { material: light, standing: 'derived', source: 'a test' } as const;
    const plan = {
      ...IN_ASH,
      steel,
      packing,
      widthMetres: width,
      thicknessMetres: thickness,
      untilCelsius: 500,
    };
    const rate = coolingRateAt(buriedCurve(plan), 700);
    expect(Math.abs(rate / expected - 1)).toBeLessThan(0.2);
  });

  it('a thin bar in ash cools many times faster than 28 °C an hour: no full anneal', () => {
    const rule = { fromCelsius: 830, toCelsius: 650, mostCelsiusPerHour: 28 };
    const verdict = judgeCooling(buriedCurve(IN_ASH), rule);
    expect(verdict.met).toBe(false);
    expect(verdict.meanCelsiusPerHour).toBeGreaterThan(10 * 28);
  });

  it('vermiculite is slower than ash, a thick bar slower than a thin one, a hot companion slower still', () => {
    const rate = (change: Partial<BuriedPlan>): number =>
      coolingRateAt(buriedCurve({ ...IN_ASH, ...change }), 700);
    expect(rate({ packing: 'vermiculite' })).toBeLessThan(rate({}));
    expect(rate({ widthMetres: 0.025, thicknessMetres: 0.025 })).toBeLessThan(rate({}));
    expect(rate({ hotCompanionKgPerMetre: 20 })).toBeLessThan(0.3 * rate({}));
  });

  it('knows the logarithmic capacity of a square and of a strip', () => {
    expect(equivalentRadius(0.02, 0.02)).toBeCloseTo(0.5902 * 0.02, 5);
    expect(equivalentRadius(0.04, 1e-6)).toBeCloseTo(0.01, 4);
  });

  it('does not lose heat faster than its own heat allows: it only ever cools', () => {
    const celsius = buriedCurve({ ...IN_ASH, untilCelsius: 200 }).map((point) => point.celsius);
    expect(celsius).toEqual(celsius.toSorted((a, b) => b - a));
    expect(celsius.at(-1) ?? 0).toBeGreaterThan(20);
  });

  it('says where its numbers come from, and refuses a bar that fills the can', () => {
    expect(packingOf('ash').source).toContain('Robinson');
    const tight = { ...IN_ASH, canRadiusMetres: 0.03, widthMetres: 0.1, thicknessMetres: 0.05 };
    expect(() => buriedCurve(tight)).toThrow(expect.objectContaining({ code: 'bad-input' }));
    expect(() => buriedCurve({ ...IN_ASH, startCelsius: 2000 })).toThrow(
      expect.objectContaining({ code: 'out-of-range' }),
    );
  });
});
