import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  emfMillivolts,
  emfSlopeMillivoltsPerCelsius,
  functionRange,
  thermocoupleTypes,
} from '../../hub/physics/thermocouple.ts';
import { directPieces, type ThermocoupleType } from '../../hub/physics/thermocouple-direct-table.ts';
import { celsiusFromEmf, typeBLowestCelsius } from '../../hub/physics/thermocouple-inverse.ts';
import { type InversePiece, inversePieces } from '../reference/its90-inverse.ts';
import { its90Points } from '../reference/its90-points.ts';
import { codeOf } from './thermocouple-support.ts';

function lowestInvertible(type: ThermocoupleType): number {
  return type === 'B' ? typeBLowestCelsius + 1e-6 : functionRange(type).lowCelsius;
}

function polynomial(piece: InversePiece, millivolts: number): number {
  return piece.coefficients.reduceRight((sum, coefficient) => sum * millivolts + coefficient, 0);
}

describe('temperature from emf', () => {
  it.each(thermocoupleTypes)('type %s comes back within 0.001 °C over its full range', (type) => {
    const min = lowestInvertible(type);
    const max = functionRange(type).highCelsius;
    fc.assert(
      fc.property(fc.double({ min, max, noNaN: true }), (celsius) => {
        expect(Math.abs(celsiusFromEmf(type, emfMillivolts(type, celsius)) - celsius)).toBeLessThan(0.001);
      }),
      { numRuns: 1000 },
    );
  });

  it.each(thermocoupleTypes)(
    'type %s comes back within 0.001 °C at its ends and beside its joins',
    (type) => {
      const joins = directPieces[type]
        .map((piece) => piece.highCelsius)
        .filter((join) => join > 50 || type !== 'B');
      const beside = joins.flatMap((join) => [join - 1e-6, join, join + 1e-6]);
      const { highCelsius } = functionRange(type);
      for (const celsius of [lowestInvertible(type), ...beside.filter((each) => each <= highCelsius)]) {
        expect(Math.abs(celsiusFromEmf(type, emfMillivolts(type, celsius)) - celsius)).toBeLessThan(0.001);
      }
    },
  );

  it('gives back the temperature of every printed emf within what its last digit hides', () => {
    const usable = its90Points.filter(([type, celsius]) => type !== 'B' || celsius > 50);
    for (const [type, celsius, millivolts] of usable) {
      const hidden = 0.0005 / emfSlopeMillivoltsPerCelsius(type, celsius);
      expect(Math.abs(celsiusFromEmf(type, millivolts) - celsius), `${type} ${celsius}`).toBeLessThan(
        hidden * 1.05 + 1e-6,
      );
    }
    expect(usable.length).toBeGreaterThan(120);
  });

  it.each(thermocoupleTypes)('type %s rises with emf, without a jump at any join', (type) => {
    const low = emfMillivolts(type, lowestInvertible(type));
    const high = emfMillivolts(type, functionRange(type).highCelsius);
    let previous = celsiusFromEmf(type, low);
    const steps = 4000;
    for (let i = 1; i <= steps; i++) {
      const celsius = celsiusFromEmf(type, Math.min(low + ((high - low) * i) / steps, high));
      const chord = (high - low) / steps / emfSlopeMillivoltsPerCelsius(type, (celsius + previous) / 2);
      expect(celsius).toBeGreaterThan(previous);
      // One step of emf moves the temperature by emf/slope; a polynomial join adds up to 0.07 °C to it.
      if (chord < 1) expect(Math.abs(celsius - previous - chord)).toBeLessThan(0.01);
      previous = celsius;
    }
  });

  it.each(thermocoupleTypes)(
    'type %s agrees with the published inverse polynomial inside its band (NIST SRD 60)',
    (type) => {
      for (const piece of inversePieces[type]) {
        const [low, high] = piece.foundCelsius;
        for (let i = 0; i <= 1000; i++) {
          const celsius = piece.lowCelsius + ((piece.highCelsius - piece.lowCelsius) * i) / 1000;
          const millivolts = emfMillivolts(type, celsius);
          const difference = polynomial(piece, millivolts) - celsiusFromEmf(type, millivolts);
          expect(difference).toBeGreaterThan(low - 0.0005);
          expect(difference).toBeLessThan(high + 0.0005);
        }
      }
    },
  );
});

describe('refusals', () => {
  it('takes the last printed value of a table as the end, rounding included (NIST SRD 60)', () => {
    expect(celsiusFromEmf('E', 76.373)).toBeCloseTo(1000, 6);
    expect(celsiusFromEmf('N', 47.513)).toBeCloseTo(1300, 6);
    expect(celsiusFromEmf('T', -6.258)).toBeCloseTo(-270, 6);
    expect(codeOf(() => celsiusFromEmf('E', 76.374))).toBe('out-of-range');
  });

  it.each(thermocoupleTypes)('type %s answers at its upper end and refuses what lies beyond it', (type) => {
    const { highCelsius } = functionRange(type);
    const highest = emfMillivolts(type, highCelsius);
    expect(celsiusFromEmf(type, highest)).toBeCloseTo(highCelsius, 6);
    for (const outside of [highest + 0.00051, 1e3, Infinity, Number.NaN]) {
      expect(codeOf(() => celsiusFromEmf(type, outside))).toBe('out-of-range');
    }
  });

  it.each(thermocoupleTypes.filter((type) => type !== 'B'))(
    'type %s answers at its lower end and refuses below',
    (type) => {
      const { lowCelsius } = functionRange(type);
      const lowest = emfMillivolts(type, lowCelsius);
      expect(celsiusFromEmf(type, lowest)).toBeCloseTo(lowCelsius, 6);
      expect(codeOf(() => celsiusFromEmf(type, lowest - 0.00051))).toBe('out-of-range');
      expect(codeOf(() => celsiusFromEmf(type, -1e3))).toBe('out-of-range');
    },
  );

  it('type B is refused at and below 50 °C, where one emf means two temperatures', () => {
    const at50 = emfMillivolts('B', 50);
    for (const millivolts of [-0.0025, -0.001, 0, 0.001, at50]) {
      expect(codeOf(() => celsiusFromEmf('B', millivolts))).toBe('no-solution');
    }
    expect(() => celsiusFromEmf('B', 0)).toThrow('50 °C or less');
    expect(celsiusFromEmf('B', at50 + 1e-6)).toBeGreaterThan(50);
  });

  it('type B is out of range below its lowest emf', () => {
    expect(codeOf(() => celsiusFromEmf('B', -0.0031))).toBe('out-of-range');
    expect(codeOf(() => celsiusFromEmf('B', -1))).toBe('out-of-range');
  });
});
