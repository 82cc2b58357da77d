/**
 * Looking back: the firing that a schedule is held against, what was changed in the shop, and the search over firings.
 *
 * `firings.search` holds a firing's words in small letters; the index that carries it answers a search without
 * reading a frozen schedule. Furnaces are not in it: their names change, so they are looked up when asked.
 * `shop_changes` is append-only: a chart that is read again must show the same marks.
 */
export const sql = `
CREATE TABLE schedule_references (
  schedule_id TEXT PRIMARY KEY REFERENCES schedules (id),
  firing_id TEXT NOT NULL REFERENCES firings (id) ON DELETE CASCADE,
  chosen_at INTEGER NOT NULL
) STRICT;
CREATE INDEX schedule_references_by_firing ON schedule_references (firing_id);

CREATE TABLE shop_changes (
  seq INTEGER PRIMARY KEY,
  id TEXT NOT NULL UNIQUE,
  at INTEGER NOT NULL,
  kind TEXT NOT NULL,
  furnace_id TEXT,
  channel_id TEXT,
  text TEXT NOT NULL,
  by TEXT NOT NULL
) STRICT;
CREATE INDEX shop_changes_by_time ON shop_changes (at, seq);
CREATE TRIGGER shop_changes_stay BEFORE UPDATE ON shop_changes
  BEGIN SELECT RAISE(ABORT, 'shop_changes is append-only'); END;
CREATE TRIGGER shop_changes_are_kept BEFORE DELETE ON shop_changes
  BEGIN SELECT RAISE(ABORT, 'shop_changes is append-only'); END;

ALTER TABLE firings ADD COLUMN search TEXT NOT NULL DEFAULT '';
UPDATE firings SET search = lower(title || char(10) || note || char(10) || schedule_name || char(10) ||
  coalesce((SELECT group_concat(mark, char(10)) FROM firing_pieces WHERE firing_id = firings.id), ''));
CREATE INDEX firings_by_words ON firings (started_at, id, furnace_id, status, simulated, verdict, search);
CREATE INDEX firings_by_schedule ON firings (schedule ->> '$.id', started_at, id);
`;
