import { describe, expect, test } from 'vitest';
import { Uplink } from '../../../sensors-sim/wire/uplink.ts';
import { MemoryLink } from '../memory-link.ts';

function started(bufferLimit = 100) {
  const link = new MemoryLink();
  const uplink = new Uplink({ node: 'forge-node', link, bufferLimit });
  uplink.start();
  return { link, uplink };
}

/** Lets the promises that are due run. */
const settle = () => new Promise<void>((resolve) => setImmediate(resolve));

async function acknowledgeAll(link: MemoryLink): Promise<void> {
  for (let next = 0; next < link.sent.length; next += 1) {
    link.sent[next]?.acknowledge();
    await settle();
  }
}

describe("a node's way to the hub", () => {
  test('says online, retained, before the first pack', () => {
    const { link, uplink } = started();
    uplink.send('a');
    expect(link.sent).toHaveLength(0);
    link.connect();
    expect(link.sent.map((each) => [each.topic, each.payload, each.options])).toEqual([
      ['soakwatch/forge-node/status', 'online', { qos: 1, retain: true }],
      ['soakwatch/forge-node/readings', 'a', { qos: 1, retain: false }],
    ]);
  });

  test('keeps a pack until it is acknowledged and sends it again after a break', async () => {
    const { link, uplink } = started();
    link.connect();
    for (const payload of ['a', 'b', 'c']) uplink.send(payload);
    link.sent[1]?.acknowledge();
    await settle();
    expect(uplink.waiting).toBe(2);
    link.lose();
    link.connect();
    expect(link.readings()).toEqual(['a', 'b', 'c', 'b', 'c']);
    await acknowledgeAll(link);
    expect(uplink.waiting).toBe(0);
  });

  test('runs no more than twenty packs ahead of the acknowledgements', async () => {
    const { link, uplink } = started();
    link.connect();
    for (let pack = 0; pack < 50; pack += 1) uplink.send(String(pack));
    expect(link.readings()).toHaveLength(20);
    await acknowledgeAll(link);
    expect(link.readings()).toEqual(Array.from({ length: 50 }, (_, pack) => String(pack)));
  });

  test('keeps the newest while the hub is away, counts the rest, and backfills in time order', async () => {
    const { link, uplink } = started(10);
    for (let pack = 0; pack < 25; pack += 1) uplink.send(String(pack));
    expect(uplink.dropped).toBe(15);
    link.connect();
    uplink.send('live');
    await acknowledgeAll(link);
    expect(link.readings()).toEqual(['15', '16', '17', '18', '19', '20', '21', '22', '23', '24', 'live']);
    expect(uplink.dropped).toBe(15);
  });

  test('stays away while it is cut off', () => {
    const { link, uplink } = started();
    link.connect();
    uplink.setLinked(false);
    expect(link.isWanted).toBe(false);
    uplink.send('later');
    expect(link.readings()).toHaveLength(0);
    uplink.setLinked(true);
    expect(link.isWanted).toBe(true);
  });

  test('says offline when it stops, and closes', async () => {
    const { link, uplink } = started();
    link.connect();
    const stopped = uplink.stop();
    expect(link.sent.at(-1)).toMatchObject({ payload: 'offline', options: { qos: 1, retain: true } });
    link.sent.at(-1)?.acknowledge();
    await stopped;
    expect(link.isClosed).toBe(true);
  });

  test('cuts the line instead when something is still unacknowledged', async () => {
    const { link, uplink } = started();
    link.connect();
    uplink.send('a');
    await uplink.stop();
    expect(link.isClosed).toBe(false);
    expect(link.isUp).toBe(false);
    expect(uplink.waiting).toBe(1);
  });
});
