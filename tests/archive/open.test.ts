import { copyFileSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { describe, expect, it } from 'vitest';
import { openDatabase, requireSqlite } from '../../hub/archive/database.ts';
import { migrate } from '../../hub/archive/migrate.ts';
import { MIGRATIONS } from '../../hub/archive/migrations/list.ts';
import { openArchive } from '../../hub/archive/open.ts';
import {
  addChannel,
  addFurnace,
  countingIds,
  openTest,
  T0,
  temporaryFile,
  temporaryFolder,
} from './helpers.ts';

const withCode = (code: string) => expect.objectContaining({ name: 'ArchiveError', code });

/** A database of another program, written the ordinary way. */
function foreignFile(setup: string): string {
  const path = temporaryFile();
  const db = new Database(path);
  db.exec(setup);
  db.close();
  return path;
}

function expectUntouched(path: string, code: string): void {
  const before = readFileSync(path);
  expect(() => openTest(path)).toThrow(withCode(code));
  expect(readFileSync(path).equals(before)).toBe(true);
  expect(readdirSync(join(path, '..'))).toEqual(['shop.soakwatch']);
}

describe('opening a new archive', () => {
  it('makes a file that says whose it is and of which version', () => {
    const path = temporaryFile();
    openTest(path).close();
    const header = readFileSync(path);
    expect(header.toString('latin1', 68, 72)).toBe('SOAK');
    expect(header.readUInt32BE(60)).toBe(MIGRATIONS.length);
  });

  it('runs with a write-ahead log, full sync, foreign keys and a busy timeout', () => {
    const { db, close } = openDatabase(temporaryFile());
    const pragma = (name: string) => db.pragma(name, { simple: true });
    expect(pragma('journal_mode')).toBe('wal');
    expect(pragma('synchronous')).toBe(2);
    expect(pragma('foreign_keys')).toBe(1);
    expect(pragma('busy_timeout')).toBe(5000);
    close();
  });

  it('has strict tables only', () => {
    const { db, close } = openDatabase(':memory:');
    const loose = db
      .prepare("SELECT name FROM pragma_table_list WHERE schema = 'main' AND type = 'table' AND strict = 0")
      .pluck()
      .all();
    expect(loose).toEqual(['sqlite_schema']);
    expect(() => db.exec("INSERT INTO readings VALUES (1, 1, 'warm', 0, NULL)")).toThrow(
      /STRICT|cannot store/i,
    );
    close();
  });

  it('says which folder is missing', () => {
    const path = join(temporaryFolder(), 'nowhere', 'shop.soakwatch');
    expect(() => openTest(path)).toThrow(withCode('disk'));
    expect(() => openTest(path)).toThrow(/nowhere/);
  });

  it('refuses a folder in the place of a file', () => {
    expect(() => openTest(temporaryFolder())).toThrow(withCode('disk'));
  });
});

describe('opening an archive again', () => {
  it('finds everything, and makes no second shop', () => {
    const path = temporaryFile();
    const first = openTest(path);
    const shop = first.shop();
    const channel = addChannel(first);
    first.readings.append([{ channel: channel.id, at: T0, value: 20.5, quality: 'good' }]);
    first.close();
    const second = openTest(path);
    expect(second.shop()).toEqual(shop);
    expect(second.channels().map(({ latest }) => latest?.value)).toEqual([20.5]);
  });

  it('runs no migration twice, and carries on where a power cut stopped between two', () => {
    const path = temporaryFile();
    const early = new Database(path);
    early.pragma(`application_id = ${0x534f414b}`);
    expect(migrate(early, MIGRATIONS.slice(0, 1))).toBe(1);
    early.close();
    const { db, close } = openDatabase(path);
    expect(db.pragma('user_version', { simple: true })).toBe(MIGRATIONS.length);
    expect(migrate(db, MIGRATIONS)).toBe(0);
    close();
  });

  it('leaves the whole earlier version behind when a migration fails half way', () => {
    const db = new Database(':memory:');
    const broken = [...MIGRATIONS, 'CREATE TABLE half (a) STRICT; CREATE TABLE shop (a);'];
    expect(() => migrate(db, broken)).toThrow();
    expect(db.pragma('user_version', { simple: true })).toBe(MIGRATIONS.length);
    expect(db.prepare("SELECT name FROM sqlite_schema WHERE name = 'half'").all()).toEqual([]);
    db.close();
  });

  it('opens an archive whose log was never written back into the file', () => {
    const path = temporaryFile();
    const copy = join(temporaryFolder(), 'copy');
    const archive = openTest(path);
    addFurnace(archive, 'Forge');
    for (const end of ['', '-wal']) copyFileSync(`${path}${end}`, `${copy}${end}`);
    archive.close();
    expect(
      openTest(copy)
        .furnaces()
        .map(({ name }) => name),
    ).toEqual(['Forge']);
  });
});

describe('files that are not for us', () => {
  it('refuses a text file and leaves it alone', () => {
    const path = temporaryFile();
    writeFileSync(path, 'not a database, and longer than an SQLite header '.repeat(10));
    expectUntouched(path, 'not-an-archive');
  });

  it("refuses another program's database and leaves it alone", () => {
    expectUntouched(foreignFile('CREATE TABLE theirs (a); PRAGMA application_id = 77;'), 'not-an-archive');
  });

  it('refuses an unmarked database in WAL mode and leaves it alone', () => {
    expectUntouched(foreignFile('PRAGMA journal_mode = WAL; CREATE TABLE theirs (a);'), 'not-an-archive');
  });

  it('refuses an archive of a newer version and leaves it alone', () => {
    const newer = MIGRATIONS.length + 1;
    const path = foreignFile(
      `PRAGMA application_id = ${0x534f414b}; PRAGMA user_version = ${newer}; CREATE TABLE shop (a);`,
    );
    expectUntouched(path, 'archive-too-new');
    expect(() => openTest(path)).toThrow(new RegExp(`version ${newer}`));
  });

  it('never mixes simulated and real readings in one archive', () => {
    const path = temporaryFile();
    openTest(path, false).close();
    expect(() => openTest(path, true)).toThrow(withCode('simulated-mismatch'));
    expect(openTest(path, false).shop().simulated).toBe(false);
  });
});

describe('one writer', () => {
  it('refuses a second opening at once, and lets it in after the first has closed', () => {
    const path = temporaryFile();
    const first = openTest(path);
    expect(() => openTest(path)).toThrow(withCode('archive-busy'));
    addFurnace(first);
    first.close();
    expect(openTest(path).furnaces()).toHaveLength(1);
  });

  it('lets a reader look at the file meanwhile', () => {
    const path = temporaryFile();
    addFurnace(openTest(path), 'Oven');
    const reader = new Database(path, { readonly: true });
    expect(reader.prepare('SELECT name FROM furnaces').pluck().all()).toEqual(['Oven']);
    reader.close();
  });

  it('gives the lock back when the opening fails', () => {
    const path = temporaryFile();
    openTest(path, false).close();
    expect(() => openTest(path, true)).toThrow(withCode('simulated-mismatch'));
    expect(openTest(path, false).alive()).toBe(true);
  });
});

describe('being alive', () => {
  it('is no longer said once the archive is closed, or its file is gone', () => {
    const path = temporaryFile();
    const archive = openTest(path);
    expect(archive.alive()).toBe(true);
    rmSync(path);
    expect(archive.alive()).toBe(false);
    const other = openTest();
    other.close();
    expect(other.alive()).toBe(false);
  });

  it('refuses every call after closing, by code, and closes twice without harm', () => {
    const archive = openArchive({ path: ':memory:', ids: countingIds(), simulated: false, now: T0 });
    archive.close();
    archive.close();
    expect(() => archive.shop()).toThrow(withCode('closed'));
    expect(() => archive.readings.latest('x')).toThrow(withCode('closed'));
  });
});

describe('the SQLite underneath', () => {
  it.each(['3.51.3', '3.51.4', '3.53.2', '4.0.0'])('accepts %s', (version) => {
    expect(() => requireSqlite(version)).not.toThrow();
  });

  /** sqlite.org/wal.html: the WAL-reset fault is in 3.7.0 to 3.51.2. */
  it.each(['3.7.0', '3.51.2', '3.50.9', '2.99.99', 'unknown'])('refuses %s', (version) => {
    expect(() => requireSqlite(version)).toThrow(withCode('sqlite-too-old'));
  });
});
