import { describe, expect, it } from 'vitest';
import { channelTexts, checkChannelChange, checkNewChannel } from '../../../dashboard/setup/channel-form.ts';
import { channelsToName, type ProbeTexts, sourceRefusals } from '../../../dashboard/setup/probe-form.ts';
import { Probe } from '../../../hub/contract/probe.ts';
import { channel, settings } from '../mock-shop.ts';

const SHOP = settings();
const AMERICAN = settings({ displayUnit: '[degF]' });
const FULL = Probe.parse({
  type: 'N',
  tolerance: 'iec-1',
  construction: 'mineral-insulated',
  millimetres: 3,
  digitiserStepCelsius: 0.25,
  correction: { offsetCelsius: -1.5, standardUncertaintyCelsius: 0.75 },
  source: { kind: 'emf', emfChannel: 'tc', coldJunctionChannel: 'junction' },
});

function typed(probe: Partial<ProbeTexts>, shop = SHOP) {
  const texts = channelTexts(null, shop);
  const whole = {
    ...texts,
    node: 'forge-1',
    name: 'chamber',
    probe: { ...texts.probe, type: 'K' as const, ...probe },
  };
  return checkNewChannel(whole, shop);
}

describe('a probe as it is typed', () => {
  it.each([
    ['°C', SHOP],
    ['°F', AMERICAN],
  ])('comes back unchanged when nothing is typed, in %s', (_unit, shop) => {
    const stored = channel({ id: 'chamber', quantity: 'temperature', probe: FULL });
    const { value, faults } = checkChannelChange(channelTexts(stored, shop), shop);
    expect(faults).toEqual({});
    expect(value?.probe).toMatchObject({
      ...FULL,
      correction: { standardUncertaintyCelsius: expect.closeTo(0.75, 2) },
      digitiserStepCelsius: expect.closeTo(0.25, 6),
    });
    expect(value?.probe?.correction?.offsetCelsius).toBeCloseTo(-1.5, 2);
  });

  it('is none while no type is chosen, whatever else stands there', () => {
    expect(typed({ type: '', millimetres: '3' }).value?.probe).toBeNull();
  });

  it('takes degrees as differences in the unit of the shop', () => {
    // NIST SP 811 B.9: a difference of 1.8 °F is 1 K; no 32 is taken off.
    const { value } = typed({ step: '0.45', offset: '-3.6', uncertainty: '1.8' }, AMERICAN);
    expect(value?.probe?.digitiserStepCelsius).toBeCloseTo(0.25, 6);
    expect(value?.probe?.correction).toEqual({ offsetCelsius: -2, standardUncertaintyCelsius: 1 });
  });

  it('wants the uncertainty of a correction, and a correction for an uncertainty', () => {
    expect(typed({ offset: '2' }).faults['probe.correction.standardUncertaintyCelsius']).toContain(
      'half of what',
    );
    expect(typed({ uncertainty: '1' }).faults['probe.correction.offsetCelsius']).toContain('0 when nothing');
  });

  it('wants both channels of an emf, and two different ones', () => {
    expect(Object.keys(typed({ source: 'emf' }).faults)).toEqual([
      'probe.source.emfChannel',
      'probe.source.coldJunctionChannel',
    ]);
    const same = typed({ source: 'emf', emfChannel: 'tc', junctionChannel: 'tc' });
    expect(same.faults['probe.source.coldJunctionChannel']).toContain('must be two channels');
  });

  it('takes a slope in millivolts, and says so where it looks like microvolts', () => {
    const line = { source: 'straight-line', junctionChannel: 'junction' } as const;
    expect(typed({ ...line, slope: '0,041276' }).value?.probe?.source).toEqual({
      kind: 'straight-line',
      slopeMillivoltsPerCelsius: 0.041276,
      coldJunctionChannel: 'junction',
    });
    const micro = typed({ ...line, slope: '41.276' });
    expect(micro.value).toBeNull();
    expect(micro.faults['probe.source.slopeMillivoltsPerCelsius']).toBe('At most 0.1.');
    expect(typed({ ...line, slope: 'x' }).faults['probe.source.slopeMillivoltsPerCelsius']).toContain(
      'not a number',
    );
  });

  it('names the limit that is crossed with its unit', () => {
    expect(typed({ millimetres: '60' }).faults['probe.millimetres']).toBe('At most 50 mm.');
    expect(typed({ step: '40' }, AMERICAN).faults['probe.digitiserStepCelsius']).toBe('At most 36 °F.');
  });

  it('is no matter of a channel that measures something else', () => {
    const gas = { ...channelTexts(null, SHOP), node: 'n', name: 'p', quantity: 'pressure' as const };
    const { value } = checkNewChannel({ ...gas, probe: { ...gas.probe, type: 'K' } }, SHOP);
    expect(value?.probe).toBeNull();
  });
});

describe('what a source may name', () => {
  const all = [
    channel({ id: 'tc', quantity: 'emf' }),
    channel({ id: 'junction', quantity: 'temperature' }),
    channel({ id: 'other', quantity: 'temperature', probe: FULL }),
    channel({ id: 'chamber', quantity: 'temperature' }),
    channel({ id: 'gone', quantity: 'temperature', archived: true }),
    channel({ id: 'far', quantity: 'emf', node: 'node-2' }),
  ];

  it('is a channel of the same node, never itself, and no terminals with a probe of their own', () => {
    const own = { node: 'node-1', name: 'chamber' };
    expect(channelsToName(all, { ...own, quantity: 'emf' })).toEqual(['tc']);
    expect(channelsToName(all, { ...own, quantity: 'temperature' })).toEqual(['junction']);
  });

  it('tells what the node was refused for that a wrong source shows by, and nothing else', () => {
    const refused = { 'no-cold-junction': 3, 'bad-json': 9, 'computed-here': 1 };
    expect(sourceRefusals({ refused })).toBe(
      'Refused from this node so far: 3 × an emf without a cold junction to go with it, 1 × this channel is computed by the hub and takes no readings.',
    );
    expect(sourceRefusals({ refused: { 'bad-json': 9 } })).toBeNull();
    expect(sourceRefusals(undefined)).toBeNull();
  });
});
