import { describe, expect, it } from 'vitest';
import { type Belief, predicted, updated } from '../../../hub/physics/forecast/kalman.ts';
import { BUILDING, kalataGains, NILE } from '../../reference/kalman-examples.ts';

/** One number that may walk: the smallest state there is. */
const walk = (variance: number) => ({ transition: [[1]], noise: [[variance]] });
const one = (mean: number, variance: number): Belief => ({ mean: [mean], covariance: [[variance]] });

describe('a Kalman step', () => {
  it('follows the worked example of a building’s height', () => {
    let belief = one(BUILDING.first.mean, BUILDING.first.variance);
    BUILDING.measurements.forEach((height, i) => {
      belief = updated(belief, [1], height, BUILDING.measurementVariance).belief;
      expect(Math.abs((belief.mean[0] ?? 0) - (BUILDING.estimates[i] ?? 0))).toBeLessThan(0.0101);
      expect(Math.abs((belief.covariance[0]?.[0] ?? 0) - (BUILDING.variances[i] ?? 0))).toBeLessThan(0.0101);
    });
  });

  it('gives the published likelihood of the Nile’s hundred years', () => {
    // A diffuse start: the first year sets the level and has no likelihood of its own.
    let belief = one(NILE.flows[0], NILE.measurementVariance);
    let total = 0;
    for (const flow of NILE.flows.slice(1)) {
      const update = updated(
        predicted(belief, walk(NILE.levelVariance)),
        [1],
        flow,
        NILE.measurementVariance,
      );
      belief = update.belief;
      total += update.logLikelihood;
    }
    expect(total).toBeCloseTo(NILE.logLikelihood, 3);
    expect(NILE.flows).toHaveLength(100);
  });

  it('settles at the closed solution of Riccati’s equation for a walk', () => {
    const ratio = NILE.levelVariance / NILE.measurementVariance;
    const steady = (NILE.measurementVariance * (ratio + Math.sqrt(ratio * ratio + 4 * ratio))) / 2;
    let belief = one(0, 1e6);
    for (let i = 0; i < 60; i++) belief = updated(predicted(belief, walk(1469.1)), [1], 0, 15098.6).belief;
    const before = predicted(belief, walk(1469.1)).covariance[0]?.[0] ?? 0;
    expect(before / steady).toBeCloseTo(1, 10);
  });

  it.each([0.01, 0.3, 1, 5])('settles at Kalata’s gains for a tracking index of %f', (index) => {
    const seconds = 2;
    const push = [seconds ** 2 / 2, seconds];
    // index = motion noise · step² / measurement noise, with a measurement noise of 1.
    const noise = push.map((a) => push.map((b) => a * b * (index / seconds ** 2) ** 2));
    const motion = {
      transition: [
        [1, seconds],
        [0, 1],
      ],
      noise,
    };
    let belief: Belief = {
      mean: [0, 0],
      covariance: [
        [100, 0],
        [0, 100],
      ],
    };
    let gain: readonly number[] = [];
    for (let i = 0; i < 600; i++) {
      const update = updated(predicted(belief, motion), [1, 0], 0, 1);
      belief = update.belief;
      gain = update.gain;
    }
    const { alpha, beta } = kalataGains(index);
    expect(gain[0]).toBeCloseTo(alpha, 9);
    expect((gain[1] ?? 0) * seconds).toBeCloseTo(beta, 9);
  });

  it('stays positive where the short form does not: a sharp measurement of a vague state', () => {
    let belief: Belief = {
      mean: [0, 0],
      covariance: [
        [1e9, 0],
        [0, 1e9],
      ],
    };
    for (let i = 0; i < 50; i++) belief = updated(belief, [1, 1e-3 * i], 1, 1e-9).belief;
    const [[a = 0, b = 0] = [], [, d = 0] = []] = belief.covariance;
    expect(a).toBeGreaterThan(0);
    expect(d).toBeGreaterThan(0);
    expect(a * d - b * b).toBeGreaterThanOrEqual(0);
    expect(belief.covariance[0]?.[1]).toBe(belief.covariance[1]?.[0]);
  });

  it('leaves the belief it was given untouched', () => {
    const belief = Object.freeze(one(60, 225));
    updated(belief, [1], 48.54, 25);
    predicted(belief, walk(1));
    expect(belief).toEqual(one(60, 225));
  });
});
