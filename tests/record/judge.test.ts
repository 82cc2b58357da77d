import { describe, expect, it } from 'vitest';
import { codes, computed, HOUR, judged, planPiece, points, reason, result, soak } from './kit.ts';

// 1084: hardened from 800 to 815 °C, known to ±20 °C (from memory: Heat Treater's Guide); see hub/physics/steel.
const HARDEN = planPiece('1084', 'harden', 6);
const HELD_815 = points([
  [0, 20],
  [1, 808],
  [1.5, 808],
]);

describe('a piece judged by what its steel went through', () => {
  it('is met when its middle had its time inside the window of its steel', () => {
    const piece = judged({
      plan: HARDEN,
      schedule: { segments: [soak(808, 1800)] },
      segments: [result(0, 1, 1.5)],
      curves: computed(HELD_815, 'p1'),
    });
    expect(piece.verdict).toBe('met');
    expect(codes(piece)).toEqual(['good: core-soaked', 'good: in-window']);
    expect(piece).toMatchObject({ basis: 'core', coreOf: null, soakSeconds: 1800, heldCelsius: 808 });
  });

  it('is not met when the air had its time and the middle had not', () => {
    const late = points([
      [0, 20],
      [1, 600],
      [1.4, 799],
      [1.5, 808],
    ]);
    const piece = judged({
      plan: HARDEN,
      schedule: { segments: [soak(808, 1800)] },
      segments: [result(0, 1, 1.5)],
      curves: computed(late),
    });
    expect(piece.verdict).toBe('not-met');
    expect(codes(piece)[0]).toBe('wrong: core-short');
    expect(piece.soakSeconds).toBeLessThan(400);
    expect(piece.airSoakSeconds).toBe(1800);
  });

  it('is not met where its steel was hotter than it may be, whatever the segments say', () => {
    const hot = points([
      [0, 20],
      [1, 900],
      [1.5, 900],
    ]);
    const piece = judged({
      plan: HARDEN,
      schedule: { segments: [soak(900, 1800)] },
      segments: [result(0, 1, 1.5)],
      curves: computed(hot),
    });
    expect(piece.verdict).toBe('not-met');
    expect(codes(piece)).toContain('wrong: harden-above-window');
    expect(piece.secondsAboveWindow).toBeGreaterThan(1800);
  });

  it('has doubts only, where the furnace went over and its own skin did not', () => {
    const over = reason('overshoot', { limitCelsius: 818 });
    const asked = {
      plan: HARDEN,
      schedule: { segments: [soak(808, 1800)] },
      segments: [result(0, 1, 1.5, { verdict: 'not-met', reasons: [over] })],
    };
    const piece = judged({ ...asked, curves: computed(HELD_815) });
    expect(piece.verdict).toBe('met-with-doubts');
    expect(codes(piece)[0]).toBe('doubt: overshoot-not-in-piece');
    const byAir = judged({
      ...asked,
      curves: {
        ...computed([]),
        bodies: [],
        air: HELD_815.map(({ atMs, core }) => ({ atMs, coldest: core.value, hottest: core.value })),
      },
    });
    expect(byAir.verdict).toBe('not-met');
    expect(codes(byAir)).toContain('doubt: judged-by-air');
  });

  it('is judged by its own middle where the slowest piece of the load came too late', () => {
    const short = result(0, 1, 1.5, { verdict: 'not-met', reasons: [reason('core-short')] });
    const piece = judged({
      plan: HARDEN,
      schedule: { segments: [soak(808, 1800)] },
      segments: [short],
      curves: computed(HELD_815),
    });
    expect(piece.verdict).toBe('met');
    const never = judged({
      plan: HARDEN,
      schedule: { segments: [soak(808, 1800)] },
      segments: [{ ...short, reasons: [reason('not-begun')], startedAt: null, endedAt: null }],
      curves: computed(HELD_815),
    });
    expect(never.verdict).toBe('not-met');
  });

  it('has doubts just below a window, as the thermocouple has an error too, and is not met well below it', () => {
    // 1045: normalised at 900 °C (from memory: Heat Treater's Guide), known to ±10 °C; see hub/physics/steel.
    const at = (celsius: number) =>
      judged({
        plan: planPiece('1045', 'normalise'),
        schedule: { segments: [soak(celsius, 1800)] },
        segments: [result(0, 1, 1.5)],
        curves: computed(
          points([
            [0, 20],
            [1, celsius],
            [1.5, celsius],
          ]),
        ),
      });
    expect(codes(at(885))).toContain('doubt: too-cold-for-step');
    expect(at(860).verdict).toBe('not-met');
    expect(at(905).verdict).toBe('met');
  });

  it('stays pending while the firing runs, and has doubts when it was abandoned', () => {
    const asked = {
      plan: HARDEN,
      schedule: { segments: [soak(808, 1800)] },
      segments: [result(0, 1, 1.5)],
      curves: computed(HELD_815),
    };
    expect(judged({ ...asked, status: 'running' }).verdict).toBe('pending');
    expect(judged({ ...asked, status: 'abandoned' }).verdict).toBe('met-with-doubts');
  });

  it('claims nothing of steel that is not known here, and nothing without readings', () => {
    const piece = judged({ plan: null, schedule: { segments: [soak(808, 1800)] } });
    expect(piece.verdict).toBe('not-met');
    expect(codes(piece)).toEqual(['wrong: nothing-measured', 'doubt: steel-not-known']);
    expect(piece).toMatchObject({ figures: [], peakCelsius: null, window: null });
  });
});

describe('an anneal', () => {
  // 1084 full anneal: no faster than 28 °C an hour (common handbook practice for 10xx; see hub/physics/steel).
  const ANNEAL = planPiece('1084', 'full-anneal', 20);
  const cooled = (rate: number, inFurnace = true) =>
    judged({
      plan: ANNEAL,
      schedule: { segments: [soak(825, 3600)] },
      segments: [result(0, 1, 2)],
      curves: computed([
        ...points([
          [0, 20],
          [1, 825],
          [2, 825],
        ]),
        ...points([[2 + 400 / rate, 425]]).map((point) => ({ ...point, inFurnace })),
      ]),
    });

  it('is met at the rate that its steel wants, and not at more than twice that', () => {
    expect(cooled(25).verdict).toBe('met');
    expect(cooled(25).coolingCelsiusPerHour).toBeCloseTo(25, 1);
    expect(codes(cooled(40))).toContain('doubt: cooling-too-fast');
    expect(codes(cooled(200))).toContain('wrong: cooling-too-fast');
  });

  it('has doubts where no probe went with it into the ash', () => {
    const piece = cooled(20, false);
    expect(piece.verdict).toBe('met-with-doubts');
    expect(codes(piece)).toContain('doubt: cooling-computed');
  });

  it('has doubts where nobody followed it down', () => {
    const piece = judged({
      plan: ANNEAL,
      schedule: { segments: [soak(825, 3600)] },
      segments: [result(0, 1, 2)],
      curves: computed(
        points([
          [0, 20],
          [1, 825],
          [2, 825],
          [2 + 60_000 / HOUR, 824],
        ]),
      ),
    });
    expect(codes(piece)).toContain('doubt: cooling-not-followed');
    expect(piece.coolingCelsiusPerHour).toBeNull();
  });
});
