import { spawn } from 'node:child_process';
import { once } from 'node:events';
import type { Readable } from 'node:stream';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { type WiredHub, wiredHub } from '../intake/wire-support.ts';
import { ended, needs } from './mosquitto.ts';

const PUBLISH = '/usr/bin/mosquitto_pub';
const SUBSCRIBE = '/usr/bin/mosquitto_sub';

let hub: WiredHub;
const cleanUp: (() => unknown)[] = [];

beforeEach(async () => {
  needs(PUBLISH, 'mosquitto-clients');
  needs(SUBSCRIBE, 'mosquitto-clients');
  hub = await wiredHub();
});

afterEach(async () => {
  for (const undo of cleanUp.splice(0).reverse()) await undo();
  await hub.stop();
});

function run(program: string, args: readonly string[]) {
  const child = spawn(program, ['-h', '127.0.0.1', '-p', `${hub.port}`, ...args]);
  cleanUp.push(() => ended(child, 'SIGKILL'));
  return child;
}

/** Publishes with mosquitto_pub and waits for its end; fails when it says that it failed. */
async function publish(args: readonly string[], input = ''): Promise<void> {
  const child = run(PUBLISH, args);
  let said = '';
  child.stderr.on('data', (chunk: Buffer) => {
    said += chunk.toString();
  });
  child.stdin.end(input);
  const [code] = await once(child, 'exit');
  if (code !== 0) throw new Error(`mosquitto_pub ended with ${code}: ${said}`);
}

/** Reads `count` messages with mosquitto_sub, as "topic payload" lines. */
async function receive(filter: string, count: number): Promise<string> {
  const child = run(SUBSCRIBE, ['-t', filter, '-q', '1', '-v', '-C', `${count}`]);
  let said = '';
  child.stdout.on('data', (chunk: Buffer) => {
    said += chunk.toString();
  });
  await once(child, 'close');
  return said;
}

/** Everything from now on up to the piece of output that has `words` in it. */
async function says(output: Readable, words: string): Promise<string> {
  let said = '';
  while (!said.includes(words)) said += String((await once(output, 'data'))[0]);
  return said;
}

const READINGS = 'soakwatch/forge-1/readings';
const STATUS = 'soakwatch/forge-1/status';

describe('Debian’s mosquitto_pub and mosquitto_sub', () => {
  test('a reading sent with -q 1 is in the archive when the program has ended', async () => {
    await publish(['-q', '1', '-t', READINGS, '-m', '[{"n":"chamber","u":"Cel","v":861.5}]']);

    expect(hub.values('forge-1', 'chamber')).toEqual([861.5]);
  });

  test('a reading sent with -q 0 arrives as well', async () => {
    const stored = hub.committed(({ readings }) => readings.length > 0);
    await publish(['-q', '0', '-t', READINGS, '-m', '[{"n":"chamber","u":"[degF]","v":1562}]']);
    await stored;

    expect(hub.values('forge-1', 'chamber')).toEqual([expect.closeTo(850, 9)]);
  });

  test('many lines on one connection are all there in the end', async () => {
    const line = (value: number) => `[{"n":"chamber","u":"Cel","t":${1_700_000_000 + value},"v":${value}}]\n`;
    const values = Array.from({ length: 200 }, (_, index) => index);
    await publish(['-q', '1', '-t', READINGS, '-l'], values.map(line).join(''));

    expect(hub.values('forge-1', 'chamber')).toEqual(values);
  });

  test('a status sent with -r is kept, and handed to who subscribes later', async () => {
    await publish(['-q', '1', '-r', '-t', STATUS, '-m', 'online']);

    expect(hub.archive.node('forge-1')?.status).toBe('online');
    expect(await receive('soakwatch/+/status', 1)).toBe(`${STATUS} online\n`);
  });

  test('the last will of a killed program puts its node offline', async () => {
    await publish(['-q', '1', '-r', '-t', STATUS, '-m', 'online']);
    const will = ['--will-topic', STATUS, '--will-payload', 'offline', '--will-qos', '1', '--will-retain'];
    const node = run(SUBSCRIBE, ['-t', STATUS, '-q', '1', ...will]);
    // It has said something, so it is connected and its will is known.
    await once(node.stdout, 'data');

    const offline = hub.committed(({ nodes }) => nodes.some(({ status }) => status === 'offline'));
    node.kill('SIGKILL');
    await offline;

    expect(hub.archive.node('forge-1')?.status).toBe('offline');
    expect(await receive(STATUS, 1)).toBe(`${STATUS} offline\n`);
  });

  test('a program that ends in order leaves no will behind', async () => {
    await publish(['-q', '1', '-r', '-t', STATUS, '-m', 'online']);
    const will = ['--will-topic', STATUS, '--will-payload', 'offline', '--will-qos', '1', '--will-retain'];
    await publish(['-q', '1', ...will, '-t', READINGS, '-m', '[{"n":"t","u":"Cel","v":1}]']);
    await publish(['-q', '1', '-t', READINGS, '-m', '[{"n":"t","u":"Cel","v":2,"t":1700000000}]']);

    expect(hub.archive.node('forge-1')?.status).toBe('online');
  });

  test('what a node publishes reaches other listeners unchanged', async () => {
    const listener = run(SUBSCRIBE, ['-t', 'soakwatch/#', '-q', '1', '-v']);
    // Retained or live, the status comes: after that the listener is surely subscribed.
    await publish(['-q', '1', '-r', '-t', STATUS, '-m', 'online']);
    await says(listener.stdout, `${STATUS} online\n`);
    const heard = says(listener.stdout, READINGS);
    await publish(['-q', '1', '-t', READINGS, '-m', '[{"n":"t","u":"Cel","v":1}]']);

    expect(await heard).toContain(`${READINGS} [{"n":"t","u":"Cel","v":1}]\n`);
  });

  test('rubbish is acknowledged, refused and counted, and the next reading is stored', async () => {
    await publish(['-q', '1', '-t', READINGS, '-m', 'temp=861.5']);
    await publish(['-q', '1', '-t', READINGS, '-m', '[{"n":"chamber","u":"Cel","v":861.5}]']);

    expect(hub.archive.node('forge-1')?.refused).toMatchObject({ 'bad-json': 1 });
    expect(hub.values('forge-1', 'chamber')).toEqual([861.5]);
  });
});
