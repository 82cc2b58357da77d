/**
 * The burners of a furnace; cylinders put on and fillings, as a person noted them; and what the count since a fill
 * had come to, now and then, so that a start need not count through weeks. Instants in epoch ms, masses in kg.
 */
export const sql = `
ALTER TABLE furnaces ADD COLUMN gas TEXT CHECK (gas IS NULL OR json_valid(gas));

CREATE TABLE gas_changes (
  id TEXT NOT NULL PRIMARY KEY,
  at INTEGER NOT NULL,
  furnace_id TEXT REFERENCES furnaces(id),
  kilograms REAL NOT NULL CHECK (kilograms >= 0),
  by TEXT NOT NULL,
  note TEXT NOT NULL
) STRICT;
CREATE INDEX gas_changes_by_time ON gas_changes (at);

CREATE TABLE gas_counts (
  supply TEXT NOT NULL,
  at INTEGER NOT NULL,
  count TEXT NOT NULL CHECK (json_valid(count)),
  PRIMARY KEY (supply, at)
) STRICT;
`;
