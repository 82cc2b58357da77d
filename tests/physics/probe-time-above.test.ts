import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type CurvePoint, timeAbove } from '../../hub/physics/probe-time-above.ts';
import { codeOf } from './thermocouple-support.ts';

const minute = 60_000;
const hour = 60 * minute;

function curve(...points: readonly (readonly [hours: number, celsius: number])[]): CurvePoint[] {
  return points.map(([hours, celsius]) => ({ atMs: hours * hour, celsius }));
}

describe('time above a limit', () => {
  it('counts a triangle between its crossings', () => {
    // 0 to 1000 and back in 2 h crosses 750 at 0.75 h and 1.25 h.
    const { hoursAbove, peakCelsius } = timeAbove(curve([0, 0], [1, 1000], [2, 0]), 750, 2 * hour);
    expect(hoursAbove).toBeCloseTo(0.5, 12);
    expect(peakCelsius).toBe(1000);
  });

  it('counts a hold above whole, a hold at the limit and below not at all', () => {
    expect(timeAbove(curve([0, 800], [3, 800]), 750, 4 * hour).hoursAbove).toBeCloseTo(3, 12);
    expect(timeAbove(curve([0, 750], [3, 750]), 750, 4 * hour).hoursAbove).toBe(0);
    expect(timeAbove(curve([0, 700], [3, 700]), 750, 4 * hour).hoursAbove).toBe(0);
  });

  it('calls a gap unknown instead of cool', () => {
    const found = timeAbove(curve([0, 900], [0.1, 900], [2.1, 900], [2.2, 900]), 750, 10 * minute);
    expect(found.hoursAbove).toBeCloseTo(0.2, 12);
    expect(found.hoursUnknown).toBeCloseTo(2, 12);
  });

  it('calls the stretches beside an unusable value unknown', () => {
    const found = timeAbove(curve([0, 900], [0.1, Number.NaN], [0.2, 900], [0.3, 900]), 750, hour);
    expect(found.hoursAbove).toBeCloseTo(0.1, 12);
    expect(found.hoursUnknown).toBeCloseTo(0.2, 12);
    expect(found.peakCelsius).toBe(900);
  });

  it('has nothing to say without readings', () => {
    expect(timeAbove([], 750, hour)).toEqual({ hoursAbove: 0, hoursUnknown: 0, peakCelsius: undefined });
    expect(timeAbove(curve([0, 900]), 750, hour)).toEqual({
      hoursAbove: 0,
      hoursUnknown: 0,
      peakCelsius: 900,
    });
  });

  it('refuses a curve that runs backwards or stands still', () => {
    expect(codeOf(() => timeAbove(curve([1, 900], [0.5, 900]), 750, hour))).toBe('bad-input');
    expect(codeOf(() => timeAbove(curve([1, 900], [1, 901]), 750, hour))).toBe('bad-input');
    expect(codeOf(() => timeAbove(curve([0, 900], [1, 900]), Number.NaN, hour))).toBe('bad-input');
  });

  it('does not depend on how finely a straight stretch is sampled', () => {
    const ends = fc.tuple(fc.integer({ min: 0, max: 1300 }), fc.integer({ min: 0, max: 1300 }));
    fc.assert(
      fc.property(
        ends,
        fc.integer({ min: 1, max: 1299 }),
        fc.integer({ min: 2, max: 50 }),
        ([from, to], limit, parts) => {
          const coarse = timeAbove(curve([0, from], [1, to]), limit + 0.5, hour);
          const points = Array.from(
            { length: parts + 1 },
            (_, i) => [i / parts, from + ((to - from) * i) / parts] as const,
          );
          const fine = timeAbove(curve(...points), limit + 0.5, hour);
          expect(fine.hoursAbove).toBeCloseTo(coarse.hoursAbove, 6);
          expect(fine.hoursUnknown).toBe(0);
        },
      ),
    );
  });

  it('adds up with the time below', () => {
    const values = fc.array(fc.integer({ min: 0, max: 1300 }), { minLength: 2, maxLength: 40 });
    fc.assert(
      fc.property(values, (celsius) => {
        const up = celsius.map((value, i) => ({ atMs: i * minute, celsius: value }));
        const down = up.map(({ atMs, celsius: value }) => ({ atMs, celsius: -value }));
        const total = timeAbove(up, 600.5, hour).hoursAbove + timeAbove(down, -600.5, hour).hoursAbove;
        expect(total).toBeCloseTo(((celsius.length - 1) * minute) / hour, 9);
      }),
    );
  });
});
