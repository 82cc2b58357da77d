/**
 * Reaching people: the ways with their secrets, what has been told to whom, and a log. The documents hold credentials:
 * they are as safe as this file. Instants in epoch ms.
 */
export const sql = `
CREATE TABLE notify_ways (
  id TEXT NOT NULL PRIMARY KEY,
  document TEXT NOT NULL CHECK (json_valid(document)),
  created_at INTEGER NOT NULL
) STRICT;

CREATE TABLE notify_documents (
  name TEXT NOT NULL PRIMARY KEY CHECK (name IN ('settings', 'state', 'push-keys')),
  document TEXT NOT NULL CHECK (json_valid(document))
) STRICT;

CREATE TABLE notify_log (
  id INTEGER PRIMARY KEY,
  at INTEGER NOT NULL,
  entry TEXT NOT NULL CHECK (json_valid(entry))
) STRICT;
`;
