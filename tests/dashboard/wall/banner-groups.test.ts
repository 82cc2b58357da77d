import { describe, expect, it } from 'vitest';
import { bannerAlarms } from '../../../dashboard/wall/banner-groups.ts';
import { alarm } from '../mock-shop.ts';

const forge = { params: { furnaceId: 'forge' } };
const kinds = (list: readonly { kind: string }[] | undefined) => list?.map(({ kind }) => kind);

describe('what the banner says of several alarms', () => {
  it('leads with the cause and puts what follows from it under it', () => {
    const gas = alarm('gas-lost', { ...forge, priority: 'warning' });
    const soak = alarm('soak-stalled', { ...forge, priority: 'warning' });
    const other = alarm('overshoot', { params: { furnaceId: 'oven' }, priority: 'warning' });
    const found = bannerAlarms([other, soak, gas]);
    expect(found?.lead.kind).toBe('gas-lost');
    expect(kinds(found?.followers.named)).toEqual(['soak-stalled']);
    expect(kinds(found?.others.named)).toEqual(['overshoot']);
  });

  it('says nothing when nothing stands', () => {
    expect(bannerAlarms([])).toBeNull();
    expect(bannerAlarms([alarm('overshoot', { state: 'normal' })])).toBeNull();
  });

  it('names danger to life before anything smaller, wherever it stands in the order', () => {
    const lost = ['a', 'b', 'c', 'd'].map((id) =>
      alarm('not-watching-channel', { id, subject: id, params: { channel: id, node: id } }),
    );
    const air = alarm('unsafe-air-second', { dangerToLife: true });
    const found = bannerAlarms([...lost, air]);
    expect(found?.lead.kind).toBe('not-watching-channel');
    expect(found?.others.named[0]?.kind).toBe('unsafe-air-second');
    expect(found?.others.more).toBe(2);
    expect(found?.others.moreMortal).toBe(0);
  });

  it('says how many of those without a name are about danger to life', () => {
    const mortal = (['idlh', 'second', 'dose', 'short-mean'] as const).map((level) =>
      alarm(`unsafe-air-${level}`, { dangerToLife: true }),
    );
    const found = bannerAlarms(mortal);
    expect(found?.lead.kind).toBe('unsafe-air-idlh');
    expect([found?.others.more, found?.others.moreMortal]).toEqual([1, 1]);
  });
});
