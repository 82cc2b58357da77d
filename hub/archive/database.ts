import { existsSync } from 'node:fs';
import { dirname } from 'node:path';
import Database from 'better-sqlite3';
import { ArchiveError } from './errors.ts';
import { checkHeader, readHeader } from './header.ts';
import { holdLock, lockPath } from './lock.ts';
import { claim, headerOf, migrate } from './migrate.ts';
import { MIGRATIONS } from './migrations/list.ts';

/** The first SQLite without the WAL-reset fault, which can damage a file (sqlite.org/wal.html). */
const OLDEST_SQLITE = [3, 51, 3] as const;
const BUSY_MS = 5000;
const CACHE_KIBIBYTES = 16_384;
/** The -wal file is cut back to this after a checkpoint, so that one large backfill does not keep the space. */
const WAL_LIMIT_BYTES = 67_108_864;

export const IN_MEMORY = ':memory:';

/** @throws ArchiveError `sqlite-too-old`. */
export function requireSqlite(version: string): void {
  const parts = version.split('.').map(Number);
  for (const [index, least] of OLDEST_SQLITE.entries()) {
    const part = parts[index] ?? 0;
    if (part > least) return;
    if (part < least || Number.isNaN(part)) {
      throw new ArchiveError(
        'sqlite-too-old',
        `SQLite ${version} can damage a WAL file; ${OLDEST_SQLITE.join('.')} or newer is needed: reinstall with "npm ci"`,
      );
    }
  }
}

function sqliteVersion(): string {
  const probe = new Database(IN_MEMORY);
  try {
    return String(probe.prepare('SELECT sqlite_version()').pluck().get());
  } finally {
    probe.close();
  }
}

/** An empty database is claimed; any other must be ours and not newer than we are. */
function settleOwner(db: Database.Database, path: string): void {
  const empty = Number(db.pragma('page_count', { simple: true })) === 0;
  if (empty) claim(db);
  else checkHeader(path, headerOf(db), MIGRATIONS.length);
}

/** The library's default in WAL is synchronous=NORMAL, which may lose a committed transaction with the power. */
function setPragmas(db: Database.Database, path: string): void {
  const mode = db.pragma('journal_mode = WAL', { simple: true });
  if (path !== IN_MEMORY && mode !== 'wal') {
    throw new ArchiveError(
      'disk',
      `${path}: no WAL on this file system (is it a network drive?): use a local disk`,
    );
  }
  db.pragma('synchronous = FULL');
  db.pragma('foreign_keys = ON');
  db.pragma('trusted_schema = OFF');
  db.pragma(`cache_size = -${CACHE_KIBIBYTES}`);
  db.pragma(`journal_size_limit = ${WAL_LIMIT_BYTES}`);
}

export interface OpenDatabase {
  readonly db: Database.Database;
  readonly close: () => void;
}

/**
 * Opens or creates the archive's database and brings it to the newest version. A file that is not ours, or is
 * newer than we are, is left exactly as it was.
 *
 * @throws ArchiveError `sqlite-too-old`, `not-an-archive`, `archive-too-new`, `archive-busy`, `disk`.
 */
export function openDatabase(path: string): OpenDatabase {
  requireSqlite(sqliteVersion());
  const release = path === IN_MEMORY ? () => undefined : enter(path);
  let db: Database.Database | null = null;
  try {
    db = new Database(path, { timeout: BUSY_MS });
    settleOwner(db, path);
    setPragmas(db, path);
    migrate(db, MIGRATIONS);
    return { db, close: closer(db, release) };
  } catch (thrown) {
    db?.close();
    release();
    throw thrown;
  }
}

/**
 * Looks at the file, then locks it. Where a lock file stands already, the lock comes first: closing a file that
 * another part of this same process has open would drop SQLite's own locks on it (sqlite.org/howtocorrupt.html,
 * section 2.2). Otherwise the look comes first, so that nothing is made beside a file that is not ours.
 */
function enter(path: string): () => void {
  if (!existsSync(dirname(path))) {
    throw new ArchiveError(
      'disk',
      `there is no folder ${dirname(path)}: make it, or choose another data folder`,
    );
  }
  const lockFirst = existsSync(lockPath(path));
  if (!lockFirst) readHeader(path, MIGRATIONS.length);
  const release = holdLock(path);
  try {
    if (lockFirst) readHeader(path, MIGRATIONS.length);
    return release;
  } catch (thrown) {
    release();
    throw thrown;
  }
}

function closer(db: Database.Database, release: () => void): () => void {
  return () => {
    if (!db.open) return;
    optimize(db);
    try {
      db.close();
    } finally {
      release();
    }
  };
}

/** Keeps the query planner's figures fresh (sqlite.org/pragma.html, optimize). */
function optimize(db: Database.Database): void {
  try {
    db.pragma('optimize');
  } catch {
    // It writes, so a full disk refuses it. Nothing is lost by that, and closing must not fail for it.
  }
}
