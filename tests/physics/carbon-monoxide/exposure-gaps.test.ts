import { describe, expect, test } from 'vitest';
import type { CurveNews, CurveRules } from '../../../hub/physics/carbon-monoxide/curve.ts';
import { at, config, minutes, read, readings, START, standingOf } from './exposure-curves.ts';

describe('a gap', () => {
  const sixHours = readings(0, 360, () => 40, 60);
  const night: CurveNews = { atMs: START + minutes(480), ppm: null };
  const filled = (gap: CurveRules['gap']) =>
    read(config('osha', { gap, longestHoldMs: 60_000 }), [...sixHours, night]);

  test('of 2 h in 8 leaves 30 ppm at least, 40 when held and 45 at a worst case of 60', () => {
    // SOURCE: three fills of 6 h at 40 ppm, computed. 7 of 8 h: OSHA Industrial Hygiene Manual IX, 1977.
    expect(filled({ kind: 'hold' }).twa.atLeastPpm).toBeCloseTo(30, 0);
    expect(filled({ kind: 'hold' }).twa.ppm).toBeCloseTo(40, 9);
    expect(filled({ kind: 'level', ppm: 60 }).twa.ppm).toBeCloseTo(45, 0);
    expect(filled({ kind: 'hold' }).twa.coverage).toBeCloseTo(0.75, 2);
  });

  test('is never filled with zero: left open it makes the mean unknown', () => {
    const open = filled({ kind: 'unknown' });
    expect(open.twa.ppm).toBeNull();
    expect(standingOf(open, 'twa')).toBe('unknown');
    expect(open.twa.gapSeconds).toBeCloseTo(119 * 60, 9);
    expect(standingOf(filled({ kind: 'hold' }), 'twa')).toBe('unknown');
  });

  test('does not hide a limit that the measured time alone has passed', () => {
    const bad = [...readings(0, 360, () => 90, 60), night];
    const reading = read(config('osha', { gap: { kind: 'unknown' } }), bad);
    expect(reading.twa.ppm).toBeNull();
    expect(reading.twa.atLeastPpm).toBeGreaterThan(50);
    expect(standingOf(reading, 'twa')).toBe('above');
  });

  test('takes the last or the highest level as asked, and a stated level never lowers it', () => {
    const falling = [
      ...readings(0, 30, () => 300),
      ...readings(30.5, 60, () => 100),
      { ...night, atMs: START + minutes(90) },
    ];
    const stel = (gap: CurveRules['gap']) => read(config('eu', { gap }), falling).stel.ppm;
    expect(stel({ kind: 'hold' })).toBeCloseTo(100, 9);
    expect(stel({ kind: 'highest' })).toBeCloseTo(300, 9);
    expect(stel({ kind: 'level', ppm: 60 })).toBeCloseTo(100, 9);
  });

  test('before the first reading is unknown, and a small one takes the measured mean', () => {
    const late = readings(60, 120, () => 30, 60);
    expect(read(config('eu'), late).twa.coverage).toBeCloseTo(0.5, 9);
    expect(read(config('eu'), late).twa.ppm).toBeNull();
    const soon = read(
      config('eu', { gap: { kind: 'unknown' } }),
      readings(24, 480, () => 30, 60),
    );
    expect(soon.twa.ppm).toBeCloseTo(30, 9);
    expect(soon.twa.atLeastPpm).toBeCloseTo(28.5, 9);
  });

  test('lets an old level still say "above", and never "not above"', () => {
    const used = config('niosh');
    const old = { atMs: START + minutes(60), ppm: null };
    expect(standingOf(read(used, [at(0, 250), old]), 'ceiling')).toBe('above');
    expect(standingOf(read(used, [at(0, 50), old]), 'ceiling')).toBe('unknown');
    expect(standingOf(read(used, []), 'ceiling')).toBe('unknown');
  });
});
