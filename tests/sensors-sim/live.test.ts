import { describe, expect, test } from 'vitest';
import { behaviour } from '../../sensors-sim/behaviours/behaviour.ts';
import { LiveShop } from '../../sensors-sim/live.ts';
import { NODE_NAMES } from '../../sensors-sim/node-names.ts';
import { Uplink } from '../../sensors-sim/wire/uplink.ts';
import { MemoryLink } from './memory-link.ts';
import { resolve } from './packs.ts';

const NOW = 1_700_000_000_000;

function shop(options: { hours?: number; speed?: number; drop?: boolean } = {}) {
  const links = new Map(NODE_NAMES.map((node) => [node, new MemoryLink()] as const));
  const uplinks = new Map(
    [...links].map(([node, link]) => [node, new Uplink({ node, link, bufferLimit: 20_000 })] as const),
  );
  for (const uplink of uplinks.values()) uplink.start();
  const live = new LiveShop({
    seed: 7,
    liveMs: NOW,
    speed: options.speed ?? 1,
    behaviours: options.drop ? [behaviour({ name: 'node-drop', node: 'air-node', startSeconds: 2 })] : [],
    history: { hours: options.hours ?? 1 },
    historyEverySeconds: 5,
    uplinks,
  });
  const link = (node: (typeof NODE_NAMES)[number]) => links.get(node) ?? new MemoryLink();
  return { live, uplinks, link };
}

/** Acknowledges whatever a link sends, until it sends nothing more. */
async function drain(link: MemoryLink): Promise<number[]> {
  link.connect();
  for (let next = 0; next < link.sent.length; next += 1) {
    link.sent[next]?.acknowledge();
    await new Promise<void>((done) => setImmediate(done));
  }
  return link.readings().flatMap((payload) => resolve(payload).map((reading) => reading.atMs));
}

describe('the live shop', () => {
  test('backfills its past in few packs, in time order, and goes on second by second', async () => {
    const { live, link } = shop();
    live.publishHistory();
    live.advance(10_400);
    const times = await drain(link('air-node'));
    expect(link('air-node').readings()).toHaveLength(3600 / 5 / 20 + 10);
    const past = Array.from({ length: 720 }, (_, index) => NOW - 3_600_000 + 5000 * (index + 1));
    const present = Array.from({ length: 10 }, (_, index) => NOW + 1000 * (index + 1));
    expect(times).toEqual([...past, ...present]);
  });

  test('lives as many seconds as its speed says', () => {
    const { live } = shop({ hours: 0, speed: 60 });
    live.advance(10_000);
    expect(live.nowMs).toBe(NOW + 600_000);
    live.advance(10_000);
    expect(live.nowMs).toBe(NOW + 600_000);
  });

  test('counts the minutes of behaviours from the moment it goes live', () => {
    const { live, link } = shop({ drop: true });
    live.publishHistory();
    live.advance(1500);
    expect(link('air-node').isWanted).toBe(true);
    live.advance(2500);
    expect(link('air-node').isWanted).toBe(false);
    expect(link('oven-node').isWanted).toBe(true);
  });

  test('adds what happens at the furnaces to what it has told of the past, each once', () => {
    const { live } = shop({ hours: 1.5 });
    live.publishHistory();
    const past = live.events.length;
    for (let minute = 1; minute <= 40; minute += 1) live.advance(minute * 60_000);
    const told = live.events.slice(past);
    const forge = told.filter((event) => event.furnace === 'forge');
    expect(forge.map((event) => [event.plan, event.what, event.segmentIndex]).slice(0, 2)).toEqual([
      ['forge-anneal', 'segment', 1],
      ['forge-anneal', 'segment', 2],
    ]);
    expect(told.every((event) => event.atMs > NOW)).toBe(true);
    expect(new Set(told.map((event) => JSON.stringify(event))).size).toBe(told.length);
  });

  test('never runs out of firings', () => {
    const { live, uplinks } = shop({ hours: 0, speed: 1 });
    live.advance(12 * 3_600_000);
    const waiting = uplinks.get('forge-node')?.waiting ?? 0;
    const dropped = uplinks.get('forge-node')?.dropped ?? 0;
    expect(waiting + dropped).toBe(12 * 3600);
    expect(live.events.filter((event) => event.what === 'started').length).toBeGreaterThan(6);
  });
});
