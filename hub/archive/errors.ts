import { SqliteError } from 'better-sqlite3';

/**
 * Stable codes of everything that the archive refuses.
 *
 * - `not-an-archive`: the file exists and is not a Soakwatch archive.
 * - `archive-too-new`: the file was written by a newer Soakwatch.
 * - `sqlite-too-old`: the SQLite library has the WAL-reset fault (before 3.51.3).
 * - `simulated-mismatch`: a real shop's archive was opened for simulated readings, or the other way round.
 * - `archive-busy`: another program holds the archive.
 * - `not-found`, `conflict`, `invalid`: the request does not fit what is kept.
 * - `disk`: the disk is full, failing or read-only. Nothing of the transaction was kept.
 * - `damaged`: the file's contents are damaged.
 * - `closed`: the archive was closed.
 * - `fault`: none of these; a mistake in this program.
 */
export const ARCHIVE_ERROR_CODES = [
  'not-an-archive',
  'archive-too-new',
  'sqlite-too-old',
  'simulated-mismatch',
  'archive-busy',
  'not-found',
  'conflict',
  'invalid',
  'disk',
  'damaged',
  'closed',
  'fault',
] as const;
export type ArchiveErrorCode = (typeof ARCHIVE_ERROR_CODES)[number];

/** A refusal of the archive: `code` is for programs, the message says what, where and what to do. */
export class ArchiveError extends Error {
  readonly code: ArchiveErrorCode;
  constructor(code: ArchiveErrorCode, message: string, options?: ErrorOptions) {
    super(message, options);
    this.name = 'ArchiveError';
    this.code = code;
  }
}

/** By the start of SQLite's own result code name (sqlite.org/rescode.html). The first that fits is taken. */
const BY_RESULT: readonly (readonly [start: string, code: ArchiveErrorCode, words: string])[] = [
  ['SQLITE_FULL', 'disk', 'the disk is full: make room, then carry on'],
  ['SQLITE_IOERR', 'disk', 'the disk does not read or write: check the drive and its cable'],
  ['SQLITE_READONLY', 'disk', 'the archive cannot be written: check the permissions of file and folder'],
  ['SQLITE_CANTOPEN', 'disk', 'the archive cannot be opened: check that folder and permissions are right'],
  ['SQLITE_BUSY', 'archive-busy', 'another program holds the archive: stop it'],
  ['SQLITE_LOCKED', 'archive-busy', 'another program holds the archive: stop it'],
  ['SQLITE_CORRUPT', 'damaged', 'the file is damaged: keep it, and restore a copy'],
  ['SQLITE_NOTADB', 'not-an-archive', 'the file is not an archive'],
  ['SQLITE_CONSTRAINT_FOREIGNKEY', 'not-found', 'it refers to something that is not in the archive'],
  ['SQLITE_CONSTRAINT_UNIQUE', 'conflict', 'it is there already'],
  ['SQLITE_CONSTRAINT_PRIMARYKEY', 'conflict', 'it is there already'],
  ['SQLITE_CONSTRAINT', 'invalid', 'a value does not fit its column'],
  ['SQLITE_MISMATCH', 'invalid', 'a value does not fit its column'],
];

/** Whatever was thrown below, as an `ArchiveError` with a stable code; the cause is kept. */
export function asArchiveError(thrown: unknown): ArchiveError {
  if (thrown instanceof ArchiveError) return thrown;
  const said = thrown instanceof Error ? thrown.message : String(thrown);
  if (thrown instanceof SqliteError) {
    const known = BY_RESULT.find(([start]) => thrown.code.startsWith(start));
    if (known) return new ArchiveError(known[1], `${known[2]} (${thrown.code}: ${said})`, { cause: thrown });
  }
  if (thrown instanceof TypeError && said === 'The database connection is not open') {
    return new ArchiveError('closed', 'the archive was closed: open it again before using it', {
      cause: thrown,
    });
  }
  return new ArchiveError('fault', said, { cause: thrown });
}
