import { describe, expect, it } from 'vitest';
import { newestText } from '../../../dashboard/setup/newest.ts';
import { offersOf } from '../../../dashboard/setup/offers.ts';
import { stepsDone } from '../../../dashboard/setup/steps.ts';
import { channel, FORGE, good, NOW, node, settings } from '../mock-shop.ts';

const byId = <T extends { id: string }>(...things: T[]) => new Map(things.map((thing) => [thing.id, thing]));
const stranger = { ...node('stranger'), adopted: false };
const friend = { ...node('friend'), adopted: true };
const offered = channel({ id: 'x', quantity: 'temperature', node: 'friend', adopted: false });

describe('what is on offer', () => {
  it('is a node that nobody accepted, and what an accepted one says anew', () => {
    const offers = offersOf({ nodes: byId(stranger, friend), channels: byId(offered) });
    expect(offers.map((offer) => [offer.node.name, offer.channels.length])).toEqual([
      ['friend', 1],
      ['stranger', 0],
    ]);
  });

  it('is nothing once everything is taken in or put away', () => {
    const nodes = byId(friend);
    expect(offersOf({ nodes, channels: byId({ ...offered, adopted: true }) })).toEqual([]);
    expect(offersOf({ nodes, channels: byId({ ...offered, archived: true }) })).toEqual([]);
  });
});

describe('the first steps', () => {
  it('are all to do in an empty shop', () => {
    const empty = { nodes: new Map(), furnaces: new Map(), channels: new Map() };
    expect(stepsDone(empty, 0)).toEqual({
      connect: false,
      furnace: false,
      adopt: false,
      channel: false,
      schedule: false,
    });
    expect(stepsDone(empty, null).schedule).toBeNull();
  });

  it('count a node only when it was heard, and a channel only when it was taken in', () => {
    const silent = { ...friend, lastHeardAt: null };
    const before = stepsDone({ nodes: byId(silent), furnaces: byId(FORGE), channels: byId(offered) }, 1);
    expect(before).toEqual({
      connect: false,
      furnace: true,
      adopt: false,
      channel: false,
      schedule: true,
    });
    const heard = { ...friend, lastHeardAt: NOW };
    const after = stepsDone(
      { nodes: byId(heard), furnaces: byId(FORGE), channels: byId({ ...offered, adopted: true }) },
      1,
    );
    expect(Object.values(after).every(Boolean)).toBe(true);
  });
});

describe('the newest reading of a channel', () => {
  const chamber = channel({ id: 'c', quantity: 'temperature', latest: good(NOW, 861.5) });

  it('says that it is old, with its day, once it is', () => {
    expect(newestText(chamber, settings(), NOW + 1000)).toMatch(/^862 °C, \d\d:\d\d:\d\d$/);
    expect(newestText(chamber, settings(), NOW + 60_000)).toMatch(/^862 °C, old: 14 Mar 2026/);
  });

  it('does not pass a bad reading for a good one, nor nothing for a reading', () => {
    const bad = { ...chamber, latest: { ...good(NOW, 3000), quality: 'bad' as const } };
    expect(newestText(bad, settings(), NOW)).toContain('(bad)');
    expect(newestText({ ...chamber, latest: null }, settings(), NOW)).toBe('none yet');
  });
});
