import { describe, expect, it } from 'vitest';
import { JudgeError, requireForward } from '../../hub/judging/errors.ts';
import { freshness, holdReading, NEVER_SEEN, staleAt } from '../../hub/judging/held.ts';

const good = (at: number, value: number) => ({ at, value, quality: 'good' as const });

describe('a held channel', () => {
  it('holds the last good value when a probe goes silent, and says how old it is', () => {
    const held = holdReading(NEVER_SEEN, good(1000, 850));
    expect(held).toEqual({ seen: true, value: 850, goodAt: 1000 });
    expect(freshness(held, 20, 20_999)).toBe('fresh');
    expect(freshness(held, 20, 21_000)).toBe('stale');
  });

  it('tells never seen from gone stale', () => {
    expect(freshness(NEVER_SEEN, 20, 1_000_000)).toBe('never-seen');
    expect(staleAt(NEVER_SEEN, 20)).toBeNull();
    expect(staleAt(holdReading(NEVER_SEEN, good(500, 1)), 0.25)).toBe(750);
  });

  it('takes no value that is not good, and none that is older than the one it holds', () => {
    const held = holdReading(NEVER_SEEN, good(5000, 850));
    expect(holdReading(held, { at: 6000, value: 1800, quality: 'bad' })).toBe(held);
    expect(holdReading(held, { at: 6000, value: 851, quality: 'uncertain' })).toBe(held);
    expect(holdReading(held, good(4999, 20))).toBe(held);
  });
});

describe('time', () => {
  it('never runs back inside a judge', () => {
    expect(() => requireForward(10, 9, 'firing')).toThrowError(JudgeError);
    expect(() => requireForward(10, 9, 'firing')).toThrowError(
      expect.objectContaining({ code: 'time-runs-back' }),
    );
    expect(() => requireForward(10, 10, 'firing')).not.toThrow();
  });
});
