/**
 * What each set of rules said of a firing and its pieces, the old verdict beside the new; and what stood behind the
 * watched channels when it began.
 *
 * A row is a verdict by one set of rules. Readings that come late replace the figures of the newest row as long as no
 * verdict changes; where one does, a row is added. `verdicts` has each piece's verdict by its id, for the history of
 * a piece, so that a long document is read for its own firing alone.
 */
export const sql = `
CREATE TABLE firing_verdicts (
  seq INTEGER PRIMARY KEY,
  firing_id TEXT NOT NULL REFERENCES firings (id) ON DELETE CASCADE,
  judged_at INTEGER NOT NULL,
  judge_version TEXT NOT NULL,
  record_version TEXT NOT NULL,
  why TEXT NOT NULL,
  verdict TEXT NOT NULL,
  verdicts TEXT NOT NULL CHECK (json_valid(verdicts)),
  pieces TEXT NOT NULL CHECK (json_valid(pieces))
) STRICT;
CREATE INDEX firing_verdicts_by_firing ON firing_verdicts (firing_id, seq);

CREATE TABLE firing_probes (
  firing_id TEXT NOT NULL REFERENCES firings (id) ON DELETE CASCADE,
  channel_id TEXT NOT NULL,
  frozen_at INTEGER NOT NULL,
  probe TEXT CHECK (probe IS NULL OR json_valid(probe)),
  PRIMARY KEY (firing_id, channel_id)
) STRICT, WITHOUT ROWID;
`;
