/**
 * Pieces, templates of routes, what was seen on a piece, and what lay in a firing.
 *
 * `firing_pieces.piece_id` has no foreign key: a firing's record stands alone. `pieces.search` holds the words
 * of a piece in small letters; the index that carries it answers a search without reading routes.
 * An attachment stands in a rowid table with its content last, so that a list never reads the content's pages.
 */
export const sql = `
CREATE TABLE pieces (
  id TEXT PRIMARY KEY,
  mark TEXT NOT NULL,
  title TEXT NOT NULL,
  archived INTEGER NOT NULL CHECK (archived IN (0, 1)),
  open_steps INTEGER NOT NULL CHECK (open_steps >= 0),
  created_at INTEGER NOT NULL,
  updated_at INTEGER NOT NULL,
  search TEXT NOT NULL,
  steel TEXT NOT NULL CHECK (json_valid(steel)),
  section TEXT NOT NULL CHECK (json_valid(section)),
  note TEXT NOT NULL,
  route TEXT NOT NULL CHECK (json_valid(route))
) STRICT;
CREATE UNIQUE INDEX pieces_one_mark ON pieces (mark COLLATE NOCASE) WHERE archived = 0;
CREATE INDEX pieces_by_mark ON pieces (mark COLLATE NOCASE, created_at, id);
CREATE INDEX pieces_by_age ON pieces (created_at, id, archived, search);
CREATE INDEX pieces_open ON pieces (created_at, id) WHERE archived = 0 AND open_steps > 0;

CREATE TABLE firing_pieces (
  firing_id TEXT NOT NULL REFERENCES firings (id) ON DELETE CASCADE,
  position INTEGER NOT NULL,
  piece_id TEXT NOT NULL,
  mark TEXT NOT NULL,
  document TEXT NOT NULL CHECK (json_valid(document)),
  PRIMARY KEY (firing_id, position)
) STRICT;
CREATE INDEX firing_pieces_by_piece ON firing_pieces (piece_id, firing_id);
CREATE INDEX firing_pieces_marks ON firing_pieces (firing_id, position, mark);

CREATE TABLE observations (
  id TEXT PRIMARY KEY,
  piece_id TEXT NOT NULL REFERENCES pieces (id),
  firing_id TEXT,
  step_id TEXT,
  at INTEGER NOT NULL,
  by TEXT NOT NULL,
  note TEXT NOT NULL,
  kind TEXT NOT NULL,
  created_at INTEGER NOT NULL,
  seen TEXT NOT NULL CHECK (json_valid(seen))
) STRICT;
CREATE INDEX observations_by_piece ON observations (piece_id, at, id);
CREATE INDEX observations_by_kind ON observations (kind, at, id);

CREATE TABLE attachments (
  seq INTEGER PRIMARY KEY,
  id TEXT NOT NULL UNIQUE,
  observation_id TEXT NOT NULL UNIQUE REFERENCES observations (id) ON DELETE CASCADE,
  file_name TEXT NOT NULL,
  content_type TEXT NOT NULL,
  bytes INTEGER NOT NULL,
  content BLOB NOT NULL CHECK (length(content) <= 8388608)
) STRICT;

CREATE TABLE route_templates (
  id TEXT PRIMARY KEY,
  name TEXT NOT NULL,
  note TEXT NOT NULL,
  created_at INTEGER NOT NULL,
  updated_at INTEGER NOT NULL,
  steps TEXT NOT NULL CHECK (json_valid(steps))
) STRICT;

CREATE TABLE given_once (
  what TEXT PRIMARY KEY,
  at INTEGER NOT NULL
) STRICT;
`;
