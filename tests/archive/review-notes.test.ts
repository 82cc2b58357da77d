import { describe, expect, it } from 'vitest';
import { openDatabase } from '../../hub/archive/database.ts';
import { sql } from '../../hub/archive/migrations/012-review.ts';
import { openTest, T0 } from './helpers.ts';

describe('changes of the shop', () => {
  const change = {
    at: T0,
    kind: 'probe',
    furnaceId: null,
    channelId: null,
    text: 'type N',
    by: 'Ada',
  } as const;

  it('are given in the order of their instants, inside the span that is asked for', () => {
    const archive = openTest();
    const late = archive.addShopChange({ ...change, at: T0 + 2 });
    const early = archive.addShopChange(change);
    expect(archive.shopChanges(T0, T0 + 2)).toEqual([early, late]);
    expect(archive.shopChanges(T0 + 1, T0 + 1)).toEqual([]);
  });

  it('can be neither changed nor taken back, whoever asks SQLite', () => {
    const { db, close } = openDatabase(':memory:');
    db.exec(`INSERT INTO shop_changes (id, at, kind, text, by) VALUES ('a', 1, 'probe', '', '')`);
    expect(() => db.exec("UPDATE shop_changes SET text = 'x'")).toThrow('append-only');
    expect(() => db.exec('DELETE FROM shop_changes')).toThrow('append-only');
    close();
  });
});

describe('the migration that brings the search', () => {
  it('finds the firings that were there before', () => {
    const { db, close } = openDatabase(':memory:');
    db.exec(`DROP INDEX firings_by_words; DROP INDEX firings_by_schedule; ALTER TABLE firings DROP COLUMN search;
      DROP TABLE schedule_references; DROP TABLE shop_changes;
      INSERT INTO furnaces (id, name, kind, rated_celsius, note, archived, created_at, updated_at)
        VALUES ('f', 'Oven', 'electric-oven', 1200, '', 0, 1, 1);
      INSERT INTO firings (id, furnace_id, title, note, status, simulated, started_at, created_at, schedule_name, schedule)
        VALUES ('a', 'f', 'Two Chisels', '', 'finished', 0, 1, 1, 'Harden', '{"id":"s"}');
      INSERT INTO firing_pieces (firing_id, position, piece_id, mark, document) VALUES ('a', 0, 'p', 'A-1', '{}');`);
    db.exec(sql);
    expect(db.prepare('SELECT search FROM firings').pluck().get()).toBe('two chisels\n\nharden\na-1');
    close();
  });
});
