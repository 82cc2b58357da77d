import type { AlarmTransition } from '../../hub/contract/alarm-journal.ts';

export const SECOND = 1000;
export const MINUTE = 60 * SECOND;
export const HOUR = 60 * MINUTE;

/** One step of the journal of an alarm, with everything that a test does not say. */
export function step(at: number, extra: Partial<AlarmTransition> = {}): AlarmTransition {
  return {
    at,
    alarmId: 'a',
    kind: 'overshoot',
    priority: 'warning',
    subject: 'firing-1',
    firingId: 'firing-1',
    furnaceId: 'forge',
    event: 'condition-on',
    from: 'normal',
    to: 'unacknowledged',
    active: true,
    activeSince: at,
    by: null,
    why: null,
    until: null,
    params: {},
    ...extra,
  };
}

export function off(at: number, alarmId = 'a'): AlarmTransition {
  return step(at, {
    alarmId,
    event: 'condition-off',
    from: 'unacknowledged',
    to: 'returned-unacknowledged',
    active: false,
    activeSince: null,
  });
}

export function ack(at: number, alarmId = 'a'): AlarmTransition {
  return step(at, { alarmId, event: 'acknowledge', from: 'unacknowledged', to: 'acknowledged', by: 'Ina' });
}

/** `count` alarms, each its own, evenly over `everyMs`, from `start`. */
export function burst(count: number, everyMs: number, start = 0): AlarmTransition[] {
  return Array.from({ length: count }, (_, n) => step(start + n * everyMs, { alarmId: `b${start}-${n}` }));
}
