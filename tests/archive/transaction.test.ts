import Database, { SqliteError } from 'better-sqlite3';
import { describe, expect, it } from 'vitest';
import { guarded, makeContext } from '../../hub/archive/context.ts';
import { ArchiveError, asArchiveError } from '../../hub/archive/errors.ts';
import { countingIds } from './helpers.ts';

function table() {
  const db = new Database(':memory:');
  db.exec('CREATE TABLE t (a INTEGER PRIMARY KEY, b INTEGER NOT NULL) STRICT');
  const rows = () => db.prepare('SELECT a FROM t ORDER BY a').pluck().all();
  const add = (a: number) => db.prepare('INSERT INTO t VALUES (?, 0)').run(a);
  return { db, rows, add, write: makeContext(db, countingIds()).write };
}

describe('a transaction', () => {
  it('keeps all that its work did and gives back its result', () => {
    const { write, add, rows, db } = table();
    const result = write(() => {
      add(1);
      add(2);
      return 'done';
    });
    expect(result).toBe('done');
    expect(rows()).toEqual([1, 2]);
    expect(db.inTransaction).toBe(false);
  });

  it('keeps nothing when its work throws, and the next one runs', () => {
    const { write, add, rows, db } = table();
    const broken = () =>
      write(() => {
        add(1);
        throw new RangeError('no');
      });
    expect(broken).toThrow(RangeError);
    expect(db.inTransaction).toBe(false);
    write(() => add(2));
    expect(rows()).toEqual([2]);
  });

  it('refuses a promise and keeps nothing of it', () => {
    const { write, add, rows, db } = table();
    const promised = () => write(() => Promise.resolve(add(1)));
    expect(promised).toThrow(/promise/);
    expect(db.inTransaction).toBe(false);
    expect(rows()).toEqual([]);
  });

  it('within another ends with it: a caught failure inside undoes the inside alone', () => {
    const { write, add, rows } = table();
    write(() => {
      add(1);
      expect(() =>
        write(() => {
          add(2);
          add(2);
        }),
      ).toThrow(SqliteError);
      add(3);
    });
    expect(rows()).toEqual([1, 3]);
  });
});

describe('what is thrown below', () => {
  /** Result code names of sqlite.org/rescode.html. */
  it.each([
    ['SQLITE_FULL', 'disk'],
    ['SQLITE_IOERR_WRITE', 'disk'],
    ['SQLITE_IOERR_FSYNC', 'disk'],
    ['SQLITE_READONLY_DBMOVED', 'disk'],
    ['SQLITE_CANTOPEN', 'disk'],
    ['SQLITE_BUSY_SNAPSHOT', 'archive-busy'],
    ['SQLITE_CORRUPT_INDEX', 'damaged'],
    ['SQLITE_NOTADB', 'not-an-archive'],
    ['SQLITE_CONSTRAINT_FOREIGNKEY', 'not-found'],
    ['SQLITE_CONSTRAINT_UNIQUE', 'conflict'],
    ['SQLITE_CONSTRAINT_PRIMARYKEY', 'conflict'],
    ['SQLITE_CONSTRAINT_CHECK', 'invalid'],
    ['SQLITE_CONSTRAINT_DATATYPE', 'invalid'],
    ['SQLITE_ERROR', 'fault'],
  ])('turns %s into %s and keeps the cause', (result, code) => {
    const cause = new SqliteError('said by SQLite', result);
    const error = asArchiveError(cause);
    expect(error).toMatchObject({ name: 'ArchiveError', code, cause });
    expect(error.message).toContain('said by SQLite');
  });

  it('passes an archive error on as it is, and makes a fault of anything else', () => {
    const own = new ArchiveError('conflict', 'there already');
    expect(asArchiveError(own)).toBe(own);
    expect(asArchiveError('a string')).toMatchObject({ code: 'fault', message: 'a string' });
    expect(asArchiveError(new TypeError('x is undefined'))).toMatchObject({ code: 'fault' });
  });

  it('is turned at one place around every function of a part', () => {
    const part = guarded({
      good: (n: number) => n + 1,
      bad: () => {
        throw new SqliteError('full', 'SQLITE_FULL');
      },
    });
    expect(part.good(1)).toBe(2);
    expect(part.bad).toThrow(expect.objectContaining({ code: 'disk' }));
  });
});
