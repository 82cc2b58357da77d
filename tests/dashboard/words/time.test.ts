import { describe, expect, it } from 'vitest';
import { clockDuration, day, duration, since, timeOfDay } from '../../../dashboard/words/time.ts';

const AFTERNOON = Date.UTC(2026, 2, 14, 14, 3, 27);

describe('times as people read them', () => {
  it('uses a 24-hour clock, in the zone of the screen', () => {
    expect(timeOfDay(AFTERNOON, 'UTC')).toBe('14:03');
    expect(timeOfDay(Date.UTC(2026, 0, 1, 0, 5), 'UTC')).toBe('00:05');
    // Berlin is one hour ahead of UTC in March before the 29th (IANA tz database, Europe/Berlin).
    expect(timeOfDay(AFTERNOON, 'Europe/Berlin')).toBe('15:03');
  });

  it('does not let yesterday look like today', () => {
    const yesterday = AFTERNOON - 24 * 3_600_000;
    expect(since(AFTERNOON - 60_000, AFTERNOON, 'UTC')).toBe('14:02');
    expect(since(yesterday, AFTERNOON, 'UTC')).toBe(`${day(yesterday, 'UTC')}, 14:03`);
  });

  it('writes durations in what matters', () => {
    expect(duration(45)).toBe('45 s');
    expect(duration(90)).toBe('2 min');
    expect(duration(4800)).toBe('1 h 20 min');
    expect(duration(7200)).toBe('2 h');
    expect(duration(-5)).toBe('0 s');
  });

  it('runs a clock in minutes, then in hours', () => {
    expect(clockDuration(740)).toBe('12:20');
    expect(clockDuration(3740)).toBe('1:02:20');
    expect(clockDuration(-1)).toBe('00:00');
  });
});
