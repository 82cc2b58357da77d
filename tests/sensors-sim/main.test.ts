/** The program itself, as a process. */
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { afterEach, describe, expect, test, vi } from 'vitest';
import { startBroker, type TestBroker } from './broker.ts';
import { resolve } from './packs.ts';

const ENTRY = new URL('../../sensors-sim/main.ts', import.meta.url).pathname;
let broker: TestBroker | null = null;

afterEach(async () => {
  await broker?.close();
  broker = null;
});

function start(args: readonly string[]) {
  const child = spawn(process.execPath, ['--import', 'tsx', ENTRY, ...args]);
  const said = { out: '', err: '' };
  child.stdout.on('data', (chunk) => {
    said.out += String(chunk);
  });
  child.stderr.on('data', (chunk) => {
    said.err += String(chunk);
  });
  return { child, said };
}

async function finished(args: readonly string[]) {
  const { child, said } = start(args);
  const [code] = await once(child, 'close');
  return { code, ...said };
}

describe('the simulator program', () => {
  test('sends its past and its present, says goodbye on SIGTERM and ends with 0', async () => {
    broker = await startBroker();
    const { received, url } = broker;
    const { child, said } = start(['--mqtt', url, '--history-hours', '1', '--seed', '3']);
    const readings = () => received.filter((each) => each.topic === 'soakwatch/oven-node/readings');
    await vi.waitFor(() => expect(readings().length).toBeGreaterThan(3600 / 5 / 20 + 1), { timeout: 15_000 });
    child.kill('SIGTERM');
    const [code] = await once(child, 'close');
    expect(code).toBe(0);
    const last = (node: string) => received.findLast((each) => each.topic === `soakwatch/${node}/status`);
    for (const node of ['forge-node', 'oven-node', 'air-node']) {
      expect(last(node)).toMatchObject({ payload: 'offline', retain: true });
    }
    const plan: unknown = JSON.parse(/^history-plan (.*)$/m.exec(said.out)?.[1] ?? '');
    expect(plan).toMatchObject({ seed: 3, live: [{ furnace: 'oven' }, { furnace: 'forge' }] });
    const times = readings().flatMap((each) => resolve(each.payload).map((reading) => reading.atMs));
    expect(times).toEqual([...times].sort((one, two) => one - two));
  });

  test('prints each start of a firing while it lives', async () => {
    broker = await startBroker();
    const { child, said } = start(['--mqtt', broker.url, '--history-hours', '0', '--speed', '60']);
    await vi.waitFor(() => expect(said.out.match(/^event /gm)).toHaveLength(2), { timeout: 15_000 });
    child.kill('SIGINT');
    const [code] = await once(child, 'close');
    expect(code).toBe(0);
    const events = [...said.out.matchAll(/^event (.*)$/gm)].map((match): unknown =>
      JSON.parse(match[1] ?? ''),
    );
    expect(events).toEqual([
      expect.objectContaining({ furnace: 'forge', plan: 'forge-anneal', what: 'started' }),
      expect.objectContaining({ furnace: 'oven', plan: 'oven-temper', what: 'started' }),
    ]);
  });

  test('prints the plan of its past as one line of JSON', async () => {
    const { code, out } = await finished([
      '--print-plan',
      '--now-ms',
      '1700000000000',
      '--history-hours',
      '4',
    ]);
    expect(code).toBe(0);
    expect(JSON.parse(out)).toMatchObject({ nowMs: 1_700_000_000_000, past: [{ plan: 'forge-normalise' }] });
  });

  test('says what is wrong with a flag and ends with 2', async () => {
    const { code, out, err } = await finished(['--speed', 'fast']);
    expect(code).toBe(2);
    expect(out).toBe('');
    expect(err).toBe("sensors-sim: bad-flag: --speed takes a number from 0.1 to 3600, not 'fast'\n");
  });
});
