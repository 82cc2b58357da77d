import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type CurveNews, USUAL_CURVE_RULES } from '../../../hub/physics/carbon-monoxide/curve.ts';
import {
  type DoseGateState,
  doseGateWarns,
  minutesToWarn,
  startDoseGate,
  stepDoseGate,
} from '../../../hub/physics/carbon-monoxide/dose-gate.ts';
import {
  ALARM_STANDARDS,
  type AlarmStandard,
  responseWindows,
  windowVerdict,
} from '../../../hub/physics/carbon-monoxide/response-windows.ts';

const DAY = 1440;

/** Level, no alarm before, alarm by (minutes). */
type Row = readonly [standard: AlarmStandard, ppm: number, notBefore: number, by: number | null];
const ROWS: readonly Row[] = [
  // SOURCE: EN 50291-1, two independent public summaries.
  ['en-50291-1', 30, 120, null],
  ['en-50291-1', 50, 60, 90],
  ['en-50291-1', 100, 10, 40],
  ['en-50291-1', 300, 0, 3],
  // SOURCE: UL 2034, several public summaries.
  ['ul-2034', 30, 30 * DAY, null],
  ['ul-2034', 70, 60, 240],
  ['ul-2034', 150, 10, 50],
  ['ul-2034', 400, 4, 15],
  // SOURCE: CSA 6.19-01, one public comparison.
  ['csa-6.19', 30, 30 * DAY, null],
  ['csa-6.19', 70, 60, 240],
  ['csa-6.19', 150, 10, 50],
  ['csa-6.19', 400, 4, 15],
];

function run(standard: AlarmStandard, news: readonly CurveNews[], from: DoseGateState = startDoseGate(0)) {
  return news.reduce(
    (state, next) => stepDoseGate({ standard, rules: USUAL_CURVE_RULES }, state, next),
    from,
  );
}

/** A constant level read every `everyMs`, and the minute of the first warning. */
function constant(standard: AlarmStandard, ppm: number, minutes: number, everyMs = 10_000) {
  const count = Math.round((minutes * 60_000) / everyMs);
  const state = run(
    standard,
    Array.from({ length: count + 1 }, (_, i) => ({ atMs: i * everyMs, ppm })),
  );
  return { state, warnMinutes: state.firstWarnMs === null ? null : state.firstWarnMs / 60_000 };
}

describe('every row of the tables', () => {
  test.each(ROWS)('%s at %d ppm is the row of the standard', (standard, ppm, notBefore, by) => {
    const row = responseWindows(standard).windows.find((window) => window.ppm === ppm);
    expect(row).toEqual({ ppm, notBeforeMinutes: notBefore, byMinutes: by });
  });

  test.each(ROWS.filter((row) => row[3] !== null))(
    '%s at %d ppm: the gate warns inside %d to %d min',
    (standard, ppm, notBefore, by) => {
      const limit = by ?? 0;
      const { warnMinutes } = constant(standard, ppm, limit);
      expect(warnMinutes).not.toBeNull();
      expect(warnMinutes ?? 0).toBeGreaterThanOrEqual(notBefore);
      expect(warnMinutes ?? Number.POSITIVE_INFINITY).toBeLessThanOrEqual(limit);
      expect(windowVerdict({ ppm, notBeforeMinutes: notBefore, byMinutes: by }, warnMinutes, limit)).toBe(
        'kept',
      );
    },
  );

  test.each(ROWS.filter((row) => row[2] > 0 && row[3] !== null))(
    '%s at %d ppm: the gate is still quiet just before %d min',
    (standard, ppm, notBefore) => {
      const { state, warnMinutes } = constant(standard, ppm, notBefore - 0.1, 1000);
      expect(warnMinutes).toBeNull();
      expect(doseGateWarns(state)).toBe(false);
    },
  );

  test.each(ROWS.filter((row) => row[3] === null))(
    '%s at %d ppm: the gate stays quiet for %d min',
    (standard, ppm, minutes) => {
      for (const level of [ppm, ppm + 3]) {
        const { state, warnMinutes } = constant(standard, level, minutes, 240_000);
        expect(warnMinutes).toBeNull();
        expect(state.dose).toBe(0);
      }
    },
  );

  test('are kept by a sensor that reads a tenth wrong too', () => {
    // UL 2034 test gas: 70 +/- 5, 150 +/- 5, 400 +/- 10 ppm (secondary for the first, the others from memory).
    const reading: readonly (readonly [AlarmStandard, number, number, number])[] = [
      ['ul-2034', 75, 60, 240],
      ['ul-2034', 65, 60, 240],
      ['ul-2034', 155, 10, 50],
      ['ul-2034', 145, 10, 50],
      ['ul-2034', 410, 4, 15],
      ['ul-2034', 390, 4, 15],
      // EN 50291 test gas 55 and 110 ppm, from memory.
      ['en-50291-1', 55, 60, 90],
      ['en-50291-1', 110, 10, 40],
    ];
    for (const [standard, ppm, notBefore, by] of reading) {
      expect(minutesToWarn(standard, ppm)).toBeGreaterThanOrEqual(notBefore);
      expect(minutesToWarn(standard, ppm)).toBeLessThanOrEqual(by);
    }
  });
});

describe('a changing level', () => {
  test('adds the shares of time: half the way at 100 ppm, half at 50', () => {
    const half = minutesToWarn('en-50291-1', 100) / 2;
    const rest = minutesToWarn('en-50291-1', 50) / 2;
    const change = { atMs: half * 60_000, ppm: 50 };
    const held = { standard: 'en-50291-1', rules: { ...USUAL_CURVE_RULES, longestHoldMs: 1e8 } } as const;
    const begun = stepDoseGate(held, stepDoseGate(held, startDoseGate(0), { atMs: 0, ppm: 100 }), change);
    const end = stepDoseGate(held, begun, { atMs: (half + rest * 2) * 60_000, ppm: null });
    expect(begun.dose).toBeCloseTo(0.5, 9);
    expect(end.firstWarnMs).toBeCloseTo((half + rest) * 60_000, 3);
  });

  test('lets go when the air clears, and remembers half a dose for 320 min', () => {
    const full = constant('ul-2034', 400, 10).state;
    expect(doseGateWarns(full)).toBe(true);
    const clear = run(
      'ul-2034',
      [
        { atMs: 600_000, ppm: 0 },
        { atMs: 660_000, ppm: 0 },
      ],
      full,
    );
    expect(doseGateWarns(clear)).toBe(false);
    // SOURCE: 320 min recovery half-life in air, MIOSHA laboratory calculator.
    expect(
      run(
        'ul-2034',
        [{ atMs: 600_000 + 320 * 60_000, ppm: 0 }],
        run('ul-2034', [{ atMs: 600_000, ppm: 0 }], full),
      ).dose,
    ).toBeCloseTo(0.5, 6);
    expect(clear.firstWarnMs).toBe(full.firstWarnMs);
  });

  test('goes on with the last level when the sensor falls silent, even where gaps are left unknown', () => {
    const rules = { ...USUAL_CURVE_RULES, gap: { kind: 'unknown' } } as const;
    const config = { standard: 'en-50291-1', rules } as const;
    const silent = stepDoseGate(config, stepDoseGate(config, startDoseGate(0), { atMs: 0, ppm: 100 }), {
      atMs: 40 * 60_000,
      ppm: null,
    });
    expect(doseGateWarns(silent)).toBe(true);
  });

  test('warns no later for more ppm, at any step of reading', () => {
    const level = fc.double({ min: 0, max: 3000, noNaN: true });
    fc.assert(
      fc.property(fc.constantFrom(...ALARM_STANDARDS), level, level, (standard, a, b) => {
        const [low, high] = [Math.min(a, b), Math.max(a, b)];
        expect(minutesToWarn(standard, high)).toBeLessThanOrEqual(minutesToWarn(standard, low) * (1 + 1e-12));
      }),
    );
    const fine = constant('en-50291-1', 90, 30, 1000).warnMinutes;
    expect(constant('en-50291-1', 90, 30, 60_000).warnMinutes).toBeCloseTo(fine ?? Number.NaN, 6);
  });
});

describe('judging an alarm time against a row', () => {
  const row = { ppm: 50, notBeforeMinutes: 60, byMinutes: 90 };
  test('tells too early, kept, too late and not yet', () => {
    expect(windowVerdict(row, 59.9, 100)).toBe('too-early');
    expect(windowVerdict(row, 60, 100)).toBe('kept');
    expect(windowVerdict(row, 90.1, 100)).toBe('too-late');
    expect(windowVerdict(row, null, 91)).toBe('too-late');
    expect(windowVerdict(row, null, 80)).toBe('open');
  });

  test('a must-not row is kept by silence, broken by an alarm in its time', () => {
    const mustNot = { ppm: 30, notBeforeMinutes: 120, byMinutes: null };
    expect(windowVerdict(mustNot, null, 120)).toBe('kept');
    expect(windowVerdict(mustNot, null, 119)).toBe('open');
    expect(windowVerdict(mustNot, 119, 120)).toBe('too-early');
  });
});
