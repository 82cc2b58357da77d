import { describe, expect, it } from 'vitest';
import { outlook, outlookAt, shareBelow } from '../../../hub/physics/forecast/outlook.ts';
import { approach, type Course, constant, every, havingSeen, ramp, readingsOf } from './curves.ts';

function held(course: Course, until: number, horizon: number, seed: number) {
  const forecaster = havingSeen(readingsOf(course, every(1, until), seed));
  const point = outlookAt(forecaster, forecaster.atMs + horizon * 1000);
  return { ...point, truth: course.truth(until + horizon), width: point.high - point.low };
}

describe('what is foretold', () => {
  it.each([30, 60, 120, 300, 900])('holds a constant temperature %i s on', (horizon) => {
    const found = held(constant(860), 900, horizon, 1);
    expect(found.low).toBeLessThan(found.truth);
    expect(found.high).toBeGreaterThan(found.truth);
    expect(Math.abs(found.celsius - 860)).toBeLessThan(0.5 + horizon / 300);
  });

  it.each([
    [30, 0.5],
    [60, 1],
    [120, 3],
    [300, 12],
  ])('holds a ramp %i s on, to %f °C', (horizon, within) => {
    const found = held(ramp(100, 0.2), 1200, horizon, 2);
    expect(found.low).toBeLessThan(found.truth);
    expect(found.high).toBeGreaterThan(found.truth);
    expect(Math.abs(found.celsius - found.truth)).toBeLessThan(within);
  });

  it.each([
    [30, 0.6],
    [60, 1.2],
    [120, 4],
    [300, 15],
  ])('holds a first-order approach %i s on, to %f °C', (horizon, within) => {
    const found = held(approach(20, 860, 500), 900, horizon, 3);
    expect(found.low).toBeLessThan(found.truth);
    expect(found.high).toBeGreaterThan(found.truth);
    expect(Math.abs(found.celsius - found.truth)).toBeLessThan(within);
  });

  it('is below the line that the present slope would draw, when the slope is falling', () => {
    const course = approach(20, 860, 300);
    const forecaster = havingSeen(readingsOf(course, every(1, 600), 4));
    const line = course.truth(600) + 120 * (840 / 300) * Math.exp(-2);
    expect(outlookAt(forecaster, forecaster.atMs + 120_000).celsius).toBeLessThan(line - 3);
  });

  it('of the probe lags behind what is foretold of the temperature', () => {
    const forecaster = havingSeen(readingsOf(ramp(100, 0.25), every(1, 900), 5));
    const at = forecaster.atMs + 60_000;
    const body = outlookAt(forecaster, at).celsius;
    const probe = outlookAt(forecaster, at, { quantity: 'probe' }).celsius;
    // 8 s of 0.25 °C/s.
    expect(Math.abs(body - probe - 2)).toBeLessThan(0.2);
  });
});

describe('the band', () => {
  const courses: readonly (readonly [string, Course])[] = [
    ['constant', constant(860)],
    ['ramp', ramp(100, 0.2)],
    ['approach', approach(20, 860, 500)],
  ];

  it.each(courses)('grows with the horizon (%s)', (_, course) => {
    const points = outlook(havingSeen(readingsOf(course, every(2, 600), 6)), 900);
    const widths = points.map(({ low, high }) => high - low);
    for (const [i, width] of widths.entries()) {
      if (i > 1) expect(width).toBeGreaterThan(widths[i - 1] ?? width);
    }
    expect(points.every(({ celsius, low, high }) => low < celsius && celsius < high)).toBe(true);
  });

  it('is wider when it has to hold more', () => {
    const forecaster = havingSeen(readingsOf(constant(860), every(1, 300), 7));
    const at = forecaster.atMs + 60_000;
    const [half, most] = [0.5, 0.95].map((share) => outlookAt(forecaster, at, { share }));
    expect((most?.high ?? 0) - (most?.low ?? 0)).toBeGreaterThan((half?.high ?? 0) - (half?.low ?? 0));
  });

  it('leaves a tenth below and a tenth above', () => {
    const forecaster = havingSeen(readingsOf(ramp(100, 0.2), every(1, 300), 8));
    const { low, high, mixture } = outlookAt(forecaster, forecaster.atMs + 200_000);
    expect(shareBelow(mixture, low)).toBeCloseTo(0.1, 3);
    expect(shareBelow(mixture, high)).toBeCloseTo(0.9, 3);
  });

  it('is never narrower than the flicker around the probe', () => {
    const forecaster = havingSeen(readingsOf(constant(860), every(1, 900), 9));
    const { low, high } = outlookAt(forecaster, forecaster.atMs);
    // 80 % of a normal distribution lie within 1.2816 deviations.
    expect(high - low).toBeGreaterThan(2 * 1.2815 * forecaster.traits.flickerCelsius);
  });
});

describe('an outlook', () => {
  const forecaster = havingSeen(readingsOf(ramp(100, 0.2), every(1, 300), 10));

  it('is the same asked for one instant as on the grid', () => {
    for (const point of outlook(forecaster, 300)) {
      const { celsius, low, high } = outlookAt(forecaster, point.atMs);
      expect(celsius).toBeCloseTo(point.celsius, 9);
      expect(low).toBeCloseTo(point.low, 9);
      expect(high).toBeCloseTo(point.high, 9);
    }
  });

  it('reaches from now to a quarter of an hour, in steps that grow', () => {
    const points = outlook(forecaster, 900);
    expect(points[0]?.atMs).toBe(forecaster.atMs);
    expect(points.at(-1)?.atMs).toBe(forecaster.atMs + 900_000);
    expect(points).toHaveLength(1 + 12 + 24 + 20);
  });

  it('is refused for the past and for more than a quarter of an hour', () => {
    const range = expect.objectContaining({ code: 'out-of-range' });
    expect(() => outlookAt(forecaster, forecaster.atMs - 1)).toThrow(range);
    expect(() => outlookAt(forecaster, forecaster.atMs + 900_001)).toThrow(range);
    expect(() => outlook(forecaster, 901)).toThrow(range);
    expect(() => outlookAt(forecaster, forecaster.atMs, { share: 1 })).toThrow(range);
  });
});
