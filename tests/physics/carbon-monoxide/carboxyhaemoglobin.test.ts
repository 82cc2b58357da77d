import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  cohbEquilibriumPercent,
  cohbMinutesBetween,
  cohbPercentAfter,
  linearCohbPercentAfter,
  linearEquilibriumPercent,
} from '../../../hub/physics/carbon-monoxide/carboxyhaemoglobin.ts';
import { cohbConstants } from '../../../hub/physics/carbon-monoxide/carboxyhaemoglobin-constants.ts';
import {
  COHB_HEAVY,
  COHB_LIGHT,
  COHB_MINUTES,
  COHB_REST,
  type CohbRow,
} from '../../reference/carboxyhaemoglobin-table.ts';
import { cohbSlope } from './cohb-slope.ts';
import { integrateOde } from './runge-kutta.ts';

const TABLES: readonly (readonly ['rest' | 'light' | 'heavy', readonly CohbRow[]])[] = [
  ['rest', COHB_REST],
  ['light', COHB_LIGHT],
  ['heavy', COHB_HEAVY],
];
const CASES = TABLES.flatMap(([rate, rows]) => rows.map((row) => [rate, ...row] as const));
/** The table has two decimals. */
const HALF_DIGIT = 0.00501;

const worst = (found: readonly number[], printed: readonly (number | null)[]): number =>
  Math.max(...printed.map((value, i) => (value === null ? 0 : Math.abs(value - (found[i] ?? Number.NaN)))));

describe('the table of carboxyhaemoglobin over time', () => {
  test.each(CASES)('%s at %d ppm: the nonlinear form gives every figure', (rate, ppm, nonlinear) => {
    const constants = cohbConstants(rate);
    const found = COHB_MINUTES.map((minutes) =>
      cohbPercentAfter(constants, { startPercent: 0.75, ppm, minutes }),
    );
    expect(worst([...found, cohbEquilibriumPercent(constants, ppm)], nonlinear)).toBeLessThan(HALF_DIGIT);
  });

  test.each(CASES)('%s at %d ppm: the linear form gives every figure in brackets', (rate, ppm, _, linear) => {
    const constants = cohbConstants(rate);
    const found = COHB_MINUTES.map((minutes) =>
      linearCohbPercentAfter(constants, { startPercent: 0.75, ppm, minutes }),
    );
    const all = [...found, linearEquilibriumPercent(constants, ppm)];
    expect(worst(all, linear)).toBeLessThan(HALF_DIGIT);
    linear.forEach((value, i) => {
      if (value === null) expect(all[i]).toBeGreaterThan(100);
    });
  });
});

describe('the closed form', () => {
  test.each([
    ['rest', 0.75, 35, 480],
    ['light', 5, 400, 60],
    ['heavy', 0.75, 1200, 240],
    ['heavy', 40, 0, 300],
    ['level-3', 20, 20, 600],
    ['rest', 60, 200, 1000],
  ] as const)(
    'agrees with an independent integration: %s from %d %% at %d ppm for %d min',
    (rate, startPercent, ppm, minutes) => {
      const constants = cohbConstants(rate);
      const whole = integrateOde(
        cohbSlope(constants, () => ppm),
        startPercent,
        [0, minutes],
      );
      expect(cohbPercentAfter(constants, { startPercent, ppm, minutes })).toBeCloseTo(whole, 7);
    },
  );

  test('agrees with it from any start, at any level, for any constants', () => {
    const anyone = fc.record({
      startPercent: fc.double({ min: 0, max: 80, noNaN: true }),
      ppm: fc.double({ min: 0, max: 20_000, noNaN: true }),
      minutes: fc.double({ min: 0.01, max: 600, noNaN: true }),
      haldaneRatio: fc.double({ min: 180, max: 260, noNaN: true }),
      bloodMl: fc.double({ min: 3000, max: 7000, noNaN: true }),
      diffusionMlPerMinMmHg: fc.double({ min: 15, max: 70, noNaN: true }),
      ventilationMlPerMin: fc.double({ min: 4000, max: 60_000, noNaN: true }),
    });
    fc.assert(
      fc.property(anyone, ({ startPercent, ppm, minutes, ...overrides }) => {
        const constants = cohbConstants('rest', overrides);
        const whole = integrateOde(
          cohbSlope(constants, () => ppm),
          startPercent,
          [0, minutes],
          1e-9,
        );
        const closed = cohbPercentAfter(constants, { startPercent, ppm, minutes });
        expect(Math.abs(closed - whole)).toBeLessThan(1e-5);
      }),
      { numRuns: 60 },
    );
  });

  test('goes one long step or many short ones to the same place', () => {
    const constants = cohbConstants('heavy');
    let percent = 0.75;
    for (let minute = 0; minute < 240; minute += 1) {
      percent = cohbPercentAfter(constants, { startPercent: percent, ppm: 150, minutes: 1 });
    }
    expect(percent).toBeCloseTo(
      cohbPercentAfter(constants, { startPercent: 0.75, ppm: 150, minutes: 240 }),
      10,
    );
  });
});

const exposure = fc.record({
  startPercent: fc.double({ min: 0, max: 99, noNaN: true }),
  ppm: fc.double({ min: 0, max: 100_000, noNaN: true }),
  minutes: fc.double({ min: 0, max: 100_000, noNaN: true }),
});
const anyRate = fc.constantFrom('rest', 'light', 'heavy', 'level-0', 'level-4' as const);

describe('at any level and time the estimate', () => {
  test('stays between its start and its equilibrium', () => {
    fc.assert(
      fc.property(anyRate, exposure, (rate, asked) => {
        const constants = cohbConstants(rate);
        const end = cohbEquilibriumPercent(constants, asked.ppm);
        const found = cohbPercentAfter(constants, asked);
        expect(found).toBeGreaterThanOrEqual(Math.min(asked.startPercent, end) - 1e-9);
        expect(found).toBeLessThanOrEqual(Math.max(asked.startPercent, end) + 1e-9);
      }),
    );
  });

  test('never falls with more ppm or a higher start, and nears its equilibrium with time', () => {
    const more = fc.double({ min: 0, max: 5000, noNaN: true });
    fc.assert(
      fc.property(anyRate, exposure, more, (rate, asked, extra) => {
        const constants = cohbConstants(rate);
        const found = cohbPercentAfter(constants, asked);
        expect(cohbPercentAfter(constants, { ...asked, ppm: asked.ppm + extra })).toBeGreaterThanOrEqual(
          found - 1e-9,
        );
        const higher = Math.min(99.9, asked.startPercent + extra / 100);
        expect(cohbPercentAfter(constants, { ...asked, startPercent: higher })).toBeGreaterThanOrEqual(
          found - 1e-9,
        );
        const end = cohbEquilibriumPercent(constants, asked.ppm);
        const later = cohbPercentAfter(constants, { ...asked, minutes: asked.minutes + extra });
        expect(Math.abs(later - end)).toBeLessThanOrEqual(Math.abs(found - end) + 1e-9);
      }),
    );
  });

  test('is never above the linear form, which reads high by about 1, 3, 5 and 11 % of the value', () => {
    // SOURCE: computed comparison of both forms at 3, 6, 11 and 21 % COHb (rest, 8 h: 25, 50, 100 and 200 ppm).
    const constants = cohbConstants('rest');
    const excess = [25, 50, 100, 200].map((ppm) => {
      const asked = { startPercent: 0.75, ppm, minutes: 480 };
      return linearCohbPercentAfter(constants, asked) / cohbPercentAfter(constants, asked) - 1;
    });
    [0.01, 0.03, 0.05, 0.11].forEach((share, i) => {
      expect(Math.abs((excess[i] ?? Number.NaN) - share)).toBeLessThan(0.007);
    });
  });
});

describe('time between two percentages', () => {
  test('undoes the closed form', () => {
    const constants = cohbConstants('light');
    const percent = cohbPercentAfter(constants, { startPercent: 0.75, ppm: 70, minutes: 97 });
    expect(cohbMinutesBetween(constants, 70, 0.75, percent)).toBeCloseTo(97, 8);
    expect(cohbMinutesBetween(constants, 70, 5, 5)).toBe(0);
  });

  test('is unknown where the level does not lead', () => {
    const constants = cohbConstants('rest');
    expect(cohbMinutesBetween(constants, 35, 1, 20)).toBeNull();
    expect(cohbMinutesBetween(constants, 0, 1, 2)).toBeNull();
  });
});

describe('refusals', () => {
  test('a start of 100 %, a level below zero, time that runs back and absurd constants', () => {
    const constants = cohbConstants('rest');
    const outOfRange = expect.objectContaining({ code: 'out-of-range' });
    const asked = { startPercent: 1, ppm: 10, minutes: 1 };
    expect(() => cohbPercentAfter(constants, { ...asked, startPercent: 100 })).toThrowError(outOfRange);
    expect(() => cohbPercentAfter(constants, { ...asked, ppm: -1 })).toThrowError(outOfRange);
    expect(() => linearCohbPercentAfter(constants, { ...asked, minutes: Number.NaN })).toThrowError(
      outOfRange,
    );
    expect(() => cohbConstants('rest', { haldaneRatio: 0 })).toThrowError(outOfRange);
  });
});
