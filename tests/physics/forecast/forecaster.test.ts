import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { observe, standing, startForecaster } from '../../../hub/physics/forecast/forecaster.ts';
import { CHAMBER_PROBE } from '../../../hub/physics/forecast/furnace-model.ts';
import { approach, constant, every, havingSeen, ramp, readingsOf, START } from './curves.ts';

describe('where the temperature stands', () => {
  it('is steady in a steady furnace, and better known than one reading tells', () => {
    const now = standing(havingSeen(readingsOf(constant(860), every(1, 600), 1)));
    expect(Math.abs(now.celsius - 860)).toBeLessThan(0.3);
    expect(now.deviationCelsius).toBeLessThan(CHAMBER_PROBE.noiseCelsius / 2);
    expect(Math.abs(now.perSecond)).toBeLessThan(0.005);
  });

  it('is ahead of a probe that lags behind a ramp', () => {
    const course = ramp(100, 0.25);
    const now = standing(havingSeen(readingsOf(course, every(1, 900), 2)));
    // The probe shows 2 °C too little: 8 s of 0.25 °C/s.
    expect(course.truth(900) - course.shown(900)).toBeCloseTo(2, 3);
    expect(Math.abs(now.celsius - course.truth(900))).toBeLessThan(0.4);
    expect(Math.abs(now.perSecond - 0.25)).toBeLessThan(0.01);
  });

  it('follows a first-order approach with its falling slope', () => {
    const course = approach(20, 860, 400);
    const now = standing(havingSeen(readingsOf(course, every(2, 600), 3)));
    const slope = (840 / 400) * Math.exp(-600 / 400);
    expect(Math.abs(now.celsius - course.truth(600))).toBeLessThan(1);
    expect(Math.abs(now.perSecond - slope) / slope).toBeLessThan(0.05);
  });

  it('is found again soon after the gas is turned off', () => {
    const seconds = every(1, 700);
    const course = {
      truth: (t: number) => (t < 600 ? 870 : 870 - 0.8 * (t - 600)),
      shown: (t: number) => (t < 600 ? 870 : 870 - 0.8 * (t - 600 - 8 * (1 - Math.exp(-(t - 600) / 8)))),
    };
    const now = standing(havingSeen(readingsOf(course, seconds, 4)));
    expect(Math.abs(now.celsius - course.truth(700))).toBeLessThan(2);
    expect(Math.abs(now.perSecond + 0.8)).toBeLessThan(0.1);
  });
});

describe('the readings', () => {
  it('may come at any intervals', () => {
    const course = ramp(500, 0.1);
    const uneven = every(1, 900).filter((t) => (t * 7919) % 13 < 4);
    const now = standing(havingSeen(readingsOf(course, uneven, 5)));
    expect(uneven.length).toBeLessThan(320);
    expect(Math.abs(now.celsius - course.truth(uneven.at(-1) ?? 0))).toBeLessThan(0.6);
  });

  it('change nothing when they are late or said twice', () => {
    const forecaster = havingSeen(readingsOf(constant(500), every(1, 60), 6));
    const late = { atMs: forecaster.atMs - 5000, celsius: 300 };
    expect(observe(forecaster, late)).toBe(forecaster);
    expect(observe(forecaster, { atMs: forecaster.atMs, celsius: 300 })).toBe(forecaster);
  });

  it('widen what is believed when they stay away, and start anew after a quarter of an hour', () => {
    const before = havingSeen(readingsOf(constant(500), every(1, 300), 7));
    const gap = observe(before, { atMs: before.atMs + 600_000, celsius: 500 });
    expect(standing(gap).perSecondDeviation).toBeGreaterThan(standing(before).perSecondDeviation);
    expect(gap.sinceMs).toBe(START);
    const anew = observe(before, { atMs: before.atMs + 900_001, celsius: 500 });
    expect(anew).toEqual(startForecaster(CHAMBER_PROBE, { atMs: before.atMs + 900_001, celsius: 500 }));
  });

  it('are refused when they are no numbers or below absolute zero', () => {
    const forecaster = havingSeen(readingsOf(constant(500), [0, 1], 8));
    const at = forecaster.atMs + 1000;
    const range = expect.objectContaining({ code: 'out-of-range' });
    expect(() => observe(forecaster, { atMs: at, celsius: Number.NaN })).toThrow(range);
    expect(() => observe(forecaster, { atMs: at, celsius: -300 })).toThrow(range);
    expect(() => observe(forecaster, { atMs: Number.NaN, celsius: 20 })).toThrow(
      expect.objectContaining({ code: 'bad-input' }),
    );
    expect(() => startForecaster({ ...CHAMBER_PROBE, lagSeconds: 0 }, { atMs: 0, celsius: 20 })).toThrow(
      range,
    );
  });
});

describe('the state', () => {
  it('is plain data that survives JSON, and small', () => {
    const forecaster = havingSeen(readingsOf(ramp(100, 0.2), every(1, 200), 9));
    const text = JSON.stringify(forecaster);
    expect(JSON.parse(text)).toEqual(forecaster);
    expect(text.length).toBeLessThan(2500);
  });

  it('is never changed, and the same readings give the same state', () => {
    const readings = readingsOf(ramp(100, 0.2), every(1, 100), 10);
    const first = havingSeen(readings);
    const kept = structuredClone(first);
    observe(first, { atMs: first.atMs + 1000, celsius: 125 });
    expect(first).toEqual(kept);
    expect(havingSeen(readings)).toEqual(first);
  });

  it('keeps its covariances positive and its weights a sum of one, whatever comes', () => {
    const step = fc.record({
      seconds: fc.double({ min: 0.05, max: 800, noNaN: true }),
      celsius: fc.double({ min: -200, max: 1400, noNaN: true }),
    });
    fc.assert(
      fc.property(fc.array(step, { minLength: 1, maxLength: 40 }), (steps) => {
        let forecaster = startForecaster(CHAMBER_PROBE, { atMs: START, celsius: 20 });
        for (const { seconds, celsius } of steps) {
          forecaster = observe(forecaster, { atMs: forecaster.atMs + seconds * 1000, celsius });
        }
        const total = forecaster.bank.weights.reduce((sum, weight) => sum + weight, 0);
        expect(total).toBeCloseTo(1, 9);
        for (const { covariance } of forecaster.bank.beliefs) expect(isPositive(covariance)).toBe(true);
      }),
      { numRuns: 60 },
    );
  });
});

/** Positive definite: Cholesky's square roots all exist, each entry scaled to its own deviation. */
function isPositive(matrix: readonly (readonly number[])[]): boolean {
  const deviation = matrix.map((row, i) => Math.sqrt(row[i] ?? Number.NaN));
  const lower: number[][] = [];
  for (const [i, row] of matrix.entries()) {
    const line: number[] = [];
    for (let j = 0; j <= i; j++) {
      const entry = (row[j] ?? 0) / ((deviation[i] ?? 1) * (deviation[j] ?? 1));
      const rest = line.reduce((sum, x, k) => sum - x * (j === i ? x : (lower[j]?.[k] ?? 0)), entry);
      line.push(j === i ? Math.sqrt(rest) : rest / (lower[j]?.[j] ?? Number.NaN));
    }
    lower.push(line);
  }
  return lower.every((line, i) => (line[i] ?? 0) > 0);
}
