import { describe, expect, test } from 'vitest';
import { celsiusOf, PASCALS_PER_PSI } from '../../../hub/physics/gas-supply/trade-units.ts';
import { vapourPressureReport } from '../../../hub/physics/gas-supply/vapour-pressure-report.ts';

describe('pressure over the liquid', () => {
  // SOURCE: Lemmon, McLinden and Wagner (2009) equation of state via CoolProp: °C, kPa absolute, kPa gauge, psi gauge.
  test.each([
    [-42.1, 101.4, 0, 0],
    [-40, 111.1, 9.8, 1.4],
    [-30, 167.8, 66.5, 9.6],
    [-20, 244.5, 143.2, 20.8],
    [-10, 345.3, 244.0, 35.4],
    [0, 474.5, 373.1, 54.1],
    [10, 636.6, 535.3, 77.6],
    [20, 836.5, 735.1, 106.6],
    [25, 952.1, 850.7, 123.4],
    [30, 1079.0, 977.7, 141.8],
    [40, 1369.4, 1268.1, 183.9],
    [50, 1713.3, 1612.0, 233.8],
  ])('at %d °C is the row of the table', (celsius, absolute, gauge, psi) => {
    const found = vapourPressureReport({ gas: 'propane', celsius });
    expect(Math.abs(found.absolutePascals / 1000 - absolute)).toBeLessThan(0.1 + absolute * 2e-4);
    expect(Math.abs(found.gaugePascals / 1000 - gauge)).toBeLessThan(0.12 + absolute * 2e-4);
    expect(Math.abs(found.gaugePascals / PASCALS_PER_PSI - psi)).toBeLessThan(0.1);
    expect(
      vapourPressureReport({ gas: 'propane', absolutePascals: found.absolutePascals }).celsius,
    ).toBeCloseTo(celsius, 6);
  });

  test('commercial gas reads higher, within the band', () => {
    // SOURCE: LP-gas handbook, °F and psi gauge.
    for (const [fahrenheit, psi] of [
      [70, 127],
      [100, 196],
      [105, 210],
      [130, 287],
    ] as const) {
      const found = vapourPressureReport({ gas: 'propane', celsius: celsiusOf(fahrenheit) });
      expect(psi * PASCALS_PER_PSI).toBeGreaterThan(found.gaugePascals);
      expect(psi * PASCALS_PER_PSI).toBeLessThan(found.commercialHighGaugePascals);
    }
  });

  test('latent heat at 15 °C is 352 kJ/kg within 1 %', () => {
    // SOURCE: CoolProp.
    const found = vapourPressureReport({ gas: 'propane', celsius: 15 }).latentHeatJoulesPerKilogram;
    expect(Math.abs(found / 352_000 - 1)).toBeLessThan(0.01);
  });

  test('asks for one of temperature and pressure, and for propane', () => {
    const badInput = expect.objectContaining({ code: 'bad-input' });
    expect(() => vapourPressureReport({ gas: 'propane' })).toThrowError(badInput);
    expect(() => vapourPressureReport({ gas: 'propane', celsius: 1, absolutePascals: 1e5 })).toThrowError(
      badInput,
    );
    expect(() => vapourPressureReport({ gas: 'butane', celsius: 1 })).toThrowError(
      expect.objectContaining({ code: 'not-applicable' }),
    );
  });
});
