/**
 * What a furnace was fitted to; the shop's own steels and mill certificates; hours above a probe's limit by day.
 * `own_steels.key` is the name as it is compared. `mill_certificates.steel` may be a grade of the catalogue, which
 * is no table: so it has no foreign key. A row of `hot_days` can be worked out again from the readings at any time.
 */
export const sql = `
ALTER TABLE furnaces ADD COLUMN fit TEXT CHECK (fit IS NULL OR json_valid(fit));

CREATE TABLE own_steels (
  id TEXT PRIMARY KEY,
  key TEXT NOT NULL,
  name TEXT NOT NULL,
  composition TEXT NOT NULL CHECK (json_valid(composition)),
  windows TEXT NOT NULL CHECK (json_valid(windows)),
  note TEXT NOT NULL,
  archived INTEGER NOT NULL CHECK (archived IN (0, 1)),
  created_at INTEGER NOT NULL,
  updated_at INTEGER NOT NULL
) STRICT;
CREATE UNIQUE INDEX own_steels_by_key ON own_steels (key) WHERE archived = 0;

CREATE TABLE mill_certificates (
  id TEXT PRIMARY KEY,
  steel TEXT NOT NULL,
  heat_number TEXT NOT NULL,
  date TEXT,
  note TEXT NOT NULL,
  composition TEXT NOT NULL CHECK (json_valid(composition)),
  archived INTEGER NOT NULL CHECK (archived IN (0, 1)),
  created_at INTEGER NOT NULL,
  updated_at INTEGER NOT NULL
) STRICT;
CREATE UNIQUE INDEX mill_certificates_by_heat ON mill_certificates (steel, heat_number) WHERE archived = 0;

CREATE TABLE hot_days (
  series INTEGER NOT NULL,
  day INTEGER NOT NULL,
  limit_celsius REAL NOT NULL,
  ms_above INTEGER NOT NULL,
  ms_unknown INTEGER NOT NULL,
  peak_celsius REAL,
  PRIMARY KEY (series, day)
) STRICT, WITHOUT ROWID;
`;
