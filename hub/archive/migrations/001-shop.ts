/** The shop and its devices. `series` is the short number under which a channel's readings are kept. */
export const sql = `
CREATE TABLE shop (
  only INTEGER PRIMARY KEY CHECK (only = 1),
  id TEXT NOT NULL,
  simulated INTEGER NOT NULL CHECK (simulated IN (0, 1)),
  settings TEXT NOT NULL CHECK (json_valid(settings)),
  created_at INTEGER NOT NULL,
  updated_at INTEGER NOT NULL
) STRICT;

CREATE TABLE furnaces (
  id TEXT PRIMARY KEY,
  name TEXT NOT NULL,
  kind TEXT NOT NULL,
  rated_celsius REAL NOT NULL,
  note TEXT NOT NULL,
  archived INTEGER NOT NULL CHECK (archived IN (0, 1)),
  created_at INTEGER NOT NULL,
  updated_at INTEGER NOT NULL
) STRICT;

CREATE TABLE nodes (
  id TEXT PRIMARY KEY,
  name TEXT NOT NULL UNIQUE,
  label TEXT NOT NULL,
  note TEXT NOT NULL,
  adopted INTEGER NOT NULL CHECK (adopted IN (0, 1)),
  status TEXT NOT NULL CHECK (status IN ('online', 'offline', 'unknown')),
  status_at INTEGER,
  last_heard_at INTEGER,
  created_at INTEGER NOT NULL
) STRICT;

CREATE TABLE channels (
  series INTEGER PRIMARY KEY,
  id TEXT NOT NULL UNIQUE,
  node TEXT NOT NULL REFERENCES nodes (name) ON UPDATE CASCADE,
  name TEXT NOT NULL,
  label TEXT NOT NULL,
  quantity TEXT NOT NULL,
  unit TEXT,
  role TEXT NOT NULL,
  furnace_id TEXT REFERENCES furnaces (id),
  possible_low REAL,
  possible_high REAL,
  stale_after_seconds REAL NOT NULL CHECK (stale_after_seconds > 0),
  adopted INTEGER NOT NULL CHECK (adopted IN (0, 1)),
  archived INTEGER NOT NULL CHECK (archived IN (0, 1)),
  created_at INTEGER NOT NULL,
  UNIQUE (node, name)
) STRICT;
CREATE INDEX channels_by_furnace ON channels (furnace_id);

CREATE TABLE bindings (
  id TEXT PRIMARY KEY,
  topic TEXT NOT NULL,
  node TEXT,
  channel TEXT NOT NULL,
  quantity TEXT NOT NULL,
  unit TEXT NOT NULL,
  scale REAL NOT NULL,
  "offset" REAL NOT NULL,
  decoder TEXT NOT NULL CHECK (json_valid(decoder)),
  created_at INTEGER NOT NULL
) STRICT;
`;
