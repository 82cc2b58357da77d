import { describe, expect, it } from 'vitest';
import type { Finding } from '../../hub/contract/alarm.ts';
import { oneTroubleEach } from '../../hub/watch/one-trouble.ts';

const found = (kind: Finding['kind'], subject: string, channel = subject): Finding => ({
  kind,
  subject,
  since: 0,
  params: { channel },
});
const fault = found('probe-fault', 'chamber');

describe('one trouble, one alarm', () => {
  it('a stall that is told of the channel at fault gives way to the fault', () => {
    for (const kind of ['ramp-stalled', 'soak-stalled'] as const) {
      expect(oneTroubleEach([found(kind, 'firing', 'chamber'), fault])).toEqual([fault]);
    }
  });

  it('a stall that another channel shows is a trouble of its own', () => {
    const both = [found('ramp-stalled', 'firing', 'load'), fault];
    expect(oneTroubleEach(both)).toEqual(both);
  });

  it('nothing louder gives way, whatever measured it', () => {
    const loud = [
      found('overshoot', 'firing', 'chamber'),
      found('not-watching-channel', 'chamber'),
      found('unsafe-air-first', 'co', 'chamber'),
      fault,
    ];
    expect(oneTroubleEach(loud)).toEqual(loud);
  });

  it('a stall stands where no probe is at fault', () => {
    const alone = [found('ramp-stalled', 'firing', 'chamber')];
    expect(oneTroubleEach(alone)).toEqual(alone);
  });
});
