import { describe, expect, it } from 'vitest';
import { ALARM_DEFINITIONS, compareAlarms, deadbandOf } from '../../hub/alarms/definitions.ts';
import { ALARM_KINDS, type AlarmKind } from '../../hub/contract/alarm.ts';

describe('the table of alarms', () => {
  it('has blindness louder than air, and air louder than the rest', () => {
    const order = [...ALARM_KINDS].sort((a, b) =>
      compareAlarms({ kind: a, raisedAt: 0 }, { kind: b, raisedAt: 0 }),
    );
    const family = (kind: AlarmKind) =>
      kind.startsWith('not-watching') ? 0 : kind.startsWith('unsafe-air') ? 1 : 2;
    const families = order.map(family);
    expect(families).toEqual([...families].sort((a, b) => a - b));
    expect(order.slice(3, 5)).toEqual(['unsafe-air-idlh', 'unsafe-air-second']);
  });

  it('calls blindness, air to leave at once and gas in the room a danger, the rest a warning', () => {
    const danger = ALARM_KINDS.filter((kind) => ALARM_DEFINITIONS[kind].priority === 'danger');
    expect(danger).toEqual([
      'not-watching-channel',
      'not-watching-node',
      'not-watching-air',
      'unsafe-air-idlh',
      'unsafe-air-second',
      'unsafe-air-ceiling',
      'unsafe-air-saturated',
      'unsafe-air-dose',
      'unsafe-air-short-mean',
      'unsafe-air-low-oxygen',
      'unsafe-air-carbon-dioxide-second',
      'gas-flame-out',
      'gas-escaping',
      'gas-on-cold',
    ]);
  });

  it('names a source for every row, and lets danger through without delay', () => {
    for (const kind of ALARM_KINDS) {
      const { source, priority, onDelayMs } = ALARM_DEFINITIONS[kind];
      expect(source.length).toBeGreaterThan(10);
      if (priority === 'danger') expect(onDelayMs).toBe(0);
    }
  });

  it('puts the older of two alike first', () => {
    const older = { kind: 'overshoot' as const, raisedAt: 1 };
    expect(compareAlarms(older, { kind: 'overshoot', raisedAt: 2 })).toBeLessThan(0);
  });

  it('takes 1 % of a temperature as its deadband, within half of the tolerance; 10 % of a CO limit', () => {
    expect(deadbandOf('overshoot', 810, 50)).toBeCloseTo(8.1, 12);
    expect(deadbandOf('overshoot', 810, 10)).toBe(5);
    expect(deadbandOf('unsafe-air-first', 20, null)).toBe(2);
  });
});
