import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  advanceTemper,
  equivalentTemper,
  type HeatReading,
  hollomonJaffe,
  hollomonJaffeConstant,
  hoursForParameter,
} from '../../../hub/physics/steel/hollomon-jaffe.ts';
import { refusal } from './support.ts';

const HOUR = 3_600_000;

/** Readings from [hours, °C] pairs. */
function curve(...points: readonly (readonly [number, number])[]): HeatReading[] {
  return points.map(([hours, celsius]) => ({ atMs: hours * HOUR, celsius }));
}

describe('Hollomon-Jaffe parameter', () => {
  it.each([
    [200, 1, 20, 9463.0],
    [200, 2, 20, 9605.4],
    [205, 1, 20, 9563.0],
    [600, 1, 20, 17463.0],
    [650, 2, 20, 18740.9],
    [200, 1, 15, 7097.2],
    [425, 1, 19.5, 13613.9],
  ])('%i °C, %i h, C %f gives %f', (celsius, hours, constant, parameter) => {
    // Worked independently from T (C + log10 hours).
    expect(Math.abs(hollomonJaffe(celsius, hours, constant) - parameter)).toBeLessThan(0.06);
  });

  it.each([
    [20, 207.1],
    [16.5, 208.6],
    [15, 209.5],
  ])('with C %f, 2 h at 200 °C equal 1 h at %f °C', (constant, celsius) => {
    const parameter = hollomonJaffe(200, 2, constant);
    expect(Math.abs(parameter / constant - 273.15 - celsius)).toBeLessThan(0.06);
  });

  it('trades time for temperature: 1 h at 200 is 2.70 h at 190, 2 h at 200 is 0.760 h at 210', () => {
    expect(hoursForParameter(hollomonJaffe(200, 1, 20), 190, 20)).toBeCloseTo(2.7, 2);
    expect(hoursForParameter(hollomonJaffe(200, 2, 20), 210, 20)).toBeCloseTo(0.76, 3);
  });

  it('takes the constant for hours from carbon, the original for seconds being 17.7 - 5.8 C', () => {
    // log10 3600 = 3.556 is the difference between the two.
    expect(hollomonJaffeConstant(0.9)).toBeCloseTo(16.08, 9);
    expect(hollomonJaffeConstant(0.9) - (17.7 - 5.8 * 0.9)).toBeCloseTo(Math.log10(3600), 1);
  });

  it('refuses times, temperatures and constants that mean nothing', () => {
    expect(refusal(() => hollomonJaffe(200, 0, 20))).toBe('out-of-range');
    expect(refusal(() => hollomonJaffe(900, 1, 20))).toBe('out-of-range');
    expect(refusal(() => hollomonJaffe(200, 1, 2))).toBe('out-of-range');
    expect(refusal(() => hollomonJaffeConstant(2))).toBe('out-of-range');
  });
});

describe('a measured temper', () => {
  it('integrates a ramp of 100 K/h from 20 to 600 °C to P 16838.0, 0.1924 h at 600', () => {
    // Worked independently with 2 000, 20 000 and 200 000 steps.
    const result = equivalentTemper(curve([0, 20], [5.8, 600]), 20);
    expect(Math.abs(result.parameter - 16_838.0)).toBeLessThan(0.3);
    expect(result.equivalentHours).toBeCloseTo(0.1924, 3);
    // Gulvin et al. 1973, closed form, from memory: T / (2.3 k (20 - log k)) = 0.2109 h, 10 % more.
    const closed = 873.15 / (2.3 * 100 * (20 - 2));
    expect(closed).toBeCloseTo(0.2109, 4);
    expect(Math.abs(Math.log10(closed / result.equivalentHours))).toBeLessThan(0.05);
  });

  it('adds the ramps of a 2 h temper at 200 °C: 2.112 h', () => {
    // Worked independently: 20 to 200 in 1 h, hold 2 h, to 20 in 1 h, C 20.
    const result = equivalentTemper(curve([0, 20], [1, 200], [3, 200], [4, 20]), 20);
    expect(Math.abs(result.parameter - 9616.7)).toBeLessThan(0.1);
    expect(result.equivalentHours).toBeCloseTo(2.112, 3);
    expect(result.referenceCelsius).toBe(200);
  });

  it('adds the ramps of a 2 h temper at 230 °C: 2.105 h', () => {
    // Worked independently: 20 to 230 in 0.5 h, hold 2 h, to 60 in 1 h, C 16.5.
    const result = equivalentTemper(curve([0, 20], [0.5, 230], [2.5, 230], [3.5, 60]), 16.5);
    expect(Math.abs(result.parameter - 8464.6)).toBeLessThan(0.1);
    expect(result.equivalentHours).toBeCloseTo(2.105, 3);
  });

  it('is the plain parameter for a hold, and adds up two holds as one', () => {
    expect(equivalentTemper(curve([0, 200], [2, 200]), 20).parameter).toBeCloseTo(
      hollomonJaffe(200, 2, 20),
      9,
    );
    expect(equivalentTemper(curve([0, 200], [1, 200], [2, 200]), 20).equivalentHours).toBeCloseTo(2, 9);
  });

  it('gives the same answer reading by reading as in one go', () => {
    const readings = curve([0, 20], [0.7, 190], [1, 203], [2.2, 199], [3, 60]);
    let state: number | null = null;
    for (let index = 1; index < readings.length; index += 1) {
      state = advanceTemper(state, readings[index - 1] as HeatReading, readings[index] as HeatReading, 18);
    }
    expect(state).toBe(equivalentTemper(readings, 18).parameter);
  });

  it('hardly depends on how often the curve was read', () => {
    const readAt = (count: number) =>
      Array.from(
        { length: count + 1 },
        (_, i): HeatReading => ({ atMs: (i * HOUR) / count, celsius: 20 + (400 * i) / count }),
      );
    const coarse = equivalentTemper(readAt(4), 18).parameter;
    expect(Math.abs(equivalentTemper(readAt(1000), 18).parameter - coarse)).toBeLessThan(0.5);
  });

  it('tells the longest stretch in which nothing was read', () => {
    expect(equivalentTemper(curve([0, 200], [0.1, 200], [1.6, 200]), 20).longestGapMs).toBe(1.5 * HOUR);
  });

  it('refuses a single reading, time that stands or runs back, and austenite heats', () => {
    expect(refusal(() => equivalentTemper(curve([0, 200]), 20))).toBe('bad-input');
    expect(refusal(() => equivalentTemper(curve([1, 200], [1, 210]), 20))).toBe('bad-input');
    expect(refusal(() => equivalentTemper(curve([1, 200], [0, 210]), 20))).toBe('bad-input');
    expect(refusal(() => equivalentTemper(curve([0, 200], [1, Number.NaN]), 20))).toBe('out-of-range');
    expect(refusal(() => equivalentTemper(curve([0, 200], [1, 800]), 20))).toBe('out-of-range');
  });

  it('never loses temper: more readings never lower the parameter', () => {
    const step = fc.record({
      hours: fc.double({ min: 0.001, max: 3, noNaN: true }),
      celsius: fc.double({ min: -20, max: 700, noNaN: true }),
    });
    fc.assert(
      fc.property(fc.array(step, { minLength: 2, maxLength: 12 }), (steps) => {
        let hours = 0;
        let [state, previous] = [null as number | null, { atMs: 0, celsius: 20 }];
        for (const item of steps) {
          hours += item.hours;
          const next = { atMs: hours * HOUR, celsius: item.celsius };
          const after = advanceTemper(state, previous, next, 18);
          if (state !== null) expect(after).toBeGreaterThanOrEqual(state);
          [state, previous] = [after, next];
        }
      }),
      { numRuns: 100 },
    );
  });
});
