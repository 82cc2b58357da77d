import mqtt from 'mqtt';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { WebSocket } from 'ws';
import { startMosquitto } from '../broker/mosquitto.ts';
import { FeedEar, type RealHub, realHub, runProgram, temporaryFolder } from './real-hub.ts';

const folder = { current: temporaryFolder() };
let hub: RealHub;

beforeEach(async () => {
  folder.current = temporaryFolder();
  hub = await realHub(folder.current.path);
});
afterEach(async () => {
  await hub.stop();
  folder.current.remove();
});

const publish = (topic: string, text: string, ...more: string[]): Promise<string> =>
  runProgram('mosquitto_pub', [
    '-h',
    '127.0.0.1',
    '-p',
    String(hub.mqttPort),
    '-t',
    topic,
    '-m',
    text,
    '-q',
    '1',
    ...more,
  ]);

async function benchChannel(): Promise<{ id: string }> {
  const furnace = await hub.api('POST', 'furnaces', { name: 'Forge', kind: 'gas-forge', ratedCelsius: 1300 });
  return hub.api('POST', 'channels', {
    node: 'bench',
    name: 'chamber',
    quantity: 'temperature',
    furnaceId: furnace.id,
  });
}

describe("a node that is Debian's own mosquitto_pub", () => {
  it('finds its reading in the record and on the feed', async () => {
    const channel = await benchChannel();
    const ear = new FeedEar(hub);
    await ear.hear((message) => message.type === 'snapshot');
    await publish('soakwatch/bench/readings', '[{"n":"chamber","u":"Cel","v":861.5}]');
    const series = await hub.api('GET', `channels/${channel.id}/readings`);
    expect(series.readings).toEqual([expect.objectContaining({ value: 861.5, quality: 'good' })]);
    const told = await ear.hear((message) => message.type === 'reading');
    expect(told).toMatchObject({ channel: channel.id, reading: { value: 861.5 } });
    ear.close();
  });

  it('may speak Fahrenheit, kilopascal and psi; the record is in base units', async () => {
    await publish(
      'soakwatch/bench/readings',
      '[{"n":"hot","u":"[degF]","v":1580},{"n":"gas","u":"kPa","v":50},{"n":"line","u":"psi","v":10}]',
    );
    const channels: { name: string; latest: { value: number } }[] = await hub.api('GET', 'channels');
    const latest = Object.fromEntries(channels.map((channel) => [channel.name, channel.latest.value]));
    expect(latest.hot).toBeCloseTo(860, 6);
    expect(latest.gas).toBe(50_000);
    // UCUM: 1 [psi] = 6894.757293168 Pa.
    expect(latest.line).toBeCloseTo(68_947.57293168, 5);
  });

  it('is offered for adoption when nobody knows it, and loses nothing by that', async () => {
    await publish('soakwatch/stranger/readings', '[{"n":"chamber","u":"Cel","v":20}]');
    const nodes: { name: string; adopted: boolean; refused: Record<string, number> }[] = await hub.api(
      'GET',
      'nodes',
    );
    expect(nodes).toEqual([
      expect.objectContaining({ name: 'stranger', adopted: false, refused: { 'unknown-channel': 1 } }),
    ]);
    await hub.api('POST', 'nodes/stranger/adopt');
    const [channel] = await hub.api('GET', 'channels');
    expect(channel).toMatchObject({ adopted: true, latest: { value: 20 } });
  });

  it('needs no change of firmware when a binding knows its topic', async () => {
    const binding = { topic: 'workshop/+/kiln', channel: 'kiln', quantity: 'temperature', unit: 'Cel' };
    await hub.api('POST', 'bindings', { ...binding, decoder: { kind: 'json', valuePointer: '/temp_c' } });
    await publish('workshop/corner/kiln', '{"temp_c": 861.5}');
    const [channel] = await hub.api('GET', 'channels');
    expect(channel).toMatchObject({ node: 'corner', name: 'kiln', latest: { value: 861.5 } });
  });

  it('is told offline by its last will, and its status stays for whoever asks later', async () => {
    await publish('soakwatch/bench/status', 'online', '-r');
    expect(await hub.api('GET', 'nodes/bench')).toMatchObject({ status: 'online' });
    const port = String(hub.mqttPort);
    const said = await runProgram('mosquitto_sub', [
      '-h',
      '127.0.0.1',
      '-p',
      port,
      '-t',
      'soakwatch/bench/status',
      '-C',
      '1',
      '-W',
      '10',
    ]);
    expect(said.trim()).toBe('online');
  });

  it('keeps what it had published over a restart of the hub', async () => {
    const channel = await benchChannel();
    await publish('soakwatch/bench/readings', '[{"n":"chamber","u":"Cel","v":700}]');
    await hub.stop();
    hub = await realHub(folder.current.path);
    const series = await hub.api('GET', `channels/${channel.id}/readings`);
    expect(series.readings).toHaveLength(1);
  });
});

describe('other ways in', () => {
  it('takes MQTT over WebSocket on the port of the wall', async () => {
    const channel = await benchChannel();
    const url = `${hub.wallUrl.replace('http', 'ws')}mqtt`;
    const client = await mqtt.connectAsync(url, { protocolVersion: 4, reconnectPeriod: 0 });
    await client.publishAsync('soakwatch/bench/readings', '[{"n":"chamber","u":"K","v":1133.15}]', {
      qos: 1,
    });
    await client.endAsync();
    const series = await hub.api('GET', `channels/${channel.id}/readings`);
    expect(series.readings).toEqual([expect.objectContaining({ value: expect.closeTo(860, 6) })]);
  });

  it('reads from a standard broker by URL, and that broker may be any', async () => {
    const other = temporaryFolder();
    const outside = await startMosquitto();
    const remote = await realHub(other.path, ['--broker', `mqtt://127.0.0.1:${outside.port}`]);
    const ear = new FeedEar(remote);
    await ear.hear((message) => message.type === 'snapshot');
    await runProgram('mosquitto_pub', [
      '-h',
      '127.0.0.1',
      '-p',
      String(outside.port),
      '-q',
      '1',
      '-t',
      'soakwatch/far/readings',
      '-m',
      '[{"n":"chamber","u":"Cel","v":500}]',
    ]);
    expect(await ear.hear((message) => message.type === 'reading')).toMatchObject({
      reading: { value: 500 },
    });
    ear.close();
    await remote.stop();
    await outside.stop();
    other.remove();
  });
});

describe('the live feed over a real socket', () => {
  it('resumes where a wall left off, and says so by sending no snapshot', async () => {
    await benchChannel();
    const first = new FeedEar(hub);
    const snapshot = await first.hear((message) => message.type === 'snapshot');
    first.close();
    await publish('soakwatch/bench/readings', '[{"n":"chamber","u":"Cel","v":700}]');
    const second = new FeedEar(hub, `?epoch=${snapshot.epoch}&after=${snapshot.seq}`);
    const [message] = [await second.hear(() => true)];
    expect(message?.type).not.toBe('snapshot');
    await second.hear(({ type }) => type === 'reading');
    second.close();
  });

  it('gives a fresh snapshot to a wall that remembers another start of the hub', async () => {
    const ear = new FeedEar(hub, '?epoch=of-yesterday&after=3');
    expect((await ear.hear(() => true)).type).toBe('snapshot');
    ear.close();
  });

  it('refuses a page from elsewhere', async () => {
    const url = `${hub.wallUrl.replace('http', 'ws')}api/v1/live`;
    const refused = new WebSocket(url, { headers: { origin: 'http://evil.example' } });
    const status = await new Promise((resolve) => {
      refused.on('unexpected-response', (_request, response) => resolve(response.statusCode));
      refused.on('open', () => resolve('open'));
    });
    expect(status).toBe(403);
  });
});

describe('a port that is taken', () => {
  it('is a clear error with its code, for MQTT and for HTTP, and nothing stays open', async () => {
    const other = temporaryFolder();
    const taken = new URL(hub.wallUrl).port;
    await expect(realHub(other.path, ['--mqtt-port', String(hub.mqttPort)])).rejects.toMatchObject({
      code: 'port-in-use',
    });
    await expect(realHub(other.path, ['--http-port', taken])).rejects.toMatchObject({ code: 'port-in-use' });
    // The archive of the refused hub was closed again: a third can open it.
    const third = await realHub(other.path);
    await third.stop();
    other.remove();
  });
});
