import { execFileSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import type { Database } from 'better-sqlite3';
import { describe, expect, it, onTestFinished } from 'vitest';
import { assemble } from '../../hub/archive/assemble.ts';
import { openDatabase } from '../../hub/archive/database.ts';
import type { Archive } from '../../hub/archive/types.ts';
import { addChannel, countingIds, incoming, intake, openTest, T0, temporaryFile } from './helpers.ts';

const withCode = (code: string) => expect.objectContaining({ name: 'ArchiveError', code });

function openWithHandle(path: string): { archive: Archive; db: Database } {
  const open = openDatabase(path);
  const archive = assemble(open, { path, ids: countingIds(), simulated: false, now: T0 });
  onTestFinished(() => archive.close());
  return { archive, db: open.db };
}

function manyReadings(count: number) {
  return intake(
    'forge-1',
    Array.from({ length: count }, (_, n) => incoming('chamber', T0 + n, n + 0.5)),
  );
}

/** SQLite answers SQLITE_FULL for a reached page limit just as for a full disk. */
function fillUp(db: Database): () => void {
  const pages = Number(db.pragma('page_count', { simple: true }));
  db.pragma(`max_page_count = ${pages + 2}`);
  return () => {
    db.pragma('max_page_count = 1000000');
  };
}

describe('a full disk', () => {
  it('is told by code, keeps nothing of the group, and is over when there is room again', () => {
    const { archive, db } = openWithHandle(temporaryFile());
    const channel = addChannel(archive);
    const makeRoom = fillUp(db);
    expect(() => archive.commitIntake([manyReadings(10_000)])).toThrow(withCode('disk'));
    expect(db.inTransaction).toBe(false);
    expect(archive.readings.range(channel.id, T0, T0 + 10_000)).toEqual([]);
    expect(archive.alive()).toBe(true);
    makeRoom();
    expect(archive.commitIntake([manyReadings(10_000)]).readings).toHaveLength(10_000);
  });

  it('loses nothing that was told as kept before, and the file stays sound', () => {
    const path = temporaryFile();
    const { archive, db } = openWithHandle(path);
    const channel = addChannel(archive);
    fillUp(db);
    let kept = 0;
    const fill = () => {
      for (;;) {
        const group = Array.from({ length: 50 }, (_, n) => incoming('chamber', T0 + kept + n, n));
        kept += archive.commitIntake([intake('forge-1', group)]).readings.length;
      }
    };
    expect(fill).toThrow(withCode('disk'));
    expect(kept).toBeGreaterThan(0);
    expect(db.pragma('integrity_check', { simple: true })).toBe('ok');
    archive.close();
    expect(openTest(path).readings.range(channel.id, T0, T0 + 1_000_000)).toHaveLength(kept);
  });
});

describe('a disk that may not be written', () => {
  it('is told by code, is still read, and serves again when it may', () => {
    const { archive, db } = openWithHandle(temporaryFile());
    const channel = addChannel(archive);
    archive.commitIntake([manyReadings(3)]);
    db.pragma('query_only = ON');
    expect(() => archive.commitIntake([manyReadings(5)])).toThrow(withCode('disk'));
    expect(() => archive.createNode({ name: 'oven-1', label: '', note: '' }, T0)).toThrow(withCode('disk'));
    expect(archive.readings.range(channel.id, T0, T0 + 10)).toHaveLength(3);
    db.pragma('query_only = OFF');
    expect(archive.commitIntake([manyReadings(5)])).toMatchObject({ duplicates: 3 });
  });
});

const WRITER = fileURLToPath(new URL('./disk-writer.ts', import.meta.url));

// There is no limit of file size to be had on Windows.
describe.skipIf(process.platform === 'win32')('a disk that refuses to write', { timeout: 60_000 }, () => {
  it('is told by code each time, and what was told as kept is there, then and after', () => {
    const path = temporaryFile();
    const limited = 'ulimit -f 2000; exec "$@"';
    const writer = [process.execPath, '--import', 'tsx', WRITER, path];
    const said = JSON.parse(execFileSync('sh', ['-c', limited, 'sh', ...writer], { encoding: 'utf8' }));
    expect(said).toMatchObject({ codes: ['disk', 'disk', 'disk', 'disk'], kept: said.told, alive: true });
    expect(said.told).toBeGreaterThan(0);
    const archive = openTest(path);
    const [channel] = archive.channels();
    expect(archive.readings.range(channel?.id ?? '', 0, T0)).toHaveLength(said.told);
  });
});
