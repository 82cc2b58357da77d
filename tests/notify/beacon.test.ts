import { connectAsync, type MqttClient } from 'mqtt';
import { afterEach, describe, expect, it } from 'vitest';
import { createEmbeddedBroker } from '../../hub/broker/embedded.ts';
import { createExternalBroker } from '../../hub/broker/external.ts';
import type { MessageSource } from '../../hub/broker/types.ts';
import { createBeacon, HUB_DEAD, hubTopic } from '../../hub/notify/beacon.ts';
import { lightState } from '../../hub/notify/light.ts';
import { virtualClock } from '../../hub/time/virtual-clock.ts';
import { startMosquitto } from '../broker/mosquitto.ts';
import { MORNING } from '../harness/shop.ts';

const PREFIX = 'my-shop/out';
const closing: (() => Promise<unknown>)[] = [];
afterEach(async () => {
  for (const close of closing.splice(0).reverse()) await close();
});

/** A light on the network: it waits for what it is told. */
async function light(port: number) {
  const client: MqttClient = await connectAsync(`mqtt://127.0.0.1:${port}`, { reconnectPeriod: 0 });
  closing.push(() => client.endAsync(true));
  const heard: { topic: string; text: string; retained: boolean }[] = [];
  let wake = (): void => {};
  client.on('message', (topic, payload, { retain }) => {
    heard.push({ topic, text: payload.toString(), retained: retain });
    wake();
  });
  await client.subscribeAsync(`${PREFIX}/#`, { qos: 1 });
  return {
    heard,
    async hears(topic: string, text: string | RegExp): Promise<(typeof heard)[number]> {
      for (;;) {
        const found = heard.find((one) => one.topic === topic && one.text.search(text) >= 0);
        if (found) return found;
        await new Promise<void>((resolve) => {
          wake = resolve;
        });
      }
    },
  };
}

function world() {
  const clock = virtualClock(MORNING);
  let alarms: Parameters<typeof lightState>[0] = [];
  let isHealthy = true;
  const faults: unknown[] = [];
  const parts = {
    clock,
    prefix: () => PREFIX,
    everySeconds: () => 10,
    light: () => lightState(alarms, clock.now()),
    healthy: () => isHealthy,
    onFault: (fault: unknown) => faults.push(fault),
  };
  const danger = {
    kind: 'unsafe-air-second',
    priority: 'danger',
    state: 'unacknowledged',
    title: 'Go out',
  } as const;
  return {
    clock,
    parts,
    faults,
    alarm: () => {
      alarms = [danger];
    },
    failJudging: () => {
      isHealthy = false;
    },
  };
}

async function embedded() {
  const broker = createEmbeddedBroker({
    bind: '127.0.0.1',
    port: 0,
    maxPacketBytes: 65_536,
    clock: virtualClock(MORNING),
  });
  const { address } = await broker.start(async () => {});
  closing.push(() => broker.stop());
  return { broker, port: Number(new URL(address).port) };
}

/** A publish that keeps what was said, for questions about time. */
function recorder(): { publish: MessageSource['publish']; topics: () => string[]; clear: () => void } {
  const said: string[] = [];
  return {
    publish: async (topic, payload, { retain }) => {
      said.push(
        `${topic.slice(PREFIX.length + 1)}${retain ? ' retained' : ''}${payload === '' ? ' cleared' : ''}`,
      );
    },
    topics: () => said,
    clear: () => said.splice(0),
  };
}
const settled = () => new Promise<void>((resolve) => setImmediate(resolve));

describe('a light on the embedded broker', () => {
  it('is told at once when it connects later, in JSON and in single words', async () => {
    const { broker, port } = await embedded();
    const shop = world();
    const beacon = createBeacon(shop.parts, (...args) => broker.publish(...args));
    shop.alarm();
    beacon.tick();
    await settled();
    const lamp = await light(port);
    const state = await lamp.hears(`${PREFIX}/light`, 'danger');
    expect(state.retained).toBe(true);
    expect(JSON.parse(state.text)).toMatchObject({
      state: 'danger',
      colour: 'red',
      flashHertz: 2,
      words: 'Go out',
    });
    expect((await lamp.hears(`${PREFIX}/light/colour`, 'red')).retained).toBe(true);
    expect((await lamp.hears(`${PREFIX}/light/flash`, '2')).text).toBe('2');
    expect((await lamp.hears(`${PREFIX}/light/sound`, 'danger')).text).toBe('danger');
    expect((await lamp.hears(hubTopic(PREFIX), 'watching')).text).toBe('watching');
    expect(lamp.heard.some(({ topic }) => topic.endsWith('/heartbeat'))).toBe(false);
    expect(shop.faults).toEqual([]);
  });
});

describe('a light on a broker of its own', () => {
  it('is told by the broker when the hub dies without a word, and by the hub when it stops', async () => {
    const mosquitto = await startMosquitto();
    closing.push(() => mosquitto.stop());
    const lamp = await light(mosquitto.port);
    const start = async () => {
      const broker = createExternalBroker({
        url: `mqtt://127.0.0.1:${mosquitto.port}`,
        clientId: 'soakwatch-test',
        clock: virtualClock(MORNING),
        subscriptions: () => [],
        lastWill: () => ({ topic: hubTopic(PREFIX), payload: HUB_DEAD }),
      });
      await broker.start(async () => {});
      return { broker, beacon: createBeacon(world().parts, (...args) => broker.publish(...args)) };
    };
    const first = await start();
    closing.push(() => first.broker.stop());
    first.beacon.tick();
    await lamp.hears(hubTopic(PREFIX), 'watching');
    await first.beacon.stop();
    await lamp.hears(hubTopic(PREFIX), 'stopped');
    // Cut off without DISCONNECT, as when the machine loses its power.
    await first.broker.stop();
    expect((await lamp.hears(hubTopic(PREFIX), HUB_DEAD)).text).toBe('dead');
  });
});

describe('the heartbeat', () => {
  it('comes every ten seconds with its time and period, and is never retained', async () => {
    const shop = world();
    const { publish, topics, clear } = recorder();
    const beacon = createBeacon(shop.parts, publish);
    beacon.tick();
    await settled();
    expect(topics()).toContain('heartbeat');
    clear();
    for (let second = 1; second < 10; second++) {
      shop.clock.advance(1000);
      beacon.tick();
    }
    await settled();
    expect(topics()).toEqual([]);
    shop.clock.advance(1000);
    beacon.tick();
    await settled();
    expect(topics().filter((topic) => topic === 'heartbeat')).toHaveLength(1);
  });

  it('stops when judging fails, while an alarm is still told', async () => {
    const shop = world();
    const { publish, topics, clear } = recorder();
    const beacon = createBeacon(shop.parts, publish);
    beacon.tick();
    await settled();
    shop.failJudging();
    clear();
    shop.clock.advance(60_000);
    beacon.tick();
    await settled();
    expect(topics()).toEqual([]);
    shop.alarm();
    beacon.tick();
    await settled();
    expect(topics()).toContain('light retained');
    expect(topics()).not.toContain('heartbeat');
  });

  it('says when it counts as dead: after three that did not come', async () => {
    const shop = world();
    let said = '';
    const beacon = createBeacon(shop.parts, async (topic, payload) => {
      if (topic.endsWith('/heartbeat')) said = payload;
    });
    beacon.tick();
    await settled();
    expect(JSON.parse(said)).toEqual({ at: MORNING, everySeconds: 10, deadAfterSeconds: 30 });
  });
});
