import { describe, expect, it } from 'vitest';
import { ALARM_DEFINITIONS } from '../../hub/alarms/definitions.ts';
import { sift } from '../../hub/alarms/suppression.ts';
import { ALARM_KINDS, type Finding } from '../../hub/contract/alarm.ts';

const found = (kind: Finding['kind'], subject: string, channel = subject): Finding => ({
  kind,
  subject,
  since: 0,
  params: { channel },
});
const fault = found('probe-fault', 'chamber');

describe('one trouble, one alarm', () => {
  it('a stall that is told of the channel at fault gives way to the fault, and the rule is named', () => {
    for (const kind of ['ramp-stalled', 'soak-stalled'] as const) {
      const stall = found(kind, 'firing', 'chamber');
      expect(sift([stall, fault])).toEqual({
        told: [fault],
        heldBack: [{ finding: stall, rule: 'probe-at-fault' }],
      });
    }
  });

  it('a stall that another channel shows is a trouble of its own', () => {
    const both = [found('ramp-stalled', 'firing', 'load'), fault];
    expect(sift(both)).toEqual({ told: both, heldBack: [] });
  });

  it('nothing louder gives way, whatever measured it', () => {
    const loud = [
      found('overshoot', 'firing', 'chamber'),
      found('not-watching-channel', 'chamber'),
      found('unsafe-air-first', 'co', 'chamber'),
      fault,
    ];
    expect(sift(loud).told).toEqual(loud);
  });

  it('a stall stands where no probe is at fault', () => {
    const alone = [found('ramp-stalled', 'firing', 'chamber')];
    expect(sift(alone).told).toEqual(alone);
  });

  it('every rule names a louder kind, and none is about danger to life: something always tells the trouble', () => {
    for (const kind of ALARM_KINDS) {
      const { suppressedBy, dangerToLife, rank } = ALARM_DEFINITIONS[kind];
      if (dangerToLife) expect(suppressedBy).toEqual([]);
      for (const { by } of suppressedBy) expect(ALARM_DEFINITIONS[by].rank).toBeLessThan(rank);
    }
  });
});
