import { describe, expect, it } from 'vitest';
import { equivalentTemper, hollomonJaffe } from '../../hub/physics/steel/hollomon-jaffe.ts';
import { celsiusForOneHour, learn, parameterOfHolds } from '../../hub/review/tempering.ts';

const C = 15;

describe('the parameter of holds', () => {
  it('is that of Hollomon and Jaffe for one hold', () => {
    // By hand: (200 + 273.15) K · (15 + log10 2 h) = 7239.7 K.
    expect(parameterOfHolds([{ celsius: 200, seconds: 7200 }], C)).toBeCloseTo(7239.68, 2);
  });

  it('of two alike is that of one twice as long', () => {
    const hold = { celsius: 220, seconds: 3600 };
    expect(parameterOfHolds([hold, hold], C)).toBeCloseTo(hollomonJaffe(220, 2, C), 9);
  });

  it('of a hot and a cool one agrees with the integral over both', () => {
    const holds = [
      { celsius: 260, seconds: 3600 },
      { celsius: 200, seconds: 3600 },
    ];
    const hour = 3_600_000;
    const readings = [
      { atMs: 0, celsius: 260 },
      { atMs: hour, celsius: 260 },
      { atMs: hour + 1, celsius: 200 },
      { atMs: 2 * hour + 1, celsius: 200 },
    ];
    expect(parameterOfHolds(holds, C)).toBeCloseTo(equivalentTemper(readings, C).parameter, 3);
  });

  it('is not known without a hold', () => {
    expect(parameterOfHolds([], C)).toBeNull();
    expect(parameterOfHolds([{ celsius: 200, seconds: 0 }], C)).toBeNull();
  });

  it('goes back to the temperature that gives it in one hour', () => {
    expect(celsiusForOneHour(hollomonJaffe(230, 1, C), C)).toBeCloseTo(230, 9);
  });
});

describe('what a shop has learned of its steel', () => {
  const point = (parameter: number, hardnessHrc: number) => ({
    ...{ pieceId: 'p', mark: 'A-1', firingId: 'f', at: 0, tempers: 1 },
    parameter,
    hardnessHrc,
  });
  const line = [13_000, 14_000, 15_000, 16_000, 17_000].map((p) => point(p, 62 - (p - 13_000) / 250));

  it('is a line through its pieces over what was measured, with a band', () => {
    const scattered = line.map((one, i) => ({ ...one, hardnessHrc: one.hardnessHrc + (i % 2 ? 0.4 : -0.4) }));
    const { curve, notFitted } = learn(scattered, C);
    expect(notFitted).toBeNull();
    expect(curve[0]?.parameter).toBe(13_000);
    expect(curve.at(-1)?.parameter).toBe(17_000);
    const middle = curve[20];
    expect(middle?.hardnessHrc).toBeCloseTo(54 - 0.08, 2);
    expect((middle?.high ?? 0) - (middle?.low ?? 0)).toBeGreaterThan(0.8);
  });

  it('is nothing yet from three pieces, nor from pieces tempered alike, and says which', () => {
    expect(learn(line.slice(0, 3), C)).toEqual({ curve: [], hold: [], notFitted: 'few-pieces' });
    const alike = [60, 61, 60, 59, 60].map((hrc) => point(14_000, hrc));
    expect(learn(alike, C).notFitted).toBe('tempered-alike');
  });
});
