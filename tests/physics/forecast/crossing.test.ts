import { describe, expect, it } from 'vitest';
import { crossing, crossingCourse } from '../../../hub/physics/forecast/crossing.ts';
import { type OutlookPoint, outlook } from '../../../hub/physics/forecast/outlook.ts';
import { seededNoise } from '../../reference/seeded-noise.ts';
import { approach, constant, every, havingSeen, ramp, readingsOf } from './curves.ts';

const rising = (limitCelsius: number, withinSeconds: number) =>
  ({ limitCelsius, direction: 'rising', withinSeconds }) as const;

describe('a limit ahead', () => {
  // 0.2 °C/s, at 860 now: 875 in 75 s.
  const forecaster = havingSeen(readingsOf(ramp(860 - 0.2 * 900, 0.2), every(1, 900), 1));

  it('is crossed when the ramp gets there', () => {
    const found = crossing(forecaster, rising(875, 180));
    const seconds = ((found.likelyMs ?? 0) - forecaster.atMs) / 1000;
    expect(Math.abs(seconds - 75)).toBeLessThan(6);
    expect(found.earliestMs ?? 0).toBeLessThan(found.likelyMs ?? 0);
    expect(found.latestMs ?? 0).toBeGreaterThan(found.likelyMs ?? 0);
    expect(found.probability).toBeGreaterThan(0.9);
  });

  it('holds the true instant between earliest and latest', () => {
    const { earliestMs, latestMs } = crossing(forecaster, rising(875, 300));
    expect((earliestMs ?? 0) - forecaster.atMs).toBeLessThan(75_000);
    expect((latestMs ?? 0) - forecaster.atMs).toBeGreaterThan(75_000);
  });

  it('is not crossed within a time that is too short', () => {
    const found = crossing(forecaster, rising(875, 45));
    expect(found.probability).toBeLessThan(0.05);
    expect(found.likelyMs).toBeNull();
  });

  it('is not crossed by a furnace that goes the other way, nor by one that stays', () => {
    expect(crossing(forecaster, { ...rising(855, 300), direction: 'falling' }).probability).toBeLessThan(
      0.05,
    );
    const steady = havingSeen(readingsOf(constant(860), every(1, 900), 2));
    expect(crossing(steady, rising(875, 300)).probability).toBeLessThan(0.1);
    expect(crossing(steady, { ...rising(845, 300), direction: 'falling' }).probability).toBeLessThan(0.1);
  });

  it('is not crossed by an approach that ends below it, though its slope now would cross', () => {
    const course = approach(20, 860, 300);
    const now = havingSeen(readingsOf(course, every(1, 900), 3));
    const slope = (840 / 300) * Math.exp(-3);
    expect(course.truth(900) + 300 * slope).toBeGreaterThan(850);
    expect(crossing(now, rising(885, 300)).probability).toBeLessThan(0.5);
  });

  it('is crossed now when it is passed already', () => {
    const found = crossing(forecaster, rising(850, 60));
    expect(found.probability).toBeGreaterThan(0.99);
    expect(found).toMatchObject({ earliestMs: forecaster.atMs, likelyMs: forecaster.atMs });
  });

  it('becomes more probable with time, never less', () => {
    const course = crossingCourse(outlook(forecaster, 300), 875, 'rising');
    course.forEach(({ probability }, i) => {
      expect(probability).toBeGreaterThanOrEqual(course[i - 1]?.probability ?? 0);
    });
  });

  it('is refused when it is no temperature', () => {
    expect(() => crossing(forecaster, rising(Number.NaN, 60))).toThrow(
      expect.objectContaining({ code: 'out-of-range' }),
    );
  });
});

describe('the probability of having crossed', () => {
  /** A walk of pure chance of 1 °C² a second from 0. */
  const walk: readonly OutlookPoint[] = every(5, 300).map((t) => ({
    atMs: t * 1000,
    celsius: 0,
    low: 0,
    high: 0,
    mixture: { weights: [1], means: [0], deviations: [Math.sqrt(Math.max(t, 1e-9))] },
  }));

  it('is at worst half of the true one: the reflection principle', () => {
    // P(max over t of a Wiener process > a) = 2 P(W(t) > a), exactly (W. Feller, vol. 2).
    const told = crossingCourse(walk, 20, 'rising').at(-1)?.probability ?? 0;
    const noise = seededNoise(17);
    let crossed = 0;
    for (let path = 0; path < 4000; path++) {
      let x = 0;
      for (let t = 0; t < 300 && x <= 20; t++) x += noise();
      if (x > 20) crossed++;
    }
    const share = crossed / 4000;
    expect(share / told).toBeGreaterThan(1.7);
    expect(share / told).toBeLessThan(2.1);
  });
});
