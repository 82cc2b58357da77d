import { describe, expect, it } from 'vitest';
import { curveChannels } from '../../../dashboard/firings/channels.ts';
import { curveSeries, firingWindow } from '../../../dashboard/firings/picture.ts';
import { withLive } from '../../../dashboard/firings/use-firing.ts';
import type { FiringDetail } from '../../../hub/contract/firing.ts';
import { channel, good, HARDENING, NOW } from '../mock-shop.ts';

const firing = { watchedChannels: ['a', 'gone'], furnaceId: 'forge' };
const known = new Map(
  [
    channel({ id: 'a', quantity: 'temperature', furnaceId: 'forge', label: 'Chamber' }),
    channel({ id: 'b', quantity: 'temperature', furnaceId: 'forge', label: 'Steel' }),
    channel({ id: 'c', quantity: 'pressure', furnaceId: 'forge', label: 'Gas' }),
    channel({ id: 'd', quantity: 'temperature', furnaceId: 'oven', label: 'Oven' }),
    channel({ id: 'e', quantity: 'temperature', furnaceId: 'forge', adopted: false }),
  ].map((entry) => [entry.id, entry]),
);
const DETAIL: FiringDetail = {
  ...HARDENING.firing,
  judgement: { ...HARDENING.judgement, events: [] },
};

describe('the curves of a firing', () => {
  it('are the watched channels first, then the others of its furnace; no one else’s', () => {
    const channels = curveChannels(firing, known);
    expect(channels.map(({ id, watched }) => [id, watched])).toEqual([
      ['a', true],
      ['gone', true],
      ['c', false],
      ['b', false],
    ]);
  });

  it('keep a watched channel that was put away, and say so', () => {
    expect(curveChannels(firing, known)[1]?.label).toBe('Channel put away');
  });

  it('show silence up to now as a gap while the firing runs, and none after it', () => {
    const [watched] = curveChannels(firing, known);
    if (!watched) throw new Error('there is a watched channel');
    const series = {
      channel: 'a',
      unit: 'Cel',
      from: 0,
      to: 1000,
      total: 1,
      thinned: false,
      readings: [good(1000, 700)],
      gaps: [],
    };
    expect(curveSeries(watched, series, 61_000).gaps).toEqual([{ from: 1000, to: 61_000 }]);
    expect(curveSeries(watched, series, null).gaps).toEqual([]);
  });

  it('reach to the end of the plan while it runs, and to its own end when it is over', () => {
    const running = firingWindow(DETAIL, NOW);
    expect(running.to).toBeGreaterThan(DETAIL.judgement.plan.at(-1)?.at ?? Number.POSITIVE_INFINITY);
    const endedAt = DETAIL.startedAt + 600_000;
    expect(firingWindow({ ...DETAIL, endedAt }, NOW)).toEqual({
      from: DETAIL.startedAt,
      to: DETAIL.startedAt + 606_000,
    });
  });
});

describe('a firing under the live feed', () => {
  it('takes the newer judgement and keeps the events, which the feed does not carry', () => {
    const events: FiringDetail['judgement']['events'] = [
      { at: 1, kind: 'blind', segment: 0, finding: null, params: {}, text: 'No fresh reading' },
    ];
    const older = { ...DETAIL, judgement: { ...DETAIL.judgement, judgedTo: NOW - 5000, events } };
    const merged = withLive(older, HARDENING);
    expect(merged.judgement.judgedTo).toBe(HARDENING.judgement.judgedTo);
    expect(merged.judgement.events).toEqual(events);
  });

  it('keeps a title that was changed here before the feed tells of it', () => {
    expect(withLive({ ...DETAIL, title: 'Chisels' }, HARDENING).title).toBe('Chisels');
  });

  it('is not set back by a judgement that is older than what it has', () => {
    const newer = {
      ...DETAIL,
      judgement: { ...DETAIL.judgement, judgedTo: HARDENING.judgement.judgedTo + 1 },
    };
    expect(withLive(newer, HARDENING)).toBe(newer);
    expect(withLive(newer, undefined)).toBe(newer);
  });
});
