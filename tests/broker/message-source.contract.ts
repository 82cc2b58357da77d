import { connectAsync, type IClientOptions, type MqttClient } from 'mqtt';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { InboundMessage, MessageSource } from '../../hub/broker/types.ts';
import { createGate, createLog } from './log.ts';

/** A source in its surroundings. */
export interface Rig {
  readonly source: MessageSource;
  /** Where publishers connect, once the source has started. */
  readonly url: () => string;
  /** Told each time the source has sent a PUBACK: read off the wire, not asked of the source. */
  onAck(listener: () => void): void;
  stop(): Promise<void>;
}

type Accept = (message: InboundMessage) => Promise<void>;

const text = ({ payload }: InboundMessage): string => new TextDecoder().decode(payload);

interface Kind {
  /** The broker was there before the source, and may hold retained messages. */
  readonly brokerOutlivesSource: boolean;
}

/** What every message source promises (hub/broker/types.ts), whatever broker is behind it. */
export function messageSourceContract(name: string, make: () => Promise<Rig>, kind: Kind): void {
  describe(`${name} as a message source`, () => {
    let rig: Rig;
    const clients: MqttClient[] = [];

    beforeEach(async () => {
      rig = await make();
    });

    afterEach(async () => {
      for (const client of clients.splice(0)) await client.endAsync(true);
      await rig.stop();
    });

    async function publisher(options: IClientOptions = {}): Promise<MqttClient> {
      const client = await connectAsync(rig.url(), { reconnectPeriod: 20, ...options });
      client.on('error', () => {});
      clients.push(client);
      return client;
    }

    const start = async (accept: Accept) => void (await rig.source.start(accept));

    test('delivers in the order of publishing', async () => {
      const log = createLog();
      await start(async (message) => log.add(text(message)));
      const node = await publisher();

      const sent = Array.from({ length: 40 }, (_, index) => `${index}`);
      await Promise.all(sent.map((word) => node.publishAsync('soakwatch/n/readings', word, { qos: 1 })));
      await log.seen('39');

      expect(log.events).toEqual(sent);
    });

    test('takes what is sent without asking for an acknowledgement as well', async () => {
      const log = createLog();
      await start(async (message) => log.add(`${text(message)} q${message.qos}`));
      const node = await publisher();

      node.publish('soakwatch/n/readings', 'a', { qos: 0 });
      node.publish('soakwatch/n/readings', 'b', { qos: 0 });
      await log.seen('b q0');

      expect(log.events).toEqual(['a q0', 'b q0']);
    });

    test('acknowledges after accept has resolved and not before', async () => {
      const log = createLog();
      const gate = createGate();
      rig.onAck(() => log.add('acknowledged'));
      await start(async (message) => {
        log.add(`accepting ${text(message)}`);
        if (text(message) === 'a') await gate.passed;
        else throw new Error('only a was expected');
      });
      const node = await publisher();
      const bystander = await publisher();

      const sent = node.publishAsync('soakwatch/n/readings', 'a', { qos: 1 });
      await log.seen('accepting a');
      // A whole round trip of somebody else: time enough for an early acknowledgement to have been seen.
      await bystander.subscribeAsync('elsewhere/#', { qos: 1 });
      log.add('gate opens');
      gate.open();
      await sent;
      await log.seen('acknowledged');

      expect(log.events).toEqual(['accepting a', 'gate opens', 'acknowledged']);
    });

    test('a rejected accept is not acknowledged and comes again', async () => {
      const log = createLog();
      rig.onAck(() => log.add('acknowledged'));
      let attempts = 0;
      await start(async (message) => {
        attempts += 1;
        log.add(`${text(message)} attempt ${attempts}`);
        if (attempts < 3) throw new Error('the disk is full');
      });
      const node = await publisher();

      await node.publishAsync('soakwatch/n/readings', 'a', { qos: 1 });
      await log.seen('acknowledged');

      expect(log.events).toEqual(['a attempt 1', 'a attempt 2', 'a attempt 3', 'acknowledged']);
    });

    test('leaves topic and payload as they are', async () => {
      const log = createLog();
      const kept = new Map<string, Uint8Array>();
      await start(async ({ topic, payload }) => {
        kept.set(topic, Uint8Array.from(payload));
        log.add(topic);
      });
      const node = await publisher();
      const bytes = Buffer.from(Array.from({ length: 100_000 }, (_, index) => (index * 7) % 256));

      await node.publishAsync('soakwatch/n/readings', bytes, { qos: 1 });
      await node.publishAsync('soakwatch/Härteofen/readings', Buffer.alloc(0), { qos: 1 });
      await log.seen('soakwatch/Härteofen/readings');

      expect(Buffer.compare(kept.get('soakwatch/n/readings') ?? Buffer.alloc(0), bytes)).toBe(0);
      expect(kept.get('soakwatch/Härteofen/readings')).toHaveLength(0);
    });

    test('brings the last will of a node whose connection broke', async () => {
      const log = createLog();
      await start(async (message) => log.add(`${message.topic} ${text(message)}`));
      const will = {
        topic: 'soakwatch/n/status',
        payload: Buffer.from('offline'),
        qos: 1,
        retain: true,
      } as const;
      const node = await publisher({ will, reconnectPeriod: 0 });

      await node.publishAsync('soakwatch/n/status', 'online', { qos: 1, retain: true });
      await log.seen('soakwatch/n/status online');
      node.stream.destroy();
      await log.seen('soakwatch/n/status offline');

      expect(log.events).toEqual(['soakwatch/n/status online', 'soakwatch/n/status offline']);
    });

    test('a message that is published now is current, retained or not', async () => {
      const log = createLog();
      await start(async (message) => log.add(`${text(message)} ${message.fromRetained}`));
      const node = await publisher();

      await node.publishAsync('soakwatch/n/status', 'online', { qos: 1, retain: true });
      await log.seen('online false');

      expect(log.events).toEqual(['online false']);
    });

    // Where the broker begins with the source there is no before.
    if (kind.brokerOutlivesSource) {
      test('a retained message from before is marked as such', async () => {
        const log = createLog();
        const early = await publisher();
        await early.publishAsync('soakwatch/n/status', 'online', { qos: 1, retain: true });

        await start(async (message) => log.add(`${text(message)} ${message.fromRetained}`));
        await log.seen('online true');

        expect(log.events).toEqual(['online true']);
      });
    }

    test('publishes for the hub, and not to the hub', async () => {
      const log = createLog();
      await start(async (message) => log.add(`hub ${message.topic}`));
      const siren = await publisher();
      siren.on('message', (topic, payload) => log.add(`${topic} ${payload}`));
      await siren.subscribeAsync('siren/1', { qos: 1 });

      await rig.source.publish('siren/1', 'on', { qos: 1, retain: true });
      await log.seen('siren/1 on');

      expect(log.events).toEqual(['siren/1 on']);
    });

    test('stops, and stopping again is no fault', async () => {
      await start(async () => {});
      await rig.source.stop();
      await rig.source.stop();

      await expect(rig.source.publish('x', 'y', { qos: 0, retain: false })).rejects.toMatchObject({
        name: 'BrokerError',
      });
    });
  });
}
