import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { createInterface } from 'node:readline';
import { fileURLToPath } from 'node:url';
import Database from 'better-sqlite3';
import { describe, expect, it, onTestFinished } from 'vitest';
import { openTest, temporaryFile } from './helpers.ts';

const WRITER = fileURLToPath(new URL('./kill-writer.ts', import.meta.url));

function startWriter(path: string, firstGroup: number): ChildProcess {
  const writer = spawn(process.execPath, ['--import', 'tsx', WRITER, path, String(firstGroup)], {
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  onTestFinished(() => void writer.kill('SIGKILL'));
  return writer;
}

/** Lets the writer report `groups` commits, kills it without warning, and gives the last group it reported. */
async function killAfter(writer: ChildProcess, groups: number): Promise<number> {
  const ended = once(writer, 'exit');
  if (!writer.stdout) throw new Error('the writer has no standard output');
  let reports = 0;
  let last = -1;
  for await (const line of createInterface(writer.stdout)) {
    last = Number(line);
    reports += 1;
    if (reports === groups) writer.kill('SIGKILL');
  }
  const [code, signal] = await ended;
  expect({ code, signal }).toEqual({ code: null, signal: 'SIGKILL' });
  return last;
}

function integrity(path: string): unknown {
  const db = new Database(path, { readonly: true });
  try {
    return [db.pragma('integrity_check', { simple: true }), db.pragma('foreign_key_check')];
  } finally {
    db.close();
  }
}

describe('a hub that is killed while it commits', { timeout: 60_000 }, () => {
  it('has kept everything that it reported, whole groups only, and the file is sound', async () => {
    const path = temporaryFile();
    let next = 0;
    for (const groups of [1, 37, 200]) {
      const reported = await killAfter(startWriter(path, next), groups);
      const archive = openTest(path);
      const kept = archive
        .channels()
        .flatMap(({ id }) => archive.readings.range(id, 0, Number.MAX_SAFE_INTEGER))
        .sort((a, b) => a.at - b.at);
      // One more group may have been committed and not yet reported when the signal came.
      expect([reported + 1, reported + 2]).toContain(kept.length / 10);
      expect(kept.every(({ at, value }, n) => at === n && value === Math.floor(n / 10))).toBe(true);
      next = kept.length / 10;
      archive.close();
      expect(integrity(path)).toEqual(['ok', []]);
    }
  });

  it('kept others out while it lived, and leaves no lock behind', async () => {
    const path = temporaryFile();
    const writer = startWriter(path, 0);
    const ended = once(writer, 'exit');
    if (writer.stdout) await Promise.race([once(writer.stdout, 'data'), ended]);
    expect(writer.exitCode).toBeNull();
    expect(() => openTest(path)).toThrow(expect.objectContaining({ code: 'archive-busy' }));
    writer.kill('SIGKILL');
    await ended;
    expect(openTest(path).channels()).toHaveLength(2);
  });
});
