import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  chillOf,
  contentsByScale,
  filledKilograms,
  mostLiquidVolume,
} from '../../../hub/physics/gas-supply/cylinder.ts';
import {
  celsiusOf,
  KILOGRAMS_PER_POUND,
  METRES_PER_INCH,
  WATTS_PER_BTU_PER_HOUR,
} from '../../../hub/physics/gas-supply/trade-units.ts';
import {
  continuousDraw,
  hundredPoundCylindersAtZeroFahrenheit,
  tankDrawAtZeroFahrenheitWatts,
} from '../../../hub/physics/gas-supply/vaporisation.ts';

/** Pounds left in a 100 lb cylinder; thousands of Btu/h at 0, 20, 40, 60 and 70 °F.
 * SOURCE: generator installation manual and supplier chart, identical. */
const HUNDRED_POUND: readonly (readonly [number, readonly number[]])[] = [
  [100, [113, 167, 214, 277, 300]],
  [90, [104, 152, 200, 247, 277]],
  [80, [94, 137, 180, 214, 236]],
  [70, [83, 122, 160, 199, 214]],
  [60, [75, 109, 140, 176, 192]],
  [50, [64, 94, 125, 154, 167]],
  [40, [55, 79, 105, 131, 141]],
  [30, [45, 66, 85, 107, 118]],
  [20, [36, 51, 68, 83, 92]],
  [10, [28, 38, 49, 60, 66]],
];
const FAHRENHEIT = [0, 20, 40, 60, 70];
const FULL = 100 * KILOGRAMS_PER_POUND;

const thousands = (fullKilograms: number, kilograms: number, fahrenheit: number): number =>
  continuousDraw({ fullKilograms, kilograms, airCelsius: celsiusOf(fahrenheit) }).watts /
  WATTS_PER_BTU_PER_HOUR /
  1000;

describe('what a 100 lb cylinder gives for hours on end', () => {
  test.each(HUNDRED_POUND)('with %d lb left is the row of the table', (pounds, row) => {
    row.forEach((expected, column) => {
      const found = thousands(FULL, pounds * KILOGRAMS_PER_POUND, FAHRENHEIT[column] ?? 0);
      expect(found).toBeCloseTo(expected, 6);
    });
  });

  test('lies straight between the points, and stays on the low side beyond them', () => {
    expect(thousands(FULL, 95 * KILOGRAMS_PER_POUND, 50)).toBeCloseTo((214 + 277 + 200 + 247) / 4, 6);
    expect(thousands(FULL, FULL, 110)).toBeCloseTo(300, 6);
    expect(thousands(FULL, 5 * KILOGRAMS_PER_POUND, 70)).toBeCloseTo(33, 6);
    expect(thousands(FULL, 0, 70)).toBe(0);
    expect(() => thousands(FULL, FULL, -10)).toThrowError(expect.objectContaining({ code: 'out-of-range' }));
  });

  test('never falls with warmth or contents', () => {
    const share = fc.double({ min: 0, max: 1, noNaN: true });
    const celsius = fc.double({ min: -17, max: 40, noNaN: true });
    fc.assert(
      fc.property(share, share, celsius, celsius, (a, b, c, d) => {
        const at = (part: number, airCelsius: number) =>
          continuousDraw({ fullKilograms: FULL, kilograms: FULL * part, airCelsius }).watts;
        const [few, many] = [Math.min(a, b), Math.max(a, b)];
        const [cold, warm] = [Math.min(c, d), Math.max(c, d)];
        expect(at(many, cold)).toBeGreaterThanOrEqual(at(few, cold) - 1e-9);
        expect(at(many, warm)).toBeGreaterThanOrEqual(at(many, cold) - 1e-9);
      }),
    );
  });
});

describe('other cylinders and tanks', () => {
  test('a full 20 lb cylinder at 70 °F gives roughly 100 000 Btu/h, and says that it is an estimate', () => {
    // SOURCE: scaling by mass to the power 2/3, computed; no published table of a 20 lb cylinder was seen.
    expect(thousands(20 * KILOGRAMS_PER_POUND, 20 * KILOGRAMS_PER_POUND, 70)).toBeCloseTo(102.6, 1);
    const small = { fullKilograms: 9.07, kilograms: 9, airCelsius: 20 };
    expect(continuousDraw(small).from.standing).toBe('derived-here');
    expect(continuousDraw({ ...small, fullKilograms: FULL }).from.standing).toBe('published-secondary');
  });

  test('200 000 Btu/h at 0 °F need four 100 lb cylinders', () => {
    // SOURCE: generator installation manual, 50 000 Btu/h each.
    expect(hundredPoundCylindersAtZeroFahrenheit(200_000 * WATTS_PER_BTU_PER_HOUR)).toBe(4);
    expect(hundredPoundCylindersAtZeroFahrenheit(200_001 * WATTS_PER_BTU_PER_HOUR)).toBe(5);
  });

  // SOURCE: generator installation manual: Btu/h = D L K at 0 °F, inches.
  test.each([
    [60, 100],
    [50, 90],
    [40, 80],
    [30, 70],
    [20, 60],
    [10, 45],
  ])('a tank %d %% full has the factor %d', (percent, factor) => {
    const watts = tankDrawAtZeroFahrenheitWatts(24 * METRES_PER_INCH, 68 * METRES_PER_INCH, percent);
    expect(watts / WATTS_PER_BTU_PER_HOUR).toBeCloseTo(24 * 68 * factor, 3);
  });

  test('a fuller tank counts as 60 % full', () => {
    const at = (percent: number) => tankDrawAtZeroFahrenheitWatts(1, 3, percent);
    expect(at(85)).toBe(at(60));
    expect(at(15)).toBeCloseTo((at(10) + at(20)) / 2, 6);
  });
});

describe('the chill of its own boiling', () => {
  test('takes 146 W at 1.5 kg/h and at most about 34 K/h of a half-full 20 lb cylinder', () => {
    // SOURCE: computed with 352 kJ/kg at 15 °C (CoolProp); latent heat here is within 1 % of that.
    const chill = chillOf({
      kilogramsPerHour: 1.5,
      contentsKilograms: 4.54,
      tareKilograms: 8,
      liquidCelsius: 15,
    });
    expect(Math.abs(chill.latentWatts - 146)).toBeLessThan(2);
    expect(Math.abs(chill.kelvinPerHour - 34)).toBeLessThan(1.5);
  });

  test('is steeper the emptier the cylinder and the larger the draw', () => {
    const cylinder = { kilogramsPerHour: 1.5, contentsKilograms: 4, tareKilograms: 8, liquidCelsius: 0 };
    const { kelvinPerHour } = chillOf(cylinder);
    expect(chillOf({ ...cylinder, contentsKilograms: 1 }).kelvinPerHour).toBeGreaterThan(kelvinPerHour);
    expect(chillOf({ ...cylinder, kilogramsPerHour: 3 }).kelvinPerHour).toBeCloseTo(2 * kelvinPerHour, 9);
    expect(chillOf({ ...cylinder, kilogramsPerHour: 0 }).kelvinPerHour).toBe(0);
  });
});

describe('what a cylinder holds', () => {
  // SOURCE: 42 % of the water capacity; 47.6 lb to 20 lb published, the other capacities from memory.
  test.each([
    [47.6, 20.0],
    [71.5, 30],
    [95.3, 40],
    [238, 100],
  ])('%d lb of water make %d lb of gas', (water, gas) => {
    expect(filledKilograms(water * KILOGRAMS_PER_POUND) / KILOGRAMS_PER_POUND).toBeCloseTo(gas, 1);
  });

  test('100 gal at 42 %, 0.510 and 1.031 take 79.8 gal of liquid', () => {
    // SOURCE: 29 CFR 1910.110(b)(19)(v)(d); the arithmetic gives 79.88.
    const filling = { waterVolume: 100, fillShare: 0.42, relativeDensity: 0.51, temperatureFactor: 1.031 };
    expect(mostLiquidVolume(filling)).toBeCloseTo(79.88, 2);
  });

  test('is gross less tare, never below nothing', () => {
    expect(contentsByScale(14.5, 8, 0.2)).toEqual({ low: 6.3, value: 6.5, high: 6.7 });
    expect(contentsByScale(7.9, 8, 0.2)).toEqual({ low: 0, value: 0, high: expect.closeTo(0.1, 9) });
  });

  test('is refused when the cylinder is not on the scale', () => {
    expect(() => contentsByScale(0, 8, 0.2)).toThrowError(expect.objectContaining({ code: 'bad-input' }));
    expect(() => contentsByScale(14, 0, 0.2)).toThrowError(expect.objectContaining({ code: 'out-of-range' }));
  });
});
