import { describe, expect, it } from 'vitest';
import { alarm, openTest, T0 } from './helpers.ts';

describe('alarms', () => {
  it('come back as they were kept', () => {
    const archive = openTest();
    const first = alarm('a', { params: { celsius: 0.1 + 0.2, channel: 'x"\'; --', limit: null } });
    archive.saveAlarms([first]);
    expect(archive.alarm('a')).toEqual(first);
    expect(archive.alarm('b')).toBeNull();
  });

  it('are one row each, however often they change', () => {
    const archive = openTest();
    archive.saveAlarms([alarm('a'), alarm('b', { raisedAt: T0 + 1 })]);
    const answered = alarm('a', {
      state: 'acknowledged',
      active: false,
      clearedAt: T0 + 8,
      acknowledgedAt: T0 + 9,
      acknowledgedBy: 'wall',
    });
    archive.saveAlarms([answered]);
    expect(archive.alarms({ limit: 10 })).toEqual([alarm('b', { raisedAt: T0 + 1 }), answered]);
  });

  it('are open until they are normal, and all are shown when no state is asked for', () => {
    const archive = openTest();
    const states = ['unacknowledged', 'acknowledged', 'returned-unacknowledged', 'normal'] as const;
    archive.saveAlarms(states.map((state, n) => alarm(state, { state, raisedAt: T0 + n })));
    const open = archive.alarms({ state: 'open', limit: 10 }).map(({ id }) => id);
    expect(open).toEqual(['returned-unacknowledged', 'acknowledged', 'unacknowledged']);
    expect(archive.alarms({ limit: 10 })).toHaveLength(4);
    expect(archive.alarms({ state: 'all', limit: 2 }).map(({ id }) => id)).toEqual([
      'normal',
      'returned-unacknowledged',
    ]);
  });

  it('are found by their firing, which need not be there any more', () => {
    const archive = openTest();
    archive.saveAlarms([alarm('a', { firingId: 'gone' }), alarm('b')]);
    expect(archive.alarms({ firingId: 'gone', limit: 10 }).map(({ id }) => id)).toEqual(['a']);
    expect(archive.alarms({ firingId: 'other', limit: 10 })).toEqual([]);
  });

  it('are kept together or not at all', () => {
    const archive = openTest();
    const broken = alarm('b', { raisedAt: 0.5 });
    expect(() => archive.saveAlarms([alarm('a'), broken])).toThrow(
      expect.objectContaining({ code: 'invalid' }),
    );
    expect(archive.alarms({ limit: 10 })).toEqual([]);
  });
});
