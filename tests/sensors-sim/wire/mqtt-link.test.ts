/** Over a real connection to a real broker. */
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { MqttLink } from '../../../sensors-sim/wire/mqtt-link.ts';
import { Uplink } from '../../../sensors-sim/wire/uplink.ts';
import { startBroker, type TestBroker } from '../broker.ts';

const STATUS = 'soakwatch/air-node/status';
let broker: TestBroker;
let uplink: Uplink;

beforeEach(async () => {
  broker = await startBroker();
  uplink = uplinkTo(broker.url, 30);
});

afterEach(async () => {
  await uplink.stop();
  await broker.close();
});

function uplinkTo(url: string, bufferLimit: number): Uplink {
  const will = { topic: STATUS, payload: 'offline' };
  const link = new MqttLink({ url, clientId: 'air-node-under-test', will, retryMs: 20 });
  return new Uplink({ node: 'air-node', link, bufferLimit });
}

const readings = () =>
  broker.received.filter((each) => each.topic === 'soakwatch/air-node/readings').map((each) => each.payload);
const statuses = () => broker.received.filter((each) => each.topic === STATUS).map((each) => each.payload);
const waitFor = (check: () => void) => vi.waitFor(check, { timeout: 10_000, interval: 5 });
const numbers = (from: number, to: number) =>
  Array.from({ length: to - from }, (_, index) => String(from + index));

describe('a node on a real broker', () => {
  test('resends what a broker received but never acknowledged, in time order, until it does', async () => {
    broker.withhold = true;
    uplink.start();
    for (const pack of numbers(0, 5)) uplink.send(pack);
    await waitFor(() => expect(readings()).toEqual(numbers(0, 5)));
    expect(uplink.waiting).toBe(5);

    broker.breakConnections();
    await waitFor(() => expect(readings()).toEqual([...numbers(0, 5), ...numbers(0, 5)]));
    expect(uplink.waiting).toBe(5);

    broker.withhold = false;
    broker.breakConnections();
    await waitFor(() => expect(uplink.waiting).toBe(0));
    expect(readings().slice(10)).toEqual(numbers(0, 5));
    expect(uplink.dropped).toBe(0);
  });

  test('holds no more than its bound while nothing is acknowledged, and counts what it gave up', async () => {
    broker.withhold = true;
    uplink.start();
    for (const pack of numbers(0, 20)) uplink.send(pack);
    await waitFor(() => expect(readings()).toHaveLength(20));
    for (const pack of numbers(20, 60)) uplink.send(pack);
    expect(uplink.waiting).toBe(20 + 30);
    expect(uplink.dropped).toBe(10);

    broker.withhold = false;
    broker.breakConnections();
    await waitFor(() => expect(uplink.waiting).toBe(0));
    // The twenty that were on their way could not be called back; of the rest the newest thirty were kept.
    expect(readings().slice(20)).toEqual([...numbers(0, 20), ...numbers(30, 60)]);
  });

  test('does not send again what was acknowledged', async () => {
    uplink.start();
    for (const pack of numbers(0, 40)) uplink.send(pack);
    await waitFor(() => expect(uplink.waiting).toBe(0));
    const sent = readings().length;
    broker.breakConnections();
    await waitFor(() => expect(statuses().filter((each) => each === 'online')).toHaveLength(2));
    uplink.send('after');
    await waitFor(() => expect(uplink.waiting).toBe(0));
    expect(readings().slice(sent)).toEqual(['after']);
  });

  test('leaves its last will when it vanishes, and says online when it is back', async () => {
    uplink.start();
    await waitFor(() => expect(statuses()).toEqual(['online']));
    uplink.setLinked(false);
    await waitFor(() => expect(statuses()).toEqual(['online', 'offline']));
    uplink.send('buffered');
    expect(readings()).toEqual([]);
    uplink.setLinked(true);
    await waitFor(() => expect(readings()).toEqual(['buffered']));
    expect(statuses()).toEqual(['online', 'offline', 'online']);
    expect(broker.received.filter((each) => each.topic === STATUS).every((each) => each.retain)).toBe(true);
  });

  test('says offline once when it stops', async () => {
    uplink.start();
    uplink.send('a');
    await waitFor(() => expect(uplink.waiting).toBe(0));
    await uplink.stop();
    await waitFor(() => expect(statuses()).toEqual(['online', 'offline']));
  });

  test('goes on trying when there is no broker, and tells', async () => {
    const { url } = broker;
    await broker.close();
    const said: string[] = [];
    const will = { topic: STATUS, payload: 'offline' };
    const link = new MqttLink({ url, clientId: 'lonely', will, retryMs: 5 });
    uplink = new Uplink({ node: 'air-node', link, bufferLimit: 5, report: (message) => said.push(message) });
    uplink.start();
    uplink.send('a');
    await waitFor(() => expect(said.length).toBeGreaterThan(2));
    expect(said[0]).toMatch(/cannot reach the hub: .*ECONNREFUSED/);
    expect(uplink.waiting).toBe(1);
  });
});
