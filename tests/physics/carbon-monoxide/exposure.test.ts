import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { CurveNews } from '../../../hub/physics/carbon-monoxide/curve.ts';
import { nextShift, stepExposure } from '../../../hub/physics/carbon-monoxide/exposure.ts';
import { readExposure } from '../../../hub/physics/carbon-monoxide/exposure-reading.ts';
import { at, config, follow, minutes, read, readings, START, standingOf } from './exposure-curves.ts';

describe('the mean of a working day', () => {
  test('150 ppm for 2 h, 75 for 2 and 50 for 4 are 81.25 ppm', () => {
    // SOURCE: 29 CFR 1910.1000(d)(1), worked example.
    const day = readings(0, 480, (m) => (m < 120 ? 150 : m < 240 ? 75 : 50), 60);
    const reading = read(config('osha'), day);
    expect(reading.twa.ppm).toBeCloseTo(81.25, 9);
    expect(reading.twa.coverage).toBe(1);
    expect(standingOf(reading, 'twa')).toBe('above');
    expect(reading.lastEightHours.ppm).toBeCloseTo(81.25, 9);
  });

  test('is divided by 8 for OSHA and by the day worked, up to 10 h, for NIOSH', () => {
    const day = readings(0, 720, () => 40, 60);
    expect(read(config('osha'), day).twa.ppm).toBeCloseTo(60, 9);
    expect(read(config('niosh'), day).twa.ppm).toBeCloseTo(48, 9);
    expect(
      read(
        config('niosh'),
        readings(0, 600, () => 40, 60),
      ).twa.ppm,
    ).toBeCloseTo(40, 9);
    expect(
      read(
        config('niosh'),
        readings(0, 240, () => 40, 60),
      ).twa.ppm,
    ).toBeCloseTo(20, 9);
  });

  test('begins again with the next shift, while the last eight hours run on', () => {
    const used = config('eu');
    const evening = follow(
      used,
      readings(0, 240, () => 60, 60),
    );
    const reading = readExposure(used, nextShift(used, evening, START + minutes(240)));
    expect(evening.shift.measuredPpmMs / minutes(480)).toBeCloseTo(30, 9);
    expect(reading.twa.atLeastPpm).toBe(0);
    expect(reading.lastEightHours.ppm).toBeCloseTo(30, 9);
    expect(reading.peak).toBeNull();
    const idle = stepExposure(used, nextShift(used, evening, START + minutes(240)), {
      atMs: START + minutes(250),
      ppm: null,
    });
    expect(idle.peak).toBeNull();
  });

  test('finds the worst eight hours inside a long level', () => {
    // 1 h at 0, 1 h at 100, then 50: the window from 1 h to 9 h holds (100 + 7 x 50) / 8.
    const long = config('eu', { longestHoldMs: minutes(1440) });
    const reading = read(long, [at(0, 0), at(60, 100), at(120, 50), at(1320, 50)]);
    expect(reading.highestEightHours?.ppm).toBeCloseTo(56.25, 9);
    expect(reading.highestEightHours?.atMs).toBe(START + minutes(540));
  });
});

describe('the mean of 15 minutes', () => {
  const burst = readings(0, 90, (m) => (m >= 40 && m < 45 ? 300 : 20));

  test('peaks at 113.3 ppm when 20 ppm holds a burst of 300 ppm for 5 min', () => {
    // SOURCE: worked example, computed: (5 x 300 + 10 x 20) / 15.
    const reading = read(config('eu'), burst);
    expect(reading.highestStel?.ppm).toBeCloseTo(113.333, 3);
    expect(reading.highestStel?.atMs).toBe(START + minutes(45));
    expect(reading.stel.ppm).toBeCloseTo(20, 9);
    expect(reading.peak).toEqual(at(40, 300));
  });

  test('is found between readings too, where a reading stands for long', () => {
    const sparse = [at(0, 20), at(40, 300), at(45, 20), at(90, 20)];
    const reading = read(config('eu', { longestHoldMs: minutes(60) }), sparse);
    expect(reading.highestStel?.ppm).toBeCloseTo(113.333, 3);
    const rising = read(config('eu', { longestHoldMs: minutes(60) }), [at(0, 10), at(10, 90), at(60, 90)]);
    expect(rising.highestStel?.ppm).toBeCloseTo(90, 9);
  });

  test('speaks while it is above the limit and no longer', () => {
    const used = config('eu');
    const during = read(
      used,
      burst.filter((sample) => sample.atMs <= START + minutes(46)),
    );
    expect(standingOf(during, 'stel')).toBe('above');
    expect(standingOf(read(used, burst), 'stel')).toBe('not-above');
    expect(
      standingOf(
        read(
          used,
          readings(0, 5, () => 20),
        ),
        'stel',
      ),
    ).toBe('unknown');
  });

  test('is never below the mean of any 15 minutes of the curve by more than a bucket of it', () => {
    const levels = fc.array(fc.integer({ min: 0, max: 500 }), { minLength: 20, maxLength: 60 });
    fc.assert(
      fc.property(levels, (perMinute) => {
        const day = readings(0, perMinute.length, (m) => perMinute[Math.floor(m + 1e-9)] ?? 0, 30);
        const windows = perMinute.map((_, i) => perMinute.slice(Math.max(0, i - 14), i + 1));
        const expected = Math.max(...windows.map((w) => w.reduce((sum, ppm) => sum + ppm, 0) / 15));
        expect(read(config('eu'), day).highestStel?.ppm).toBeCloseTo(expected, 6);
      }),
      { numRuns: 40 },
    );
  });
});

describe('minutes above each limit', () => {
  test('count the level, not the mean', () => {
    const reading = read(
      config('strictest'),
      readings(0, 60, (m) => (m < 10 ? 1300 : m < 25 ? 130 : 25)),
    );
    const above = Object.fromEntries(reading.limits.map((limit) => [limit.kind, limit.minutesAbove]));
    expect(above).toEqual({ twa: 60, stel: 25, excursion: 25, ceiling: 10, idlh: 10 });
  });

  test('a level on the limit is not above it', () => {
    const reading = read(
      config('niosh'),
      readings(0, 20, () => 200),
    );
    expect(standingOf(reading, 'ceiling')).toBe('not-above');
    expect(reading.limits.find((limit) => limit.kind === 'ceiling')?.minutesAbove).toBe(0);
    expect(
      standingOf(
        read(
          config('niosh'),
          readings(0, 20, () => 201),
        ),
        'ceiling',
      ),
    ).toBe('above');
  });
});

describe('the stepper', () => {
  const wave = readings(0, 120, (m) => 60 + 50 * Math.sin(m / 7));

  test('is not moved by ticks between readings', () => {
    const used = config('strictest');
    const ticked = wave.flatMap((sample): CurveNews[] => [
      { atMs: sample.atMs, ppm: null },
      sample,
      { atMs: sample.atMs + 3000, ppm: null },
    ]);
    const [plain, busy] = [read(used, wave), read(used, ticked.slice(0, -1))];
    expect(busy.twa.ppm).toBeCloseTo(plain.twa.ppm ?? Number.NaN, 9);
    expect(busy.highestStel?.ppm).toBeCloseTo(plain.highestStel?.ppm ?? Number.NaN, 9);
    expect(busy.limits.map((l) => l.minutesAbove)).toEqual(
      plain.limits.map((l) => expect.closeTo(l.minutesAbove, 9)),
    );
  });

  test('keeps a bounded state over a week of readings', () => {
    const used = config('strictest');
    const week = readings(0, 7 * 1440, (m) => m % 50, 300);
    const state = follow(used, week);
    expect(state.short.closed.length).toBeLessThanOrEqual(91);
    expect(state.day.closed.length).toBeLessThanOrEqual(481);
  });

  test('counts a sensor that drifted below zero as zero', () => {
    const reading = read(
      config('eu'),
      readings(0, 60, (m) => (m < 30 ? -20 : 40)),
    );
    expect(reading.twa.ppm).toBeCloseTo((40 * 30) / 480, 2);
    expect(reading.peak?.ppm).toBe(40);
  });

  test('refuses time that runs back and levels that cannot be', () => {
    const used = config('eu');
    const state = follow(used, [at(5, 10)]);
    expect(() => stepExposure(used, state, at(4, 10))).toThrowError(
      expect.objectContaining({ code: 'bad-input' }),
    );
    expect(() => stepExposure(used, state, at(6, Number.NaN))).toThrowError(
      expect.objectContaining({ code: 'out-of-range' }),
    );
  });
});

describe('for any curve', () => {
  const curve = fc.array(
    fc.record({ gap: fc.integer({ min: 1, max: 40 }), ppm: fc.double({ min: 0, max: 800, noNaN: true }) }),
    {
      minLength: 1,
      maxLength: 40,
    },
  );
  const spelled = (parts: readonly { gap: number; ppm: number }[], factor: number) => {
    let minute = 0;
    return parts.map(({ gap, ppm }) => {
      minute += gap;
      return at(minute, ppm * factor);
    });
  };

  test('the means scale with the levels, and more ppm never lower one', () => {
    fc.assert(
      fc.property(curve, fc.double({ min: 1, max: 3, noNaN: true }), (parts, factor) => {
        const used = config('strictest', { longestHoldMs: minutes(60) });
        const [one, more] = [read(used, spelled(parts, 1)), read(used, spelled(parts, factor))];
        const scaled = (ppm: number | null | undefined) => expect.closeTo((ppm ?? 0) * factor, 6);
        expect(more.twa.ppm ?? 0).toEqual(scaled(one.twa.ppm));
        expect(more.highestStel?.ppm ?? 0).toEqual(scaled(one.highestStel?.ppm));
        for (const [i, limit] of one.limits.entries()) {
          expect(more.limits[i]?.minutesAbove ?? 0).toBeGreaterThanOrEqual(limit.minutesAbove);
        }
      }),
      { numRuns: 60 },
    );
  });

  test('what is certain is never above what is estimated, and no mean is above the peak within 8 h', () => {
    fc.assert(
      fc.property(
        curve.filter((parts) => parts.length <= 12),
        (parts) => {
          const reading = read(config('osha', { longestHoldMs: minutes(5) }), spelled(parts, 1));
          expect(reading.twa.atLeastPpm).toBeLessThanOrEqual(
            (reading.twa.ppm ?? Number.POSITIVE_INFINITY) + 1e-9,
          );
          expect(reading.twa.ppm ?? 0).toBeLessThanOrEqual((reading.peak?.ppm ?? 0) + 1e-9);
          expect(reading.coverage).toBeGreaterThanOrEqual(0);
          expect(reading.coverage).toBeLessThanOrEqual(1);
        },
      ),
      { numRuns: 60 },
    );
  });
});
