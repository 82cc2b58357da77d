import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { connectAsync, type MqttClient } from 'mqtt';
import { afterAll, bench, describe } from 'vitest';
import { openArchive } from '../../hub/archive/open.ts';
import { createEmbeddedBroker } from '../../hub/broker/embedded.ts';
import { createExternalBroker } from '../../hub/broker/external.ts';
import type { MessageSource } from '../../hub/broker/types.ts';
import { createCommitter } from '../../hub/intake/committer.ts';
import { createIntake, type Intake } from '../../hub/intake/intake.ts';
import { systemClock } from '../../hub/time/clock.ts';
import { startMosquitto } from '../broker/mosquitto.ts';

/**
 * The wire in, on a real file with full sync: published over MQTT with QoS 1, committed, acknowledged.
 * Run: npx vitest bench --run tests/bench/intake.bench.ts. Publisher and hub share one process and one thread
 * here, so the rates are of both together. Multiply the iterations a second by the messages of an iteration.
 */
const NODES = 4;
const FEW = { iterations: 5, warmupIterations: 1, time: 0, warmupTime: 0 };

const folder = mkdtempSync(join(tmpdir(), 'soakwatch-bench-'));
const cleanUp: (() => unknown)[] = [];
let counter = 0;
const next = () => {
  counter += 1;
  return counter;
};

afterAll(async () => {
  for (const undo of cleanUp.reverse()) await undo();
  rmSync(folder, { recursive: true });
});

/** Intake on a file of its own. */
function intakeOn(windowMs: number, maxWrites = 500): Intake {
  const path = join(folder, `${next()}.db`);
  const archive = openArchive({ path, ids: () => `id-${next()}`, simulated: true, now: 0 });
  cleanUp.push(() => archive.close());
  const committer = createCommitter({ archive, clock: systemClock, windowMs, maxWrites });
  return createIntake({ archive, committer, clock: systemClock });
}

async function startSource(source: MessageSource, intake: Intake): Promise<string> {
  const { address } = await source.start((message) => intake.accept(message));
  cleanUp.push(() => source.stop());
  return address;
}

async function nodesAt(url: string): Promise<readonly MqttClient[]> {
  const nodes = await Promise.all(Array.from({ length: NODES }, () => connectAsync(url)));
  for (const node of nodes) cleanUp.push(() => node.endAsync(true));
  return nodes;
}

/** Every reading has an instant of its own, so that none is a duplicate. */
function pack(entries: number): string {
  const channel = ['chamber', 'load', 'supply', 'air'];
  return JSON.stringify(
    Array.from({ length: entries }, (_, index) => ({
      n: channel[index % channel.length],
      u: 'Cel',
      t: 1_600_000_000 + next(),
      v: 850.25,
    })),
  );
}

/** Sends so many packs from all nodes at once and waits until all are acknowledged. */
async function send(nodes: readonly MqttClient[], packs: number, entries: number): Promise<void> {
  const sent = Array.from({ length: packs }, (_, index) =>
    nodes[index % nodes.length]?.publishAsync(`soakwatch/n${index % NODES}/readings`, pack(entries), {
      qos: 1,
    }),
  );
  await Promise.all(sent);
}

async function embedded(windowMs: number, maxWrites?: number): Promise<readonly MqttClient[]> {
  const broker = createEmbeddedBroker({
    bind: '127.0.0.1',
    port: 0,
    maxPacketBytes: 4 * 1024 * 1024,
    clock: systemClock,
  });
  return nodesAt(await startSource(broker, intakeOn(windowMs, maxWrites)));
}

describe('embedded broker, 1000 messages of one reading from 4 nodes', async () => {
  const alone = await embedded(0, 1);
  const turn = await embedded(0);
  const window = await embedded(5);
  bench('a commit for each message', () => send(alone, 1000, 1), FEW);
  bench('grouped until the next turn of the loop', () => send(turn, 1000, 1), FEW);
  bench('grouped for 5 ms', () => send(window, 1000, 1), FEW);
});

describe('embedded broker, backfill: 100 messages of 200 readings from 4 nodes', async () => {
  const window = await embedded(5);
  bench('grouped for 5 ms', () => send(window, 100, 200), FEW);
});

describe('mosquitto between, 200 messages of one reading from 4 nodes', async () => {
  async function through(windowMs: number) {
    const mosquitto = await startMosquitto(['max_queued_messages 0']);
    cleanUp.push(() => mosquitto.stop());
    const intake = intakeOn(windowMs);
    const url = `mqtt://127.0.0.1:${mosquitto.port}`;
    const source = createExternalBroker({
      url,
      clientId: `hub-${next()}`,
      subscriptions: () => intake.subscriptions(),
      clock: systemClock,
    });
    let waiting = { left: 0, done: () => {} };
    await source.start(async (message) => {
      await intake.accept(message);
      waiting.left -= 1;
      if (waiting.left === 0) waiting.done();
    });
    cleanUp.push(() => source.stop());
    const nodes = await nodesAt(url);
    // mosquitto acknowledges on its own: what counts here is when the hub has committed the last one.
    return async (packs: number) => {
      const stored = new Promise<void>((done) => {
        waiting = { left: packs, done };
      });
      await send(nodes, packs, 1);
      await stored;
    };
  }
  const turn = await through(0);
  const window = await through(5);
  bench('a window of nothing', () => turn(200), FEW);
  bench('a window of 5 ms', () => window(200), FEW);
});
