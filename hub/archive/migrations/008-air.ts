/**
 * When a gas sensor was calibrated, is due and is done; how the shop stood ("door open"), as a person said; and the
 * air changes that were measured by the way. Instants in epoch ms.
 */
export const sql = `
ALTER TABLE channels ADD COLUMN calibrated_at INTEGER;
ALTER TABLE channels ADD COLUMN calibration_due_at INTEGER;
ALTER TABLE channels ADD COLUMN end_of_life_at INTEGER;

CREATE TABLE air_tags (
  at INTEGER NOT NULL PRIMARY KEY,
  tags TEXT NOT NULL CHECK (json_valid(tags)),
  by TEXT NOT NULL
) STRICT;

CREATE TABLE air_changes (
  channel_id TEXT NOT NULL REFERENCES channels(id),
  from_at INTEGER NOT NULL,
  to_at INTEGER NOT NULL,
  kept_at INTEGER NOT NULL,
  measurement TEXT NOT NULL CHECK (json_valid(measurement)),
  PRIMARY KEY (channel_id, from_at)
) STRICT;
CREATE INDEX air_changes_by_time ON air_changes (from_at);
`;
