import { connectAsync, type MqttClient } from 'mqtt';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { createLog } from '../broker/log.ts';
import { makeShop, type Shop } from './kill-support.ts';

const TOPIC = 'soakwatch/forge-1/readings';
const FIRST_SECOND = 1_700_000_000;

let shop: Shop;
const clients: MqttClient[] = [];

beforeEach(() => {
  shop = makeShop();
});

afterEach(async () => {
  for (const client of clients.splice(0)) await client.endAsync(true);
  await shop.clear();
});

/** A node that keeps what it sends until it is acknowledged, and writes down what was. */
async function node(port: number) {
  const client = await connectAsync(`mqtt://127.0.0.1:${port}`, { reconnectPeriod: 30 });
  client.on('error', () => {});
  clients.push(client);
  const acknowledged = new Set<number>();
  const log = createLog();
  const send = async (value: number): Promise<void> => {
    const pack = JSON.stringify([{ n: 't', u: 'Cel', t: FIRST_SECOND + value, v: value }]);
    await client.publishAsync(TOPIC, pack, { qos: 1 });
    acknowledged.add(value);
    log.add('acknowledged');
  };
  const reached = (count: number) => log.seen('acknowledged', count);
  return { acknowledged, send, reached };
}

/** Each case starts two to five hubs, a second or so each on a busy machine. */
const PATIENCE_MS = 60_000;

describe('a hub that is killed', { timeout: PATIENCE_MS }, () => {
  test('between the message and its commit has not acknowledged it, and gets it again', async () => {
    const hub = await shop.start('never-commits');
    const { acknowledged, send } = await node(hub.port);

    const sent = send(7);
    await hub.accepting(1);
    await hub.kill();
    expect(acknowledged.size).toBe(0);
    expect(shop.values('forge-1', 't')).toEqual([]);

    const again = await shop.start('none', hub.port);
    await sent;
    await again.kill();
    expect(shop.values('forge-1', 't')).toEqual([7]);
  });

  test('in the middle of many messages has acknowledged none of those that it loses', async () => {
    const hub = await shop.start('dies-before-commit');
    const { acknowledged, send } = await node(hub.port);

    const sent = Promise.all(Array.from({ length: 50 }, (_, value) => send(value)));
    await hub.gone;
    expect(acknowledged.size).toBe(0);
    expect(shop.values('forge-1', 't')).toEqual([]);

    const again = await shop.start('none', hub.port);
    await sent;
    await again.kill();
    expect(shop.values('forge-1', 't')).toHaveLength(50);
  });

  test('between the commit and the acknowledgement has the message, and keeps it once when it comes again', async () => {
    const hub = await shop.start('dies-after-commit');
    const { acknowledged, send } = await node(hub.port);

    const sent = send(7);
    await hub.gone;
    expect(acknowledged.size).toBe(0);
    expect(shop.values('forge-1', 't')).toEqual([7]);

    const again = await shop.start('none', hub.port);
    await sent;
    await again.kill();
    expect(shop.values('forge-1', 't')).toEqual([7]);
  });

  test('again and again under load has everything that it ever acknowledged, each once', async () => {
    let hub = await shop.start('none');
    const { acknowledged, send, reached } = await node(hub.port);
    const sent: Promise<void>[] = [];
    let next = 0;

    for (let round = 0; round < 3; round += 1) {
      for (let count = 0; count < 120; count += 1, next += 1) sent.push(send(next));
      // Killed at a different depth of the stream each time: some acknowledged, some on their way, some not sent.
      await reached(120 * round + 30 * (round + 1));
      await hub.kill();
      const promised = [...acknowledged];
      expect(promised.length).toBeGreaterThanOrEqual(120 * round + 30);
      const kept = new Set(shop.values('forge-1', 't'));
      expect(promised.filter((value) => !kept.has(value))).toEqual([]);
      hub = await shop.start('none', hub.port);
    }
    await Promise.all(sent);
    await hub.kill();

    expect(shop.values('forge-1', 't')).toEqual(Array.from({ length: next }, (_, value) => value));
  });
});
