import { describe, expect, test } from 'vitest';
import {
  propaneBoilingCelsius,
  propaneLatentHeatJoulesPerKilogram,
  propaneVapourPressurePascals,
  STANDARD_ATMOSPHERE_PASCALS,
} from '../../hub/physics/propane.ts';

/** °C and kPa absolute. SOURCE: Lemmon, McLinden and Wagner (2009) equation of state, evaluated with CoolProp. */
const EQUATION_OF_STATE: readonly (readonly [number, number])[] = [
  [-40, 111.1],
  [-30, 167.8],
  [-20, 244.5],
  [-10, 345.3],
  [0, 474.5],
  [10, 636.6],
  [20, 836.5],
  [25, 952.1],
  [30, 1079.0],
  [40, 1369.4],
  [50, 1713.3],
];

/** °F and psi gauge, for 100 % propane. SOURCE: an LP-gas supplier's pressure chart. */
const SUPPLIER_CHART: readonly (readonly [number, number])[] = [
  [-30, 6.8],
  [-20, 11.5],
  [-10, 17.5],
  [0, 24.5],
  [10, 34],
  [20, 42],
  [30, 53],
  [40, 65],
  [50, 78],
  [60, 93],
  [70, 110],
  [80, 128],
  [90, 150],
  [100, 177],
  [110, 204],
];

describe('propane vapour pressure', () => {
  test.each(EQUATION_OF_STATE)('at %d °C is %d kPa to the last printed digit', (celsius, kilopascals) => {
    expect(propaneVapourPressurePascals(celsius) / 1000).toBeGreaterThan(kilopascals - 0.1);
    expect(propaneVapourPressurePascals(celsius) / 1000).toBeLessThan(kilopascals + 0.1 + kilopascals * 1e-4);
  });

  test.each(SUPPLIER_CHART)(
    'at %d °F agrees with the supplier chart (%d psi) as far as a rounded chart can',
    (fahrenheit, psi) => {
      const celsius = ((fahrenheit - 32) * 5) / 9;
      const gauge = (propaneVapourPressurePascals(celsius) - STANDARD_ATMOSPHERE_PASCALS) / 6894.757293;
      // The chart is rounded by hand: 2.3 psi apart up to 90 °F, 4.4 psi at 110 °F.
      expect(Math.abs(gauge - psi)).toBeLessThan(fahrenheit <= 90 ? 2.4 : 4.5);
    },
  );

  test('refuses a temperature beyond the critical point and a missing one', () => {
    expect(() => propaneVapourPressurePascals(97)).toThrowError(
      expect.objectContaining({ code: 'out-of-range' }),
    );
    expect(() => propaneVapourPressurePascals(Number.NaN)).toThrowError(/NaN °C/);
  });
});

describe('propane boiling point', () => {
  test('under one atmosphere is -42.11 °C', () => {
    // SOURCE: LP-gas handbooks give -42.1 °C (-44 °F); the equation of state gives -42.11 °C.
    expect(propaneBoilingCelsius(STANDARD_ATMOSPHERE_PASCALS)).toBeCloseTo(-42.11, 2);
  });

  test('undoes the vapour pressure', () => {
    for (const celsius of [-80, -20, 5, 60]) {
      expect(propaneBoilingCelsius(propaneVapourPressurePascals(celsius))).toBeCloseTo(celsius, 9);
    }
  });

  test('does not answer for a pressure at which propane has no liquid', () => {
    expect(() => propaneBoilingCelsius(5e6)).toThrowError(expect.objectContaining({ code: 'no-solution' }));
    expect(() => propaneBoilingCelsius(0)).toThrowError(expect.objectContaining({ code: 'no-solution' }));
  });
});

describe('propane latent heat', () => {
  test('is 428 kJ/kg at the boiling point and 352 kJ/kg at 15 °C', () => {
    // SOURCE: LP-gas handbooks, 184 Btu/lb; CoolProp, 352 kJ/kg. Watson's relation is 0.58 % low at 15 °C.
    expect(propaneLatentHeatJoulesPerKilogram(-42.11)).toBeCloseTo(428_000, 0);
    expect(Math.abs(propaneLatentHeatJoulesPerKilogram(15) / 352_000 - 1)).toBeLessThan(0.006);
  });

  test('agrees with the slope of the vapour pressure (Clapeyron)', () => {
    // L = T (vg - vl) dp/dT at 0 °C. SOURCE for volumes: saturated propane, vg 0.0965, vl 0.00189 m³/kg (from memory: NIST).
    const slope = (propaneVapourPressurePascals(0.1) - propaneVapourPressurePascals(-0.1)) / 0.2;
    const latent = 273.15 * (0.0965 - 0.00189) * slope;
    expect(Math.abs(propaneLatentHeatJoulesPerKilogram(0) / latent - 1)).toBeLessThan(0.02);
  });
});
