/**
 * Readings, and payloads that were refused. A reading has no foreign key: the check would cost one more search
 * for each, and only this folder writes here. Quality: 0 good, 1 uncertain, 2 bad.
 * `refusals.node` is the name as it was said; `''` in the other two stands for nodes that are not kept.
 */
export const sql = `
CREATE TABLE readings (
  series INTEGER NOT NULL,
  at INTEGER NOT NULL,
  value REAL NOT NULL,
  quality INTEGER NOT NULL CHECK (quality IN (0, 1, 2)),
  reason TEXT,
  PRIMARY KEY (series, at)
) STRICT, WITHOUT ROWID;

CREATE TABLE refusals (
  seq INTEGER PRIMARY KEY,
  id TEXT NOT NULL UNIQUE,
  keeper TEXT NOT NULL,
  node TEXT NOT NULL,
  at INTEGER NOT NULL,
  topic TEXT NOT NULL,
  reason TEXT NOT NULL,
  detail TEXT NOT NULL,
  payload_bytes INTEGER NOT NULL,
  payload BLOB NOT NULL CHECK (length(payload) <= 4096)
) STRICT;
CREATE INDEX refusals_by_keeper ON refusals (keeper, reason, seq);

CREATE TABLE refusal_counts (
  keeper TEXT NOT NULL,
  reason TEXT NOT NULL,
  count INTEGER NOT NULL,
  PRIMARY KEY (keeper, reason)
) STRICT, WITHOUT ROWID;

CREATE TABLE refusal_marks (
  about TEXT NOT NULL,
  reason TEXT NOT NULL,
  kept_at INTEGER NOT NULL,
  PRIMARY KEY (about, reason)
) STRICT, WITHOUT ROWID;
`;
