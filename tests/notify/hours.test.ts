import { describe, expect, it } from 'vitest';
import { isWithinHours, localTime } from '../../hub/notify/hours.ts';

const WEEK = [1, 2, 3, 4, 5, 6, 7];
const at = (iso: string) => Date.parse(iso);

describe('hours on the shop’s own clock', () => {
  it('begins with the first minute and ends before the last', () => {
    const shift = { days: WEEK, from: '07:30', to: '16:00' };
    expect(isWithinHours(shift, at('2026-03-02T07:29:59Z'), 'UTC')).toBe(false);
    expect(isWithinHours(shift, at('2026-03-02T07:30:00Z'), 'UTC')).toBe(true);
    expect(isWithinHours(shift, at('2026-03-02T15:59:59Z'), 'UTC')).toBe(true);
    expect(isWithinHours(shift, at('2026-03-02T16:00:00Z'), 'UTC')).toBe(false);
  });

  it('goes on past midnight and belongs to the day on which it began', () => {
    const friday = { days: [5], from: '22:00', to: '06:00' };
    expect(isWithinHours(friday, at('2026-03-06T23:00:00Z'), 'UTC')).toBe(true);
    expect(isWithinHours(friday, at('2026-03-07T05:59:00Z'), 'UTC')).toBe(true);
    expect(isWithinHours(friday, at('2026-03-06T05:59:00Z'), 'UTC')).toBe(false);
    expect(isWithinHours(friday, at('2026-03-07T22:00:00Z'), 'UTC')).toBe(false);
    const sunday = { days: [7], from: '22:00', to: '06:00' };
    expect(isWithinHours(sunday, at('2026-03-09T01:00:00Z'), 'UTC')).toBe(true);
  });

  it('takes the same time twice for a whole day', () => {
    const monday = { days: [1], from: '06:00', to: '06:00' };
    expect(isWithinHours(monday, at('2026-03-02T06:00:00Z'), 'UTC')).toBe(true);
    expect(isWithinHours(monday, at('2026-03-03T05:59:00Z'), 'UTC')).toBe(true);
    expect(isWithinHours(monday, at('2026-03-03T06:00:00Z'), 'UTC')).toBe(false);
  });

  // European Union: summer time from 2026-03-29 01:00 UTC to 2026-10-25 01:00 UTC (Directive 2000/84/EC).
  it('follows the clocks that go forward and back', () => {
    const zone = 'Europe/Berlin';
    expect(localTime(at('2026-03-29T00:59:00Z'), zone)).toEqual({ day: 7, minute: 1 * 60 + 59 });
    expect(localTime(at('2026-03-29T01:00:00Z'), zone)).toEqual({ day: 7, minute: 3 * 60 });
    expect(localTime(at('2026-10-25T00:59:00Z'), zone)).toEqual({ day: 7, minute: 2 * 60 + 59 });
    expect(localTime(at('2026-10-25T01:00:00Z'), zone)).toEqual({ day: 7, minute: 2 * 60 });
    const shift = { days: WEEK, from: '07:00', to: '08:00' };
    expect(isWithinHours(shift, at('2026-03-27T06:00:00Z'), zone)).toBe(true);
    expect(isWithinHours(shift, at('2026-03-30T06:00:00Z'), zone)).toBe(false);
    expect(isWithinHours(shift, at('2026-03-30T05:00:00Z'), zone)).toBe(true);
  });
});
