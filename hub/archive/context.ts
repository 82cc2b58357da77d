import type { Database } from 'better-sqlite3';
import { ArchiveError, asArchiveError } from './errors.ts';

/** What every part of the archive is given. */
export interface Context {
  readonly db: Database;
  /** A new id, unique across shops. */
  readonly ids: () => string;
  /**
   * Runs `work` in one transaction: committed when it returns, rolled back when it throws. BEGIN IMMEDIATE,
   * because a transaction that begins by reading and then writes may find the file changed in between.
   * A promise is refused and rolled back: it would commit before its work is done.
   */
  readonly write: <T>(work: () => T) => T;
}

export function makeContext(db: Database, ids: () => string): Context {
  const immediate = db.transaction((work: () => unknown) => work()).immediate;
  // The library's types lose the result of a generic function; `work` returns exactly what `immediate` does.
  return { db, ids, write: <T>(work: () => T): T => immediate(work) as T };
}

/** Every function of a part, with whatever it throws turned into an `ArchiveError`: the only place that does. */
export function guarded<T extends object>(part: T): T {
  const entries = Object.entries(part).map(([name, member]: [string, unknown]) => [
    name,
    typeof member === 'function' ? guard(member as (...args: unknown[]) => unknown) : member,
  ]);
  return Object.fromEntries(entries) as T;
}

function guard(call: (...args: unknown[]) => unknown): (...args: unknown[]) => unknown {
  return (...args) => {
    try {
      return call(...args);
    } catch (thrown) {
      throw asArchiveError(thrown);
    }
  };
}

/** @throws ArchiveError `not-found` when nothing was changed. */
export function mustChange(changes: number, what: string, id: string): void {
  if (changes === 0) throw new ArchiveError('not-found', `there is no ${what} with the id "${id}"`);
}

/** A document that this folder wrote from the same type, and that no one else writes. */
export function fromJson<T>(text: string): T {
  return JSON.parse(text) as T;
}
