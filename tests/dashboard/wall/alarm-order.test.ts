import { describe, expect, it } from 'vitest';
import {
  byUrgency,
  newDanger,
  shapeOf,
  soundingOf,
  unseenDanger,
  wantsPress,
  wantsReset,
} from '../../../dashboard/wall/alarm-order.ts';
import { alarm, NOW } from '../mock-shop.ts';

const kinds = (alarms: Parameters<typeof byUrgency>[0]) => byUrgency(alarms).map(({ kind }) => kind);

describe('the order of alarms', () => {
  it('puts blindness before any bad reading, and danger before warning', () => {
    const list = [
      alarm('soak-stalled', { priority: 'warning' }),
      alarm('unsafe-air-second'),
      alarm('not-watching-channel', { priority: 'warning' }),
      alarm('overshoot'),
    ];
    expect(kinds(list)).toEqual(['not-watching-channel', 'unsafe-air-second', 'overshoot', 'soak-stalled']);
  });

  it('puts what nobody has seen before what somebody has', () => {
    const seen = alarm('not-watching-air', { state: 'acknowledged' });
    const over = alarm('unsafe-air-second', { state: 'returned-unacknowledged', active: false });
    const fresh = alarm('ramp-stalled', { priority: 'warning' });
    expect(kinds([over, seen, fresh])).toEqual(['ramp-stalled', 'not-watching-air', 'unsafe-air-second']);
  });

  it('shows the newest of equals first, and nothing that is back to normal', () => {
    const old = alarm('overshoot', { id: 'old', raisedAt: NOW - 1000 });
    const young = alarm('overshoot', { id: 'young', raisedAt: NOW });
    const normal = alarm('overshoot', { id: 'normal', state: 'normal' });
    expect(byUrgency([old, normal, young]).map(({ id }) => id)).toEqual(['young', 'old']);
  });

  it('puts what somebody has set aside last, and never drops it', () => {
    const shelved = alarm('not-watching-channel', { state: 'shelved' });
    const out = alarm('overshoot', { state: 'out-of-service', priority: 'warning' });
    const over = alarm('soak-stalled', { state: 'returned-unacknowledged', priority: 'warning' });
    expect(kinds([out, shelved, over])).toEqual(['soak-stalled', 'not-watching-channel', 'overshoot']);
    expect(soundingOf([shelved, out])).toBeNull();
    expect([shelved, out].some(wantsPress)).toBe(false);
  });

  it('gives each meaning its own shape', () => {
    expect(shapeOf(alarm('not-watching-node', { priority: 'danger' }))).toBe('blind');
    expect(shapeOf(alarm('overshoot', { priority: 'danger' }))).toBe('danger');
    expect(shapeOf(alarm('overshoot-ahead', { priority: 'warning' }))).toBe('warning');
  });

  it('owes a press until somebody has seen it, also after it has returned', () => {
    expect(wantsPress(alarm('overshoot', { state: 'returned-unacknowledged' }))).toBe(true);
    expect(wantsPress(alarm('overshoot', { state: 'latched-unacknowledged' }))).toBe(true);
    expect(wantsPress(alarm('overshoot', { state: 'acknowledged' }))).toBe(false);
    const over = alarm('overshoot', { state: 'latched-acknowledged', active: false });
    expect([wantsPress(over), wantsReset(over)]).toEqual([false, true]);
    expect(wantsReset(alarm('overshoot', { state: 'latched-unacknowledged' }))).toBe(false);
  });
});

describe('what sounds', () => {
  it('is the gravest that is true now and unseen', () => {
    const warning = alarm('ramp-stalled', { priority: 'warning' });
    expect(soundingOf([warning, alarm('overshoot')])).toBe('danger');
    expect(soundingOf([warning, alarm('overshoot', { state: 'acknowledged' })])).toBe('warning');
  });

  it('tells blindness by its own rhythm, before a bad reading (no reading is worse than a bad one)', () => {
    const lost = alarm('not-watching-channel');
    expect(soundingOf([lost, alarm('overshoot')])).toBe('blind');
    expect(soundingOf([alarm('overshoot')])).toBe('danger');
  });

  it('sounds foul air as danger even while a probe is silent', () => {
    const air = alarm('unsafe-air-second', { dangerToLife: true });
    expect(soundingOf([alarm('not-watching-channel'), air])).toBe('danger');
    expect(soundingOf([alarm('not-watching-air', { dangerToLife: true })])).toBe('blind');
  });

  it('goes on for a latched alarm until somebody has seen it', () => {
    const latched = { state: 'latched-unacknowledged', active: false } as const;
    expect(soundingOf([alarm('overshoot', latched)])).toBe('danger');
    expect(soundingOf([alarm('overshoot', { ...latched, state: 'latched-acknowledged' })])).toBeNull();
  });

  it('falls silent by a press, and when the fault is over (ISA-18.2: no horn then)', () => {
    expect(soundingOf([alarm('overshoot', { state: 'acknowledged' })])).toBeNull();
    expect(soundingOf([alarm('overshoot', { state: 'returned-unacknowledged', active: false })])).toBeNull();
    expect(soundingOf([])).toBeNull();
  });
});

describe('what a dialog on the wall steps aside for', () => {
  const air = alarm('unsafe-air-second', { id: 'air' });
  const seen = alarm('overshoot', { id: 'seen', state: 'acknowledged' });
  const warning = alarm('ramp-stalled', { id: 'warning', priority: 'warning' });

  it('is a danger that was not there when it was opened', () => {
    const known = unseenDanger([seen, warning]);
    expect(newDanger([seen, warning, air], known)).toBe(true);
  });

  it('is not the danger whose steps it shows, nor a warning, nor what somebody has seen', () => {
    expect(newDanger([air, seen], unseenDanger([air]))).toBe(false);
    expect(newDanger([seen, warning], unseenDanger([]))).toBe(false);
  });
});
