import { randomUUID } from 'node:crypto';
import type { Database } from 'better-sqlite3';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { assemble } from '../../hub/archive/assemble.ts';
import { openDatabase } from '../../hub/archive/database.ts';
import { summaryQuery } from '../../hub/archive/firing-summaries.ts';
import type { Archive, FiringFilter } from '../../hub/archive/types.ts';
import { addFurnace, alarm, countingIds, firingDraft, MINUTE, T0 } from './helpers.ts';

const COUNT = 10_000;
const FURNACES = 4;
let archive: Archive;
let db: Database;

beforeAll(() => {
  const open = openDatabase(':memory:');
  db = open.db;
  const counted = countingIds();
  let opened = false;
  const ids = () => (opened ? counted() : randomUUID());
  archive = assemble(open, { path: ':memory:', ids, simulated: false, now: T0 });
  opened = true;
  const furnaces = Array.from({ length: FURNACES }, (_, n) => addFurnace(archive, `Furnace ${n}`));
  const fill = db.transaction(() => {
    for (let n = 0; n < COUNT; n += 1) {
      const startedAt = T0 + n * MINUTE;
      const status = n % 10 === 0 ? 'abandoned' : 'finished';
      const furnaceId = furnaces[n % FURNACES]?.id ?? '';
      archive.createFiring(firingDraft(furnaceId, { status, startedAt, endedAt: startedAt + 1 }));
    }
  });
  fill();
});
afterAll(() => archive.close());

/** What SQLite says it will do, one line for each step. */
function planOf(filter: FiringFilter): string {
  const { sql, values } = summaryQuery(filter);
  return db
    .prepare<[object], { detail: string }>(`EXPLAIN QUERY PLAN ${sql}`)
    .all(values)
    .map(({ detail }) => detail)
    .join('\n');
}

/** The first furnace: ids are counted once the archive is open. */
const furnaceId = 'id-000001';
const filters: [string, FiringFilter, RegExp][] = [
  ['everything', { limit: 50 }, /f USING INDEX firings_by_start/],
  ['before an instant', { limit: 50, before: T0 }, /f USING INDEX firings_by_start \(started_at<\?\)/],
  ['one furnace', { limit: 50, furnaceId }, /f USING INDEX firings_by_furnace \(furnace_id=\?\)/],
  ['one status', { limit: 50, status: 'finished' }, /f USING INDEX firings_by_status \(status=\?\)/],
  [
    'a page of one furnace',
    { limit: 50, furnaceId, before: T0 },
    /f USING INDEX firings_by_furnace \(furnace_id=\? AND started_at<\?\)/,
  ],
  [
    'one schedule',
    { limit: 50, scheduleId: 'schedule-1' },
    /f USING INDEX firings_by_schedule \(<expr>=\?\)/,
  ],
  ['words', { limit: 50, q: 'two chisels' }, /f USING INDEX firings_by_words/],
  ['a verdict', { limit: 50, verdict: 'met' }, /f USING INDEX firings_by_words/],
  [
    'words after a row, of some days',
    { limit: 50, q: 'chisels', after: 'id-000009', from: T0 },
    /f USING INDEX firings_by_words \(started_at>\? AND started_at<\?\)|f USING INDEX firings_by_words/,
  ],
  [
    'all three',
    { limit: 50, furnaceId, status: 'finished', before: T0 },
    /f USING INDEX firings_by_(furnace|status) \(\w+=\? AND started_at<\?\)/,
  ],
];

describe.each(['before statistics', 'after statistics'])('the list of ten thousand firings, %s', (when) => {
  beforeAll(() => {
    if (when === 'after statistics') db.exec('ANALYZE');
  });

  it.each(filters)('walks an index for %s, sorts nothing and stops at the limit', (_, filter, index) => {
    const plan = planOf(filter);
    expect(plan).toMatch(index);
    expect(plan).not.toMatch(/TEMP B-TREE/);
    expect(plan).toMatch(/SEARCH a USING COVERING INDEX alarms_by_firing/);
    expect(plan).toMatch(/SEARCH u USING/);
  });
});

describe('the list of firings', () => {
  it('gives the newest first, page by page, each once', () => {
    const first = archive.firings({ limit: 3 });
    const next = archive.firings({ limit: 3, before: first.at(-1)?.startedAt });
    const starts = [...first, ...next].map((firing) => (firing.startedAt - T0) / MINUTE);
    expect(starts).toEqual([9999, 9998, 9997, 9996, 9995, 9994]);
  });

  it('names furnace and schedule, and counts the alarms of each', () => {
    const [newest, older] = archive.firings({ limit: 2 });
    archive.saveAlarms(['a', 'b'].map((id) => alarm(id, { firingId: newest?.id ?? null })));
    const counts = archive.firings({ limit: 2 }).map(({ alarmCount }) => alarmCount);
    expect(counts).toEqual([2, 0]);
    expect(newest).toMatchObject({ furnaceName: 'Furnace 3', scheduleName: 'Harden 1095' });
    expect(older).not.toHaveProperty('schedule');
  });

  it('keeps to what was asked for', () => {
    const some = archive.firings({ limit: 20_000, furnaceId, status: 'abandoned' });
    expect(some.length).toBeGreaterThan(0);
    expect(new Set(some.map((firing) => `${firing.furnaceId} ${firing.status}`))).toEqual(
      new Set([`${furnaceId} abandoned`]),
    );
    expect(archive.firings({ limit: 20_000 })).toHaveLength(COUNT);
    expect(archive.firings({ limit: 5, status: 'running' })).toEqual([]);
  });
});
