import { describe, expect, it } from 'vitest';
import {
  curveTrend,
  lineTrend,
  riseWithin,
  type Sample,
  secondsToRise,
  slide,
} from '../../hub/judging/slope.ts';
import { REGRESSION } from '../reference/strd.ts';

/** A set of NIST StRD as samples, one second a unit of x, with its certified values. */
function certified(name: string): {
  samples: Sample[];
  coefficients: readonly number[];
  errors: readonly number[];
} {
  const set = REGRESSION.find((candidate) => candidate.name === name);
  if (!set) throw new Error(`there is no set ${name}`);
  const samples = set.rows.map(([x = Number.NaN], i) => ({ at: x * 1000, value: set.y[i] ?? Number.NaN }));
  return { samples, coefficients: set.certified.coefficients, errors: set.certified.standardErrors };
}

/** A first-order approach to `end` with time constant `tau` seconds, sampled once a second. */
const approach = (start: number, end: number, tau: number, from: number, seconds: number): Sample[] =>
  Array.from({ length: seconds + 1 }, (_, k) => ({
    at: (from + k) * 1000,
    value: end - (end - start) * Math.exp(-(from + k) / tau),
  }));

describe('least squares', () => {
  it('fits a line as NIST certifies it (StRD Norris)', () => {
    const { samples, coefficients, errors } = certified('Norris');
    const [intercept = Number.NaN, slope = Number.NaN] = coefficients;
    const trend = lineTrend(samples);
    expect(trend?.perSecond).toBeCloseTo(slope, 11);
    expect(trend?.error).toBeCloseTo(errors[1] ?? Number.NaN, 11);
    expect(trend?.value).toBeCloseTo(intercept + slope * 0.5, 10);
  });

  it('fits a parabola as NIST certifies it (StRD Pontius)', () => {
    const { samples, coefficients } = certified('Pontius');
    const [, linear = Number.NaN, quadratic = Number.NaN] = coefficients;
    const trend = curveTrend(samples);
    const slopeAtEnd = linear + 2 * quadratic * 3_000_000;
    expect((trend?.perSecond ?? 0) / slopeAtEnd).toBeCloseTo(1, 9);
    expect((trend?.perSecondSquared ?? 0) / (2 * quadratic)).toBeCloseTo(1, 7);
  });

  it('sees no trend in fewer samples than it needs, nor without spread in time', () => {
    const same = { at: 5000, value: 1 };
    expect(lineTrend([same, { at: 6000, value: 2 }])).toBeNull();
    expect(lineTrend([same, same, same])).toBeNull();
    expect(curveTrend([same, same, same, same, same])).toBeNull();
  });

  it('stays exact far from the epoch', () => {
    const late = 1_700_000_000_000;
    const samples = Array.from({ length: 61 }, (_, k) => ({ at: late + k * 1000, value: 800 + k * 0.25 }));
    expect(lineTrend(samples)?.perSecond).toBeCloseTo(0.25, 12);
    expect(curveTrend(samples)?.perSecond).toBeCloseTo(0.25, 9);
  });
});

describe('an approach that slows down', () => {
  it('is taken to where it is going, not along its tangent', () => {
    const trend = curveTrend(approach(20, 800, 200, 600, 60));
    if (trend === null) throw new Error('no trend');
    const left = 800 - trend.value;
    // e^-(60/200) of what is left is still left after a minute. A parabola is not an exponential: 5 %.
    expect(riseWithin(trend, 60) / (left * (1 - Math.exp(-60 / 200)))).toBeCloseTo(1, 1);
    expect(trend.perSecond * 60).toBeGreaterThan(riseWithin(trend, 60));
  });

  it('never reaches what lies beyond its end', () => {
    const trend = { perSecond: 1, perSecondSquared: -0.02, error: 0, value: 700 };
    expect(secondsToRise(trend, 50)).toBeNull();
    expect(secondsToRise(trend, 25)).toBeCloseTo(50 * Math.LN2, 9);
  });

  it('goes on as it is when it does not slow down', () => {
    const trend = { perSecond: 0.5, perSecondSquared: 0.01, error: 0, value: 700 };
    expect(riseWithin(trend, 60)).toBe(30);
    expect(secondsToRise(trend, 30)).toBe(60);
    expect(secondsToRise({ ...trend, perSecond: -0.5 }, 30)).toBeNull();
  });
});

describe('a sliding window', () => {
  const sample = (at: number): Sample => ({ at, value: at });

  it('keeps its span and stays bounded however fast the samples come', () => {
    let window: readonly Sample[] = [];
    for (let at = 0; at < 200_000; at += 100) window = slide(window, sample(at), 60_000, 500);
    expect(window).toHaveLength(121);
    expect((window.at(-1)?.at ?? 0) - (window[0]?.at ?? 0)).toBe(60_000);
  });

  it('replaces the last sample at the same instant, since several channels may speak at once', () => {
    const window = slide([sample(0), sample(1000)], { at: 1000, value: 7 }, 60_000, 500);
    expect(window.map((s) => s.value)).toEqual([0, 7]);
  });
});
