import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { cohbPercentAfter } from '../../../hub/physics/carbon-monoxide/carboxyhaemoglobin.ts';
import { cohbConstants } from '../../../hub/physics/carbon-monoxide/carboxyhaemoglobin-constants.ts';
import {
  cohbCourseConfig,
  cohbRange,
  startCohbCourse,
  stepCohbCourse,
} from '../../../hub/physics/carbon-monoxide/carboxyhaemoglobin-course.ts';
import { cohbReport } from '../../../hub/physics/carbon-monoxide/carboxyhaemoglobin-report.ts';
import { type CurveNews, USUAL_CURVE_RULES } from '../../../hub/physics/carbon-monoxide/curve.ts';
import { cohbSlope } from './cohb-slope.ts';
import { integrateOde } from './runge-kutta.ts';

const SECOND = 1000;
const MINUTE = 60_000;

/** A shift at the forge: a slow rise, a burst, a tail. ppm by minute. */
const shift = (minute: number): number =>
  5 + 60 * Math.exp(-(((minute - 120) / 60) ** 2)) + (minute >= 180 && minute < 190 ? 250 : 0);

function readings(minutes: number, everySeconds: number): CurveNews[] {
  const count = Math.round((minutes * 60) / everySeconds);
  return Array.from({ length: count + 1 }, (_, i) => ({
    atMs: i * everySeconds * SECOND,
    ppm: shift((i * everySeconds) / 60),
  }));
}

const heavyCourse = cohbCourseConfig(USUAL_CURVE_RULES);
const follow = (config: typeof heavyCourse, news: readonly CurveNews[], startPercent?: number) =>
  news.reduce((state, next) => stepCohbCourse(config, state, next), startCohbCourse(0, startPercent));

describe('along a measured curve', () => {
  test.each(['rest', 'light', 'heavy'] as const)(
    '%s: agrees with an independent integration of the same curve',
    (rate) => {
      const state = follow(cohbCourseConfig(USUAL_CURVE_RULES, rate), readings(240, 5));
      const slope = cohbSlope(cohbConstants(rate), shift);
      // The burst has edges: integrate from edge to edge.
      const whole = [0, 180, 190, 240].reduce(
        (percent, from, i, edges) =>
          i === 0 ? percent : integrateOde(slope, percent, [edges[i - 1] ?? 0, from - 1e-9], 1e-10),
        0.75,
      );
      expect(Math.abs(state.band.chosen - whole)).toBeLessThan(0.01);
    },
  );

  test('nears that integration as readings come closer together', () => {
    const slope = cohbSlope(cohbConstants('heavy'), shift);
    const whole = integrateOde(slope, 0.75, [0, 120], 1e-11);
    const off = (every: number) => Math.abs(follow(heavyCourse, readings(120, every)).band.heavy - whole);
    expect(off(60)).toBeLessThan(0.05);
    expect(off(1)).toBeLessThan(off(60) / 30);
  });

  test('warns by the top of the band: heavy work while it fills, light work while it empties', () => {
    const filling = follow(heavyCourse, readings(190, 10));
    expect(cohbRange(filling.band).high).toBe(filling.band.heavy);
    const clean = [191, 400].map((minute) => ({ atMs: minute * MINUTE, ppm: 0 }));
    const emptied = clean.reduce((state, next) => stepCohbCourse(heavyCourse, state, next), filling);
    expect(cohbRange(emptied.band).high).toBe(emptied.band.light);
    expect(emptied.highest.heavy).toBeGreaterThan(emptied.band.heavy);
  });

  test('is not moved by ticks', () => {
    const news = readings(60, 20);
    const ticked = news.flatMap((item): CurveNews[] => [{ atMs: item.atMs, ppm: null }, item]);
    expect(follow(heavyCourse, ticked).band.heavy).toBeCloseTo(follow(heavyCourse, news).band.heavy, 12);
  });
});

describe('silence', () => {
  test('is no clean air: the last level goes on, and the gap is counted', () => {
    const rules = { ...USUAL_CURVE_RULES, gap: { kind: 'unknown' } } as const;
    const silent = follow(cohbCourseConfig(rules), [
      { atMs: 0, ppm: 100 },
      { atMs: 60 * MINUTE, ppm: null },
    ]);
    const whole = cohbPercentAfter(cohbConstants('heavy'), { startPercent: 0.75, ppm: 100, minutes: 60 });
    expect(silent.band.heavy).toBeCloseTo(whole, 9);
    expect([silent.measuredMs, silent.gapMs]).toEqual([5 * MINUTE, 55 * MINUTE]);
  });

  test('may be taken as worse than the last level, never as better', () => {
    const end = (gap: 'hold' | 'highest') =>
      follow(cohbCourseConfig({ ...USUAL_CURVE_RULES, gap: { kind: gap } }), [
        { atMs: 0, ppm: 400 },
        { atMs: MINUTE, ppm: 30 },
        { atMs: 60 * MINUTE, ppm: null },
      ]).band.heavy;
    expect(end('highest')).toBeGreaterThan(end('hold'));
  });

  test('before the first reading changes nothing and is counted as a gap', () => {
    const state = follow(heavyCourse, [{ atMs: 10 * MINUTE, ppm: null }]);
    expect(state.band.heavy).toBe(0.75);
    expect(state.gapMs).toBe(10 * MINUTE);
  });
});

describe('the report', () => {
  test('of a constant level gives the table: heavy, 100 ppm, 4 h is 12.96 %, linear 14.36 %', () => {
    // SOURCE: Coburn-Forster-Kane equation, integrated independently (reference table).
    const report = cohbReport({ exposure: { kind: 'constant', ppm: 100, minutes: 240 } });
    expect(report.last.nonlinearPercent).toBeCloseTo(12.96, 2);
    expect(report.last.linearPercent).toBeCloseTo(14.36, 2);
    expect(report.equilibriumPercent).toBeCloseTo(13.5, 2);
    expect(report.points).toHaveLength(61);
    expect(report.gapMinutes).toBe(0);
  });

  test('carries the linear form past 100 % and the other never', () => {
    const report = cohbReport({ workRate: 'rest', exposure: { kind: 'constant', ppm: 1200, minutes: 480 } });
    expect(report.last.linearPercent).toBeGreaterThan(100);
    expect(report.last.nonlinearPercent).toBeCloseTo(65.12, 2);
  });

  test('of samples is the stepper run to the end', () => {
    const samples = readings(120, 30).map(({ atMs, ppm }) => ({ atMs, ppm: ppm ?? 0 }));
    const report = cohbReport({
      startPercent: 2,
      exposure: { kind: 'samples', samples, endMs: 130 * MINUTE },
    });
    const stepped = follow(heavyCourse, [...samples, { atMs: 130 * MINUTE, ppm: null }], 2);
    expect(report.last.nonlinearPercent).toBeCloseTo(stepped.band.heavy, 12);
    expect(report.gapMinutes).toBeCloseTo(5, 9);
    expect(report.last.minutes).toBe(130);
  });

  test('takes every constant, and a smoker’s start', () => {
    const asked = { kind: 'constant', ppm: 50, minutes: 60 } as const;
    const plain = cohbReport({ exposure: asked }).last.nonlinearPercent;
    const changes = [
      { haldaneRatio: 250 },
      { endogenousMlPerMin: 0.02 },
      { bloodMl: 4000 },
      { oxygenCapacityMlPerMl: 0.15 },
      { capillaryOxygenMmHg: 80 },
      { barometricMmHg: 800 },
      { waterVapourMmHg: 40 },
      { diffusionMlPerMinMmHg: 70 },
      { ventilationMlPerMin: 40_000 },
    ];
    for (const constants of changes) {
      expect(cohbReport({ constants, exposure: asked }).last.nonlinearPercent).toBeGreaterThan(plain);
    }
    expect(cohbReport({ startPercent: 5, exposure: asked }).last.nonlinearPercent).toBeGreaterThan(plain);
  });

  test('refuses an empty curve, time that runs back and a start of 100 %', () => {
    const badInput = expect.objectContaining({ code: 'bad-input' });
    const sampled = (samples: { atMs: number; ppm: number }[]) => ({ kind: 'samples', samples }) as const;
    expect(() => cohbReport({ exposure: sampled([]) })).toThrowError(badInput);
    const back = [
      { atMs: 5, ppm: 1 },
      { atMs: 4, ppm: 1 },
    ];
    expect(() => cohbReport({ exposure: sampled(back) })).toThrowError(badInput);
    expect(() => cohbReport({ startPercent: 100, exposure: sampled([{ atMs: 0, ppm: 1 }]) })).toThrowError(
      expect.objectContaining({ code: 'out-of-range' }),
    );
  });
});

describe('for any curve', () => {
  const parts = fc.array(
    fc.record({
      seconds: fc.integer({ min: 1, max: 1200 }),
      ppm: fc.double({ min: 0, max: 2000, noNaN: true }),
    }),
    { minLength: 1, maxLength: 30 },
  );
  const spelled = (list: readonly { seconds: number; ppm: number }[], extra: number): CurveNews[] => {
    let atMs = 0;
    return list.map(({ seconds, ppm }) => {
      atMs += seconds * SECOND;
      return { atMs, ppm: ppm + extra };
    });
  };

  test('the band holds the chosen rate, stays within 0 and 100 and never falls with more ppm', () => {
    const more = fc.double({ min: 0, max: 200, noNaN: true });
    fc.assert(
      fc.property(parts, more, (list, extra) => {
        const [one, two] = [follow(heavyCourse, spelled(list, 0)), follow(heavyCourse, spelled(list, extra))];
        const { low, high } = cohbRange(one.band);
        expect(low).toBeGreaterThanOrEqual(0);
        expect(high).toBeLessThan(100);
        expect(cohbRange(two.band).high).toBeGreaterThanOrEqual(high - 1e-9);
        expect(two.band.light).toBeGreaterThanOrEqual(one.band.light - 1e-9);
      }),
    );
  });
});
