/**
 * Schedules, firings and what came of them. `firings.schedule` stands last: a list of firings then never has
 * to read the pages of a long frozen schedule. An alarm has no foreign key to its firing: an alarm outlives it.
 */
export const sql = `
CREATE TABLE schedules (
  id TEXT PRIMARY KEY,
  version INTEGER NOT NULL CHECK (version >= 1),
  archived INTEGER NOT NULL CHECK (archived IN (0, 1)),
  created_at INTEGER NOT NULL,
  updated_at INTEGER NOT NULL
) STRICT;

CREATE TABLE schedule_versions (
  schedule_id TEXT NOT NULL REFERENCES schedules (id),
  version INTEGER NOT NULL CHECK (version >= 1),
  name TEXT NOT NULL,
  note TEXT NOT NULL,
  display_unit TEXT NOT NULL,
  created_at INTEGER NOT NULL,
  segments TEXT NOT NULL CHECK (json_valid(segments)),
  PRIMARY KEY (schedule_id, version)
) STRICT;

CREATE TABLE firings (
  id TEXT PRIMARY KEY,
  furnace_id TEXT NOT NULL REFERENCES furnaces (id),
  title TEXT NOT NULL,
  note TEXT NOT NULL,
  status TEXT NOT NULL CHECK (status IN ('running', 'finished', 'abandoned')),
  simulated INTEGER NOT NULL CHECK (simulated IN (0, 1)),
  started_at INTEGER NOT NULL,
  ended_at INTEGER,
  created_at INTEGER NOT NULL,
  schedule_name TEXT NOT NULL,
  verdict TEXT NOT NULL DEFAULT 'pending',
  peak_celsius REAL,
  soak_seconds REAL NOT NULL DEFAULT 0,
  schedule TEXT NOT NULL CHECK (json_valid(schedule))
) STRICT;
CREATE INDEX firings_by_start ON firings (started_at, id);
CREATE INDEX firings_by_furnace ON firings (furnace_id, started_at, id);
CREATE INDEX firings_by_status ON firings (status, started_at, id);
CREATE UNIQUE INDEX firings_one_running ON firings (furnace_id) WHERE status = 'running';

CREATE TABLE firing_channels (
  firing_id TEXT NOT NULL REFERENCES firings (id) ON DELETE CASCADE,
  position INTEGER NOT NULL,
  channel_id TEXT NOT NULL,
  PRIMARY KEY (firing_id, position)
) STRICT, WITHOUT ROWID;

CREATE INDEX firing_channels_by_channel ON firing_channels (channel_id);

CREATE TABLE confirmations (
  firing_id TEXT NOT NULL REFERENCES firings (id) ON DELETE CASCADE,
  segment INTEGER NOT NULL CHECK (segment >= 0),
  at INTEGER NOT NULL,
  PRIMARY KEY (firing_id, segment)
) STRICT, WITHOUT ROWID;

CREATE TABLE segment_results (
  firing_id TEXT NOT NULL REFERENCES firings (id) ON DELETE CASCADE,
  segment INTEGER NOT NULL,
  state TEXT NOT NULL,
  started_at INTEGER,
  ended_at INTEGER,
  start_celsius REAL,
  end_celsius REAL,
  soak_seconds REAL NOT NULL,
  elapsed_seconds REAL NOT NULL,
  blind_seconds REAL NOT NULL,
  peak_celsius REAL,
  lowest_celsius REAL,
  mean_celsius REAL,
  overshoot_celsius REAL,
  seconds_above_tolerance REAL NOT NULL,
  mean_rate_celsius_per_hour REAL,
  steepest_rate_celsius_per_hour REAL,
  verdict TEXT NOT NULL,
  reasons TEXT NOT NULL CHECK (json_valid(reasons)),
  PRIMARY KEY (firing_id, segment)
) STRICT;

CREATE TABLE judgements (
  firing_id TEXT PRIMARY KEY REFERENCES firings (id) ON DELETE CASCADE,
  judged_to INTEGER NOT NULL,
  judge_version TEXT NOT NULL,
  document TEXT NOT NULL CHECK (json_valid(document))
) STRICT;

CREATE TABLE notes (
  id TEXT PRIMARY KEY,
  firing_id TEXT NOT NULL REFERENCES firings (id) ON DELETE CASCADE,
  at INTEGER NOT NULL,
  text TEXT NOT NULL,
  by TEXT NOT NULL,
  created_at INTEGER NOT NULL
) STRICT;
CREATE INDEX notes_by_firing ON notes (firing_id, at, id);

CREATE TABLE alarms (
  id TEXT PRIMARY KEY,
  kind TEXT NOT NULL,
  priority TEXT NOT NULL,
  subject TEXT NOT NULL,
  firing_id TEXT,
  furnace_id TEXT,
  params TEXT NOT NULL CHECK (json_valid(params)),
  state TEXT NOT NULL,
  active INTEGER NOT NULL CHECK (active IN (0, 1)),
  raised_at INTEGER NOT NULL,
  cleared_at INTEGER,
  acknowledged_at INTEGER,
  acknowledged_by TEXT
) STRICT;
CREATE INDEX alarms_by_raise ON alarms (raised_at, id);
CREATE INDEX alarms_by_firing ON alarms (firing_id, raised_at, id);
CREATE INDEX alarms_open ON alarms (raised_at, id) WHERE state <> 'normal';
`;
