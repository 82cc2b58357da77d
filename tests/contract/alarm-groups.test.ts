import { describe, expect, it } from 'vitest';
import type { Alarm, AlarmKind } from '../../hub/contract/alarm.ts';
import { type GroupedAlarm, groupAlarms } from '../../hub/contract/alarm-groups.ts';
import { ALARM_CAUSES, type CauseTable } from '../../hub/contract/alarm-relations.ts';

const alarm = (kind: AlarmKind, change: Partial<GroupedAlarm> = {}): GroupedAlarm => ({
  id: kind,
  kind,
  priority: 'warning',
  subject: 'firing-1',
  params: { firingId: 'firing-1', furnaceId: 'forge', channel: 'chamber', node: 'forge-node' },
  state: 'unacknowledged',
  active: true,
  raisedAt: 0,
  dangerToLife: false,
  ...change,
});
const air = (kind: 'unsafe-air-first' | 'unsafe-air-second' | 'not-watching-air') =>
  alarm(kind, { priority: 'danger', dangerToLife: true });

const told = (alarms: readonly GroupedAlarm[], causes?: CauseTable): string[] =>
  groupAlarms(alarms, causes).map(({ lead, followers }) =>
    [lead.id, ...followers.map(({ id }) => id)].join(' > '),
  );

/** A chain of three in one furnace, as gas gone > forge cooling > soak stalled is. */
const CHAIN: CauseTable = {
  'soak-stalled': [{ kind: 'ramp-stalled', same: 'furnace' }],
  'ramp-stalled': [{ kind: 'probe-fault', same: 'furnace' }],
};

describe('alarms that come together', () => {
  it('are led by the first cause, with everything that follows under it', () => {
    const alarms = [alarm('soak-stalled'), alarm('ramp-stalled'), alarm('probe-fault')];
    expect(told(alarms, CHAIN)).toEqual(['probe-fault > soak-stalled > ramp-stalled']);
  });

  it('lead with what follows from a cause that is not there', () => {
    expect(told([alarm('soak-stalled'), alarm('ramp-stalled')], CHAIN)).toEqual([
      'ramp-stalled > soak-stalled',
    ]);
    expect(told([alarm('soak-stalled')], CHAIN)).toEqual(['soak-stalled']);
  });

  it('of two furnaces are two troubles', () => {
    const oven = { params: { furnaceId: 'oven' }, id: 'oven' };
    expect(told([alarm('probe-fault'), alarm('ramp-stalled', oven)], CHAIN)).toEqual(['probe-fault', 'oven']);
  });

  it('let no smaller thing push a danger to life aside, though somebody has acknowledged it', () => {
    const seen = { ...air('unsafe-air-second'), state: 'acknowledged' as const };
    expect(told([alarm('soak-stalled'), seen])).toEqual(['unsafe-air-second', 'soak-stalled']);
    // Over, or put aside by rule, it claims nothing; and a new danger comes before one that is known.
    const over = { ...seen, active: false, state: 'latched-acknowledged' as const };
    expect(told([alarm('soak-stalled'), over])).toEqual(['soak-stalled', 'unsafe-air-second']);
    expect(told([seen, air('unsafe-air-first')])).toEqual(['unsafe-air-first', 'unsafe-air-second']);
  });

  it('never hide an air alarm under another, whatever the table says', () => {
    const causes: CauseTable = {
      'unsafe-air-second': [{ kind: 'not-watching-node', same: 'shop' }],
      'unsafe-air-first': [{ kind: 'unsafe-air-second', same: 'shop' }],
      'not-watching-air': [{ kind: 'not-watching-node', same: 'shop' }],
    };
    const node = alarm('not-watching-node', { priority: 'danger' });
    const all = [node, air('not-watching-air'), air('unsafe-air-second'), air('unsafe-air-first')];
    expect(told(all, causes)).toEqual([
      'not-watching-node',
      'not-watching-air',
      'unsafe-air-second',
      'unsafe-air-first',
    ]);
  });

  it('never put a danger under a warning', () => {
    const danger = alarm('soak-stalled', { priority: 'danger' });
    expect(told([alarm('ramp-stalled'), danger], CHAIN)).toEqual(['soak-stalled', 'ramp-stalled']);
  });

  it('never put what holds under what is over, nor under what is set aside', () => {
    const over = alarm('ramp-stalled', { state: 'returned-unacknowledged', active: false });
    expect(told([over, alarm('soak-stalled')], CHAIN)).toEqual(['soak-stalled', 'ramp-stalled']);
    const shelved = alarm('ramp-stalled', { state: 'shelved' });
    expect(told([shelved, alarm('soak-stalled')], CHAIN)).toEqual(['soak-stalled', 'ramp-stalled']);
  });

  it('come in the order of the most urgent in each group, not of the leads', () => {
    const seen = alarm('probe-fault', { state: 'acknowledged' });
    const fresh = alarm('ramp-stalled');
    const other = alarm('overshoot', { state: 'acknowledged', params: { furnaceId: 'oven' } });
    expect(told([other, seen, fresh], CHAIN)).toEqual(['probe-fault > ramp-stalled', 'overshoot']);
  });

  it('all stand for themselves where causes run in a ring', () => {
    const ring: CauseTable = { ...CHAIN, 'probe-fault': [{ kind: 'soak-stalled', same: 'furnace' }] };
    expect(told([alarm('soak-stalled'), alarm('ramp-stalled'), alarm('probe-fault')], ring)).toEqual([
      'probe-fault',
      'soak-stalled',
      'ramp-stalled',
    ]);
  });

  it('leave out what is back to normal', () => {
    expect(told([alarm('overshoot', { state: 'normal' })])).toEqual([]);
  });
});

describe('the causes of the shop', () => {
  it('put a channel that went silent under its node, and a forecast under what it foretold', () => {
    const silent = { priority: 'danger', active: false, state: 'returned-unacknowledged' } as const;
    const channel = alarm('not-watching-channel', { ...silent, subject: 'chamber' });
    const node = alarm('not-watching-node', { priority: 'danger', subject: 'forge-node' });
    expect(told([channel, node])).toEqual(['not-watching-node > not-watching-channel']);
    expect(told([alarm('overshoot-ahead'), alarm('overshoot')])).toEqual(['overshoot > overshoot-ahead']);
  });

  it('put nothing about air under anything', () => {
    const caused = Object.keys(ALARM_CAUSES) as Alarm['kind'][];
    expect(caused.filter((kind) => /air/.test(kind))).toEqual([]);
  });
});
