import { describe, expect, it } from 'vitest';
import { soakOutlook } from '../../../hub/physics/forecast/soak-outlook.ts';
import { approach, constant, every, havingSeen, ramp, readingsOf } from './curves.ts';

const BAND = { low: 845, high: 875 };

describe('a soak that has not begun', () => {
  // 0.2 °C/s, at 820 now: 845 in 125 s.
  const forecaster = havingSeen(readingsOf(ramp(820 - 0.2 * 900, 0.2), every(1, 900), 1));

  it('starts when the temperature reaches the tolerance, and ends its time later', () => {
    const { start, end } = soakOutlook(forecaster, BAND, 900);
    expect(Math.abs(((start.likelyMs ?? 0) - forecaster.atMs) / 1000 - 125)).toBeLessThan(10);
    expect(end.likelyMs).toBe((start.likelyMs ?? 0) + 900_000);
    expect(end.earliestMs).toBe((start.earliestMs ?? 0) + 900_000);
  });

  it('will hardly hold when the ramp just goes on', () => {
    expect(soakOutlook(forecaster, BAND, 900).holds ?? 1).toBeLessThan(0.4);
  });

  it('starts later by what the probe lags, when the clock goes by the probe', () => {
    const body = soakOutlook(forecaster, BAND, 900).start.likelyMs ?? 0;
    const probe = soakOutlook(forecaster, BAND, 900, 'probe').start.likelyMs ?? 0;
    expect(Math.abs((probe - body) / 1000 - 8)).toBeLessThan(3);
  });

  it('has no start in sight when the furnace levels off below', () => {
    const low = havingSeen(readingsOf(approach(20, 780, 200), every(1, 1500), 2));
    const found = soakOutlook(low, BAND, 900);
    expect(found.start.likelyMs).toBeNull();
    expect(found.end.likelyMs).toBeNull();
    expect(found.holds).toBeNull();
  });

  it('starts on the way down when it is too hot now', () => {
    const hot = havingSeen(readingsOf(ramp(890 + 0.1 * 600, -0.1), every(1, 600), 3));
    const seconds = ((soakOutlook(hot, BAND, 600).start.likelyMs ?? 0) - hot.atMs) / 1000;
    expect(Math.abs(seconds - 150)).toBeLessThan(25);
  });
});

describe('a soak under way', () => {
  const forecaster = havingSeen(readingsOf(constant(860), every(1, 900), 4));

  it('has started now, and ends when what is left has run', () => {
    const { start, end, holds } = soakOutlook(forecaster, BAND, 240);
    expect(start.earliestMs).toBe(forecaster.atMs);
    expect(end.latestMs).toBe(forecaster.atMs + 240_000);
    expect(holds ?? 0).toBeGreaterThan(0.9);
  });

  it('holds less surely near the edge', () => {
    const edge = havingSeen(readingsOf(constant(874), every(1, 900), 5));
    expect(soakOutlook(edge, BAND, 240).holds ?? 1).toBeLessThan(
      soakOutlook(forecaster, BAND, 240).holds ?? 0,
    );
  });

  it('ends now with nothing left', () => {
    expect(soakOutlook(forecaster, BAND, 0).end.likelyMs).toBe(forecaster.atMs);
  });

  it('is refused for a tolerance upside down and for a time that cannot be', () => {
    expect(() => soakOutlook(forecaster, { low: 875, high: 845 }, 60)).toThrow(
      expect.objectContaining({ code: 'bad-input' }),
    );
    expect(() => soakOutlook(forecaster, BAND, -1)).toThrow(
      expect.objectContaining({ code: 'out-of-range' }),
    );
  });
});
