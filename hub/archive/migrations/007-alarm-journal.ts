/**
 * What sets an alarm aside, and the journal of everything that happened to alarms. The journal has no foreign key:
 * it outlives alarms and firings. It is only ever added to; what is changed in the file itself shows in the chain of
 * hashes. The number must follow the last one, since "INSERT OR REPLACE" would delete without asking a trigger.
 */
export const sql = `
ALTER TABLE alarms ADD COLUMN active_since INTEGER;
ALTER TABLE alarms ADD COLUMN shelf TEXT CHECK (shelf IS NULL OR json_valid(shelf));
ALTER TABLE alarms ADD COLUMN suppression TEXT CHECK (suppression IS NULL OR json_valid(suppression));
ALTER TABLE alarms ADD COLUMN out_of_service TEXT CHECK (out_of_service IS NULL OR json_valid(out_of_service));
UPDATE alarms SET active_since = raised_at WHERE active = 1;

CREATE TABLE alarm_journal (
  seq INTEGER PRIMARY KEY,
  at INTEGER NOT NULL,
  alarm_id TEXT NOT NULL,
  kind TEXT NOT NULL,
  priority TEXT NOT NULL,
  subject TEXT NOT NULL,
  firing_id TEXT,
  furnace_id TEXT,
  event TEXT NOT NULL,
  from_state TEXT NOT NULL,
  to_state TEXT NOT NULL,
  active INTEGER NOT NULL CHECK (active IN (0, 1)),
  active_since INTEGER,
  by TEXT,
  why TEXT,
  until INTEGER,
  params TEXT NOT NULL CHECK (json_valid(params)),
  previous_hash TEXT NOT NULL,
  hash TEXT NOT NULL UNIQUE
) STRICT;
CREATE INDEX alarm_journal_by_time ON alarm_journal (at, seq);
CREATE INDEX alarm_journal_by_alarm ON alarm_journal (alarm_id, seq);

CREATE TRIGGER alarm_journal_no_update BEFORE UPDATE ON alarm_journal
BEGIN SELECT RAISE (ABORT, 'the alarm journal is only ever added to'); END;
CREATE TRIGGER alarm_journal_no_delete BEFORE DELETE ON alarm_journal
BEGIN SELECT RAISE (ABORT, 'the alarm journal is only ever added to'); END;
CREATE TRIGGER alarm_journal_in_order BEFORE INSERT ON alarm_journal
WHEN NEW.seq IS NOT (SELECT coalesce(max(seq), 0) + 1 FROM alarm_journal)
BEGIN SELECT RAISE (ABORT, 'the alarm journal is numbered without a hole'); END;
`;
