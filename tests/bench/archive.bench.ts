import { mkdtempSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, bench, describe } from 'vitest';
import { openArchive } from '../../hub/archive/open.ts';
import type { IntakeWrite } from '../../hub/archive/types.ts';

/**
 * The archive on a real file with full sync. Run: npx vitest bench tests/bench/archive.bench.ts
 * Figures depend on the disk: a flash card may take fifty times as long for a commit.
 */
const HOUR_MS = 3_600_000;
const DAYS = 30;
const TOTAL = (DAYS * 24 * HOUR_MS) / 1000;

const folder = mkdtempSync(join(tmpdir(), 'soakwatch-bench-'));
const path = join(folder, 'shop.soakwatch');
let made = 0;
const ids = () => {
  made += 1;
  return `id-${made}`;
};
const archive = openArchive({ path, ids, simulated: true, now: 0 });
afterAll(() => {
  archive.close();
  rmSync(folder, { recursive: true });
});

function channelOf(name: string) {
  return archive.createChannel(
    {
      node: 'bench',
      name,
      label: '',
      quantity: 'temperature',
      unit: null,
      role: 'other',
      furnaceId: null,
      possibleLow: null,
      possibleHigh: null,
      staleAfterSeconds: 20,
    },
    0,
  );
}

/** One reading a second, in 0.25 °C steps as a thermocouple amplifier gives them. */
function value(second: number): number {
  return Math.round(4 * (800 + 20 * Math.sin(second / 900) + ((second * 7919) % 13) / 10)) / 4;
}

function payload(name: string, first: number, count: number): IntakeWrite {
  const readings = Array.from({ length: count }, (_, n) => ({
    name,
    quantity: 'temperature' as const,
    at: (first + n) * 1000,
    value: value(first + n),
    quality: 'good' as const,
  }));
  return { node: 'bench', receivedAt: first * 1000, readings, refusals: [] };
}

const month = channelOf('month');
for (let second = 0; second < TOTAL; second += 10_000) {
  archive.commitIntake([payload('month', second, Math.min(10_000, TOTAL - second))]);
}
console.log(`${TOTAL} readings in ${statSync(path).size} bytes`);
for (let n = 0; n < 100; n += 1) channelOf(`live-${n}`);

/** Payloads of one reading each, from 100 channels in turn, in groups as the intake commits them. */
describe('commits of payloads with one reading, 100 channels in turn', () => {
  let next = 0;
  for (const size of [1, 10, 100, 1000]) {
    bench(`a group of ${size}`, () => {
      const group = Array.from({ length: size }, (_, n) => payload(`live-${(next + n) % 100}`, next + n, 1));
      next += size;
      archive.commitIntake(group);
    });
  }
});

describe('a chart of one channel at one reading a second', () => {
  const spans: [string, number][] = [
    ['1 h', 1],
    ['8 h', 8],
    ['30 d', DAYS * 24],
  ];
  for (const [name, hours] of spans) {
    bench(`${name}, 2000 points`, () => {
      archive.readings.series(month, 0, hours * HOUR_MS - 1, 2000);
    });
  }
});
