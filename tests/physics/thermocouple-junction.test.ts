import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { emfMillivolts, emfSlopeMillivoltsPerCelsius } from '../../hub/physics/thermocouple.ts';
import { celsiusFromEmf } from '../../hub/physics/thermocouple-inverse.ts';
import {
  hotJunctionCelsius,
  straightLineReport,
  straightLineSlopes,
  undoStraightLine,
} from '../../hub/physics/thermocouple-junction.ts';
import { coldJunctionCases } from '../reference/its90-cold-junction.ts';
import { its90Points } from '../reference/its90-points.ts';
import { codeOf } from './thermocouple-support.ts';

const slopeOfK = 0.041276;

describe('cold-junction compensation', () => {
  it.each(coldJunctionCases)(
    'type $type, $millivolts mV, terminals at $coldJunctionCelsius °C is $hotCelsius °C',
    (given) => {
      const { type, coldJunctionCelsius } = given;
      expect(Math.abs(emfMillivolts(type, coldJunctionCelsius) - given.junctionMillivolts)).toBeLessThan(
        0.0000051,
      );
      expect(Math.abs(hotJunctionCelsius(given) - given.hotCelsius)).toBeLessThan(0.00051);
    },
  );

  it('does not add temperatures, which would be off by up to 25 °C', () => {
    for (const given of coldJunctionCases.filter(({ millivolts }) => millivolts > 1)) {
      const added = celsiusFromEmf(given.type, given.millivolts) + given.coldJunctionCelsius;
      expect(Math.abs(added - given.addedCelsius)).toBeLessThan(0.006);
      expect(Math.abs(hotJunctionCelsius(given) - added)).toBeGreaterThan(0.9);
    }
  });

  it('turns a degree of junction error into the ratio of the sensitivities at 1000 °C', () => {
    // Ratios at 1000 °C with terminals at 25 °C: K 1.04, N 0.69, S 0.52, R 0.45, B about 0.005 (computed from NIST SRD 60).
    const expected = { K: 1.04, N: 0.69, S: 0.52, R: 0.45, B: 0.005 } as const;
    for (const type of ['K', 'N', 'S', 'R', 'B'] as const) {
      const millivolts = emfMillivolts(type, 1000) - emfMillivolts(type, 25);
      const hot = (coldJunctionCelsius: number) =>
        hotJunctionCelsius({ type, millivolts, coldJunctionCelsius });
      const perDegree = (hot(25.5) - hot(24.5)) / 1;
      expect(Math.abs(perDegree - expected[type])).toBeLessThan(0.006);
      const ratio = emfSlopeMillivoltsPerCelsius(type, 25) / emfSlopeMillivoltsPerCelsius(type, 1000);
      expect(Math.abs(perDegree - ratio)).toBeLessThan(0.001);
    }
  });

  it('reads the terminals when there is no emf', () => {
    fc.assert(
      fc.property(fc.double({ min: -40, max: 85, noNaN: true }), (coldJunctionCelsius) => {
        const hot = hotJunctionCelsius({ type: 'K', millivolts: 0, coldJunctionCelsius });
        expect(Math.abs(hot - coldJunctionCelsius)).toBeLessThan(1e-6);
      }),
    );
  });

  it('refuses terminals or a sum outside the function', () => {
    expect(codeOf(() => hotJunctionCelsius({ type: 'K', millivolts: 54.8, coldJunctionCelsius: 25 }))).toBe(
      'out-of-range',
    );
    expect(codeOf(() => hotJunctionCelsius({ type: 'R', millivolts: 1, coldJunctionCelsius: -60 }))).toBe(
      'out-of-range',
    );
    expect(codeOf(() => hotJunctionCelsius({ type: 'B', millivolts: 0, coldJunctionCelsius: 25 }))).toBe(
      'no-solution',
    );
    expect(
      codeOf(() => hotJunctionCelsius({ type: 'K', millivolts: Number.NaN, coldJunctionCelsius: 25 })),
    ).toBe('out-of-range');
  });
});

describe('digitisers that assume a straight line', () => {
  // MAX31855K with terminals at 25 °C: true, reported (computed from NIST SRD 60 and 41.276 µV/°C, Maxim 19-5793).
  const cases = [
    [500, 500.92],
    [800, 806.93],
    [1000, 1000.76],
    [1250, 1227.72],
    [-100, -85.33],
  ] as const;
  const terminals = { type: 'K', coldJunctionCelsius: 25, slopeMillivoltsPerCelsius: slopeOfK } as const;

  it.each(cases)('at %d °C the chip reports %d °C', (hotCelsius, reported) => {
    expect(Math.abs(straightLineReport({ ...terminals, hotCelsius }) - reported)).toBeLessThan(0.0051);
  });

  it.each(cases)('at %d °C the correction of the 0.25 °C step is within 0.11 °C', (hotCelsius) => {
    const reportedCelsius = Math.round(straightLineReport({ ...terminals, hotCelsius }) / 0.25) * 0.25;
    expect(Math.abs(undoStraightLine({ ...terminals, reportedCelsius }) - hotCelsius)).toBeLessThan(0.11);
  });

  it('is undone exactly, apart from the step, for every type that has such a chip', () => {
    const types = ['E', 'J', 'K', 'N', 'R', 'S', 'T'] as const;
    const junctions = fc.double({ min: -20, max: 85, noNaN: true });
    const temperatures = fc.double({ min: 0, max: 390, noNaN: true });
    fc.assert(
      fc.property(
        fc.constantFrom(...types),
        junctions,
        temperatures,
        (type, coldJunctionCelsius, hotCelsius) => {
          const slopeMillivoltsPerCelsius = straightLineSlopes[type] ?? Number.NaN;
          const given = { type, coldJunctionCelsius, slopeMillivoltsPerCelsius };
          const reportedCelsius = straightLineReport({ ...given, hotCelsius });
          expect(Math.abs(undoStraightLine({ ...given, reportedCelsius }) - hotCelsius)).toBeLessThan(1e-6);
        },
      ),
    );
  });

  it('knows slopes that are the chords of the printed tables (NIST SRD 60)', () => {
    // E and J at 1000 °C are printed 76.373 and 57.953 mV, K 41.276, N 36.256, R 10.506, S 9.587; T at 400 °C 20.872.
    for (const type of ['E', 'J', 'K', 'N', 'R', 'S'] as const) {
      expect(straightLineSlopes[type]).toBeCloseTo(emfMillivolts(type, 1000) / 1000, 6);
    }
    expect(straightLineSlopes.T).toBeCloseTo(emfMillivolts('T', 400) / 400, 5);
    expect(its90Points).toContainEqual(['E', 1000, 76.373]);
    expect(straightLineSlopes.B).toBeUndefined();
  });

  it('refuses a slope that is not a positive number', () => {
    for (const slopeMillivoltsPerCelsius of [0, -0.041, Number.NaN, Infinity]) {
      const given = { ...terminals, slopeMillivoltsPerCelsius };
      expect(codeOf(() => undoStraightLine({ ...given, reportedCelsius: 500 }))).toBe('bad-input');
      expect(codeOf(() => straightLineReport({ ...given, hotCelsius: 500 }))).toBe('bad-input');
    }
  });
});
