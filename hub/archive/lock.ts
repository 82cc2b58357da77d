import Database from 'better-sqlite3';
import { ArchiveError } from './errors.ts';

export function lockPath(archivePath: string): string {
  return `${archivePath}-lock`;
}

/**
 * One hub at a time. SQLite alone would let two hubs write in turn, and each would judge and alarm as if it
 * were the only one. The lock is a transaction held open on a small file beside the archive: the operating
 * system drops it with the process, so a killed hub leaves no stale lock. Readers of the archive are not kept
 * out.
 *
 * @returns the release, to be called once.
 * @throws ArchiveError `archive-busy` when another hub holds it.
 */
export function holdLock(archivePath: string): () => void {
  const lock = new Database(lockPath(archivePath), { timeout: 0 });
  try {
    lock.pragma('journal_mode = MEMORY');
    lock.exec('BEGIN EXCLUSIVE');
  } catch (thrown) {
    lock.close();
    if (thrown instanceof Database.SqliteError && thrown.code.startsWith('SQLITE_BUSY')) {
      throw new ArchiveError(
        'archive-busy',
        `another Soakwatch hub is using ${archivePath}: stop it, or give this one another data folder`,
        { cause: thrown },
      );
    }
    throw thrown;
  }
  return () => {
    lock.close();
  };
}
