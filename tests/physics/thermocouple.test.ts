import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  emfMillivolts,
  emfSlopeMillivoltsPerCelsius,
  functionRange,
  thermocoupleTypes,
} from '../../hub/physics/thermocouple.ts';
import { directPieces, type ThermocoupleType } from '../../hub/physics/thermocouple-direct-table.ts';
import { its90FixedPoints } from '../reference/its90-fixed-points.ts';
import { its90Points } from '../reference/its90-points.ts';
import { its90Sensitivities } from '../reference/its90-sensitivity.ts';
import { codeOf } from './thermocouple-support.ts';

/** 0.0005 mV is half of the last printed digit; the rest is binary rounding of a printed number. */
const halfPrintedDigit = 0.0005 + 1e-12;

/** A type with a temperature inside its function, from `lowest` up for type B. */
const typeAndCelsius = (lowestOfB = 0) =>
  fc.constantFrom(...thermocoupleTypes).chain((type) => {
    const { lowCelsius, highCelsius } = functionRange(type);
    const min = type === 'B' ? lowestOfB : lowCelsius;
    return fc.record({
      type: fc.constant(type),
      celsius: fc.double({ min, max: highCelsius, noNaN: true }),
    });
  });

describe('reference functions', () => {
  it.each(thermocoupleTypes)(
    'type %s gives every printed table value to half its last digit (NIST SRD 60)',
    (type) => {
      const points = its90Points.filter(([pointType]) => pointType === type);
      expect(points.length).toBeGreaterThanOrEqual(14);
      for (const [, celsius, millivolts] of points) {
        const error = Math.abs(emfMillivolts(type, celsius) - millivolts);
        expect(error, `${type} at ${celsius} °C`).toBeLessThanOrEqual(halfPrintedDigit);
      }
    },
  );

  it.each(its90FixedPoints)('gives the emf at the $name point', ({ celsius, millivolts }) => {
    for (const type of ['K', 'N', 'J', 'R', 'S', 'B'] as const) {
      expect(Math.abs(emfMillivolts(type, celsius) - millivolts[type])).toBeLessThanOrEqual(halfPrintedDigit);
    }
  });

  it('runs over the full published ranges (NIST SRD 60)', () => {
    const ranges = thermocoupleTypes.map((type) => {
      const { lowCelsius, highCelsius } = functionRange(type);
      return `${type} ${lowCelsius}..${highCelsius}`;
    });
    expect(ranges).toEqual([
      'B 0..1820',
      'E -270..1000',
      'J -210..1200',
      'K -270..1372',
      'N -270..1300',
      'R -50..1768.1',
      'S -50..1768.1',
      'T -270..400',
    ]);
  });

  it.each(thermocoupleTypes)('type %s answers at both ends and refuses beyond them', (type) => {
    const { lowCelsius, highCelsius } = functionRange(type);
    expect(Number.isFinite(emfMillivolts(type, lowCelsius))).toBe(true);
    expect(Number.isFinite(emfMillivolts(type, highCelsius))).toBe(true);
    for (const outside of [lowCelsius - 1e-9, highCelsius + 1e-9, -1e6, 1e6, Number.NaN, Infinity]) {
      expect(codeOf(() => emfMillivolts(type, outside))).toBe('out-of-range');
      expect(codeOf(() => emfSlopeMillivoltsPerCelsius(type, outside))).toBe('out-of-range');
    }
  });

  it('says what was refused and which range holds', () => {
    expect(() => emfMillivolts('K', 1400)).toThrow('type K temperature is 1400 °C');
    expect(() => emfMillivolts('K', 1400)).toThrow('-270 to 1372 °C');
  });

  it.each(thermocoupleTypes)('type %s has no jump above 1e-7 mV where its sub-ranges meet', (type) => {
    const joins = directPieces[type].slice(0, -1).map((piece) => piece.highCelsius);
    expect(joins.length).toBeGreaterThan(0);
    for (const join of joins) {
      const above = emfMillivolts(type, join + 1e-9);
      const expectedRise = 1e-9 * emfSlopeMillivoltsPerCelsius(type, join);
      expect(Math.abs(above - emfMillivolts(type, join) - expectedRise)).toBeLessThan(1e-7);
    }
  });
});

describe('sensitivity', () => {
  it.each(its90Sensitivities)('type %s at %d °C is %d µV/°C', (type, celsius, microvolts) => {
    const slope = emfSlopeMillivoltsPerCelsius(type, celsius) * 1000;
    expect(Math.abs(slope - microvolts)).toBeLessThanOrEqual(0.005 + 1e-9);
  });

  it('agrees with the sensitivities of a worked calibration budget (EA-4/02 example S5)', () => {
    // EA-4/02 S5 states C_X = 0.026 and C_X0 = 0.039 °C/µV for type N at 1000 and 0 °C,
    // and C_S0 = 0.189 °C/µV for type R at 0 °C.
    const inverse = (type: ThermocoupleType, celsius: number) =>
      1 / (emfSlopeMillivoltsPerCelsius(type, celsius) * 1000);
    expect(inverse('N', 1000)).toBeCloseTo(0.026, 3);
    expect(Math.abs(inverse('N', 0) - 0.039)).toBeLessThan(0.001);
    expect(inverse('R', 0)).toBeCloseTo(0.189, 3);
  });

  it('is the derivative of the emf everywhere', () => {
    fc.assert(
      fc.property(typeAndCelsius(), ({ type, celsius }) => {
        const { lowCelsius, highCelsius } = functionRange(type);
        const joins = directPieces[type].map((piece) => piece.highCelsius);
        const half = 0.01;
        fc.pre(celsius - half > lowCelsius && celsius + half < highCelsius);
        fc.pre(joins.every((join) => Math.abs(join - celsius) > half));
        const chord =
          (emfMillivolts(type, celsius + half) - emfMillivolts(type, celsius - half)) / (2 * half);
        expect(Math.abs(chord - emfSlopeMillivoltsPerCelsius(type, celsius))).toBeLessThan(1e-7);
      }),
    );
  });

  it('is positive, so the emf rises with temperature, for every type but cool type B', () => {
    fc.assert(
      fc.property(typeAndCelsius(50), ({ type, celsius }) => {
        expect(emfSlopeMillivoltsPerCelsius(type, celsius)).toBeGreaterThan(0);
        const higher = Math.min(celsius + 0.001, functionRange(type).highCelsius);
        fc.pre(higher - celsius > 1e-4);
        expect(emfMillivolts(type, higher)).toBeGreaterThan(emfMillivolts(type, celsius));
      }),
      { numRuns: 500 },
    );
  });

  it('falls for type B up to 21 °C and is back at zero emf near 42 °C', () => {
    expect(emfSlopeMillivoltsPerCelsius('B', 21)).toBeLessThan(0);
    expect(emfSlopeMillivoltsPerCelsius('B', 21.1)).toBeGreaterThan(0);
    expect(emfMillivolts('B', 21.02)).toBeCloseTo(-0.002585, 6);
    expect(emfMillivolts('B', 42.13)).toBeLessThan(0);
    expect(emfMillivolts('B', 42.14)).toBeGreaterThan(0);
  });
});
