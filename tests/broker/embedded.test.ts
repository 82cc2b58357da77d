import { createServer } from 'node:http';
import { PassThrough } from 'node:stream';
import { connectAsync } from 'mqtt';
import { afterEach, describe, expect, test } from 'vitest';
import { createWebSocketStream, WebSocketServer } from 'ws';
import { createEmbeddedBroker, type EmbeddedBrokerOptions } from '../../hub/broker/embedded.ts';
import type { InboundMessage } from '../../hub/broker/types.ts';
import { systemClock } from '../../hub/time/clock.ts';
import { createGate, createLog } from './log.ts';
import { connectPacket, publishPacket, rawClient, rawNode } from './raw-client.ts';

const MEBIBYTE = 1024 * 1024;
const cleanUp: (() => unknown)[] = [];

afterEach(async () => {
  for (const undo of cleanUp.splice(0).reverse()) await undo();
});

type Accept = (message: InboundMessage) => Promise<void>;
const text = ({ payload }: InboundMessage): string => new TextDecoder().decode(payload);

async function running(accept: Accept, options: Partial<EmbeddedBrokerOptions> = {}) {
  const broker = createEmbeddedBroker({
    bind: '127.0.0.1',
    port: 0,
    maxPacketBytes: 4 * MEBIBYTE,
    clock: systemClock,
    ...options,
  });
  const { address } = await broker.start(accept);
  cleanUp.push(() => broker.stop());
  return { broker, address, port: Number(new URL(address).port) };
}

async function node(port: number, clientId = 'node') {
  const client = await rawNode(port, clientId);
  cleanUp.push(() => client.end());
  return client;
}

describe('acknowledgements', () => {
  test('of pipelined messages leave in the order of arrival, whatever order their commits end in', async () => {
    const gates = [createGate(), createGate(), createGate()];
    const log = createLog();
    const { port } = await running(async (message) => {
      log.add(text(message));
      await gates[Number(text(message))]?.passed;
    });
    const client = await node(port);

    client.send(publishPacket('t', '0', 10), publishPacket('t', '1', 11), publishPacket('t', '2', 12));
    // All three wait at once: this is what lets them share one commit.
    await log.seen('2');
    for (const gate of [...gates].reverse()) gate.open();

    const acknowledged = [await client.next(), await client.next(), await client.next()];
    expect(acknowledged.map(({ cmd, messageId }) => [cmd, messageId])).toEqual([
      ['puback', 10],
      ['puback', 11],
      ['puback', 12],
    ]);
  });

  test('of one client do not wait for another', async () => {
    const gate = createGate();
    const log = createLog();
    const { port } = await running(async (message) => {
      log.add(text(message));
      if (text(message) === 'slow') await gate.passed;
    });
    const slow = await node(port, 'slow');
    const quick = await node(port, 'quick');

    slow.send(publishPacket('t', 'slow', 1));
    await log.seen('slow');
    quick.send(publishPacket('t', 'quick', 2));

    expect(await quick.next()).toMatchObject({ cmd: 'puback', messageId: 2 });
    gate.open();
    expect(await slow.next()).toMatchObject({ cmd: 'puback', messageId: 1 });
  });

  test('a failed commit closes the connection without one, and tells the hub', async () => {
    const faults: unknown[] = [];
    const full = new Error('the disk is full');
    const { port } = await running(() => Promise.reject(full), { onFault: (fault) => faults.push(fault) });
    const client = await node(port);

    client.send(publishPacket('t', 'a', 1));
    await client.closed;

    await expect(client.next()).rejects.toThrow('the connection was closed');
    expect(faults).toEqual([full]);
  });

  test('also of the second quality of service come after the commit', async () => {
    const log = createLog();
    let failing = true;
    const { address } = await running(async (message) => {
      log.add(`${text(message)} ${failing ? 'lost' : 'kept'}`);
      if (!failing) return;
      failing = false;
      throw new Error('the disk is full');
    });
    const client = await connectAsync(address, { reconnectPeriod: 20 });
    client.on('error', () => {});
    cleanUp.push(() => client.endAsync(true));

    await client.publishAsync('t', 'a', { qos: 2 });

    expect(log.events).toEqual(['a lost', 'a kept']);
  });
});

describe('what a peer may do', () => {
  test('to publish under $SYS ends the connection and reaches nobody', async () => {
    const log = createLog();
    const { port } = await running(async (message) => log.add(message.topic));
    const client = await node(port);

    client.send(publishPacket('$SYS/x', 'a', 1));
    await client.closed;

    expect(log.events).toEqual([]);
  });

  test('a payload of two megabytes reaches the hub, which is the one to refuse it', async () => {
    const log = createLog();
    const { port } = await running(async ({ payload }) => log.add(`${payload.length}`));
    const client = await node(port);

    client.send(publishPacket('t', Buffer.alloc(2_000_000), 1));

    expect(await client.next()).toMatchObject({ cmd: 'puback', messageId: 1 });
    expect(log.events).toEqual(['2000000']);
  });

  test('to announce a packet beyond the bound ends the connection at the announcement', async () => {
    const seen: unknown[] = [];
    const log = createLog();
    const { port } = await running(async (message) => log.add(text(message)), {
      onOversize: (what) => seen.push(what),
    });
    const client = await node(port, 'greedy');
    const other = await node(port, 'other');

    client.sendBytes(Uint8Array.of(0x30, 0x80, 0x80, 0x80, 0x04));
    await client.closed;
    other.send(publishPacket('t', 'still here', 1));

    expect(await other.next()).toMatchObject({ cmd: 'puback' });
    expect(seen).toEqual([{ clientId: 'greedy', bytes: 8 * MEBIBYTE + 5 }]);
    expect(log.events).toEqual(['still here']);
  });

  test('connections beyond the bound are closed; when one leaves, there is room again', async () => {
    const faults: unknown[] = [];
    const { port } = await running(async () => {}, {
      maxConnections: 2,
      onFault: (fault) => faults.push(fault),
    });
    const first = await node(port, 'first');
    const second = await node(port, 'second');

    const third = await rawClient(port);
    await third.closed;
    expect(faults).toMatchObject([{ code: 'too-many-connections' }]);

    second.end();
    await second.closed;
    first.send(publishPacket('t', 'a', 1));
    expect(await first.next()).toMatchObject({ cmd: 'puback' });
    await node(port, 'third');
  });

  test('a connection that never says who it is is closed', async () => {
    const { port } = await running(async () => {}, { connectTimeoutMs: 30 });
    const silent = await rawClient(port);

    await silent.closed;

    expect(silent.socket.destroyed).toBe(true);
  });

  test.each([
    ['noise', Buffer.from('GET / HTTP/1.1\r\n\r\n')],
    ['a length without end', Uint8Array.of(0x10, 0xff, 0xff, 0xff, 0xff, 0xff)],
    ['a publish before the connect', Uint8Array.of(0x30, 0x03, 0x00, 0x01, 0x74)],
  ])('%s ends the connection and nothing else', async (_what, bytes) => {
    const { port } = await running(async () => {});
    const client = await rawClient(port);

    client.sendBytes(bytes);
    await client.closed;

    const other = await node(port);
    other.send(publishPacket('t', 'a', 1));
    expect(await other.next()).toMatchObject({ cmd: 'puback' });
  });

  test('a second client of the same name takes the place of the first', async () => {
    const { port } = await running(async () => {});
    const first = await node(port, 'same');

    await node(port, 'same');
    await first.closed;

    expect(first.socket.destroyed).toBe(true);
  });
});

describe('life', () => {
  test('a stream that comes while the broker is down is closed', async () => {
    const broker = createEmbeddedBroker({
      bind: '127.0.0.1',
      port: 0,
      maxPacketBytes: MEBIBYTE,
      clock: systemClock,
    });
    const stream = new PassThrough();

    broker.handleStream(stream);

    expect(stream.destroyed).toBe(true);
  });

  test('a taken port is told with the port and what to do', async () => {
    const { port } = await running(async () => {});
    const second = createEmbeddedBroker({
      bind: '127.0.0.1',
      port,
      maxPacketBytes: MEBIBYTE,
      clock: systemClock,
    });

    const refusal = expect(second.start(async () => {})).rejects;
    await refusal.toMatchObject({
      name: 'BrokerError',
      code: 'port-in-use',
      message: expect.stringMatching(new RegExp(`${port}.*--mqtt-port`)),
    });
  });

  test('an address that is not ours is told as such', async () => {
    const broker = createEmbeddedBroker({
      bind: '192.0.2.1',
      port: 0,
      maxPacketBytes: MEBIBYTE,
      clock: systemClock,
    });

    await expect(broker.start(async () => {})).rejects.toMatchObject({ code: 'cannot-listen' });
  });

  test('stopping closes every connection and does not take its own leaving for the nodes’ last will', async () => {
    const log = createLog();
    const { broker, port } = await running(async (message) => log.add(`${message.topic} ${text(message)}`));
    const client = await rawClient(port);
    const will = {
      topic: 'soakwatch/n/status',
      payload: Buffer.from('offline'),
      qos: 1,
      retain: true,
    } as const;
    client.send({ ...connectPacket('n'), will } as Parameters<typeof client.send>[0]);
    expect(await client.next()).toMatchObject({ cmd: 'connack' });

    await broker.stop();
    await client.closed;

    expect(log.events).toEqual([]);
    await expect(rawClient(port)).rejects.toThrow('no connection');
  });

  test('a retained status is handed to whoever subscribes later', async () => {
    const { address } = await running(async () => {});
    const log = createLog();
    const sender = await connectAsync(address);
    await sender.publishAsync('soakwatch/n/status', 'online', { qos: 1, retain: true });
    const viewer = await connectAsync(address);
    viewer.on('message', (_topic, payload, { retain }) => log.add(`${payload} ${retain}`));
    cleanUp.push(
      () => sender.endAsync(true),
      () => viewer.endAsync(true),
    );

    await viewer.subscribeAsync('soakwatch/+/status', { qos: 1 });
    await log.seen('online true');

    expect(log.events).toEqual(['online true']);
  });

  test('MQTT comes in over a WebSocket as well', async () => {
    const log = createLog();
    const { broker } = await running(async (message) => log.add(text(message)));
    const sockets = new WebSocketServer({ noServer: true, handleProtocols: () => 'mqtt' });
    const web = createServer();
    web.on('upgrade', (request, socket, head) => {
      sockets.handleUpgrade(request, socket, head, (ws) =>
        broker.handleStream(createWebSocketStream(ws), request),
      );
    });
    await new Promise<void>((resolve) => web.listen(0, '127.0.0.1', () => resolve()));
    const address = web.address();
    const port = typeof address === 'object' && address ? address.port : 0;
    cleanUp.push(() => new Promise((resolve) => web.close(resolve)));

    const client = await connectAsync(`ws://127.0.0.1:${port}/mqtt`);
    cleanUp.push(() => client.endAsync(true));
    await client.publishAsync('t', 'over the web', { qos: 1 });

    expect(log.events).toEqual(['over the web']);
  });
});
