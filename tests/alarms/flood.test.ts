import { describe, expect, it } from 'vitest';
import { announcedAt, floodOf, floodSpans, NO_FLOOD, stepFlood } from '../../hub/alarms/flood.ts';
import { burst, MINUTE, off, SECOND, step } from './journal-kit.ts';

const times = (count: number, everyMs: number, start = 0) => announcedAt(burst(count, everyMs, start));

// SOURCE: ISA-18.2-2016, secondary: a flood starts above 10 alarms in 10 min and ends below 5 in 10 min.
describe('a flood of alarms', () => {
  it('begins with the eleventh in ten minutes, not with the tenth', () => {
    expect(floodOf(times(10, MINUTE / 2), 5 * MINUTE).since).toBeNull();
    expect(floodOf(times(11, MINUTE / 2), 5 * MINUTE).since).toBe(5 * MINUTE);
  });

  it('is none when eleven come in more than ten minutes', () => {
    expect(floodSpans(times(11, MINUTE), 60 * MINUTE)).toEqual([]);
    expect(floodSpans(times(11, MINUTE - 1), 60 * MINUTE)).toHaveLength(1);
  });

  it('ends when fewer than five are left in ten minutes, not when ten are', () => {
    // Eleven at one a second: the window empties between 10:00 and 10:10; four are left at 10:06.
    expect(floodSpans(times(11, SECOND), 60 * MINUTE)).toEqual([
      { from: 10 * SECOND, to: 10 * MINUTE + 6 * SECOND, alarms: 11 },
    ]);
  });

  it('goes on while five to ten come in ten minutes, and is told as running at the end', () => {
    const steady = [...times(11, SECOND), ...times(12, 2 * MINUTE, MINUTE)];
    const end = 23 * MINUTE;
    expect(floodSpans(steady, end)).toMatchObject([{ from: 10 * SECOND, to: null }]);
    expect(floodOf(steady, end).since).toBe(10 * SECOND);
  });

  it('is the same stepped live second by second as found in the journal', () => {
    const all = [...times(14, 7 * SECOND), ...times(12, 20 * SECOND, 30 * MINUTE)];
    let state = NO_FLOOD;
    const live: number[] = [];
    for (let at = 0; at <= 60 * MINUTE; at += SECOND) {
      const before = state.since;
      state = stepFlood(
        state,
        all.filter((time) => time > at - SECOND && time <= at),
        at,
      );
      if (state.since !== before) live.push(at);
    }
    const found = floodSpans(all, 60 * MINUTE);
    expect(live).toEqual(found.flatMap(({ from, to }) => [from, to]));
    expect(found).toHaveLength(2);
  });

  it('counts what asks for somebody: raised, come back, taken up; not what returns or is shelved', () => {
    const counted = announcedAt([
      step(1),
      off(2),
      step(3, { from: 'returned-unacknowledged' }),
      step(4, { event: 'shelve', from: 'unacknowledged', to: 'shelved' }),
      step(5, { event: 'condition-on', from: 'shelved', to: 'shelved' }),
      step(6, { event: 'shelf-ends', from: 'shelved', to: 'unacknowledged' }),
    ]);
    expect(counted).toEqual([1, 3, 6]);
  });
});
