import type { Database } from 'better-sqlite3';
import { APPLICATION_ID } from './header.ts';

function pragmaNumber(db: Database, name: 'user_version' | 'application_id'): number {
  return Number(db.pragma(name, { simple: true }));
}

/** The version and owner that an open database says of itself (its -wal included, unlike the raw header). */
export function headerOf(db: Database): { userVersion: number; applicationId: number } {
  return {
    userVersion: pragmaNumber(db, 'user_version'),
    applicationId: pragmaNumber(db, 'application_id'),
  };
}

/**
 * Brings a database to the version of the last migration: each in a transaction of its own that sets
 * user_version last, so that a power cut leaves a whole version behind, never half of one.
 *
 * @returns how many migrations ran.
 */
export function migrate(db: Database, migrations: readonly string[]): number {
  const before = headerOf(db).userVersion;
  migrations.slice(before).forEach((sql, index) => {
    db.transaction(() => {
      db.exec(sql);
      db.pragma(`user_version = ${before + index + 1}`);
    }).immediate();
  });
  return migrations.length - before;
}

/** Marks an empty database as ours. Done before WAL begins, so that the file's own first page carries it. */
export function claim(db: Database): void {
  db.pragma(`application_id = ${APPLICATION_ID}`);
}
