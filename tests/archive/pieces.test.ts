import type { Database } from 'better-sqlite3';
import { describe, expect, it, onTestFinished } from 'vitest';
import { assemble } from '../../hub/archive/assemble.ts';
import { openDatabase } from '../../hub/archive/database.ts';
import { migrate } from '../../hub/archive/migrate.ts';
import { MIGRATIONS } from '../../hub/archive/migrations/list.ts';
import { idsSql } from '../../hub/archive/piece-search.ts';
import type { NewPiece, PieceFilter } from '../../hub/archive/piece-types.ts';
import type { Archive } from '../../hub/archive/types.ts';
import type { LoadPiece } from '../../hub/contract/load.ts';
import { addFurnace, countingIds, firingDraft, openTest, T0, temporaryFile } from './helpers.ts';

const withCode = (code: string) => expect.objectContaining({ name: 'ArchiveError', code });

function draft(mark: string, extra: Partial<NewPiece> = {}): NewPiece {
  return {
    mark,
    title: 'Chisel',
    note: '',
    steel: { grade: '1095', title: '', certificateId: null, composition: null },
    section: { shape: 'plate', thicknessMm: 6, massKilograms: null },
    route: [{ kind: 'work', work: 'shape', title: '', note: '', optional: false, reminders: [] }],
    ...extra,
  };
}

function loaded(pieceId: string, mark: string): LoadPiece {
  return {
    pieceId,
    mark,
    title: '',
    steel: { id: '1095', title: '1095', composition: { C: 0.95 } },
    section: { shape: 'plate', thicknessMm: 6, massKilograms: null },
    routeStepId: null,
    step: 'normalise',
  };
}

function withHandle(): { archive: Archive; db: Database } {
  const open = openDatabase(':memory:');
  const archive = assemble(open, { path: ':memory:', ids: countingIds(), simulated: false, now: T0 });
  onTestFinished(() => archive.close());
  return { archive, db: open.db };
}

describe('pieces in the archive', () => {
  it('are there again after the file was closed, with route, observations and files', () => {
    const path = temporaryFile();
    const before = openTest(path);
    const made = before.createPiece(draft('A'), T0);
    const [step] = made.route;
    before.tickStep(made.id, step?.id ?? '', { at: T0, by: 'Ada', firingId: null, outcome: 'done' }, T0 + 1);
    const about = { pieceId: made.id, firingId: null, stepId: null, at: T0, by: '', note: '', createdAt: T0 };
    const file = { fileName: 'a.txt', contentType: 'text/plain', sha256: 'x' } as const;
    const { seen } = before.addAttachment({ ...about, file, content: Buffer.from('bytes') });
    const kept = { piece: before.piece(made.id), observations: before.observations(made.id) };
    before.close();
    const after = openTest(path);
    expect({ piece: after.piece(made.id), observations: after.observations(made.id) }).toEqual(kept);
    expect(kept.piece).toMatchObject({ updatedAt: T0 + 1, route: [{ done: { by: 'Ada' } }] });
    const id = seen.kind === 'attachment' ? seen.attachmentId : '';
    expect(Buffer.from(after.attachment(id)?.content ?? []).toString()).toBe('bytes');
  });

  it('refuse a mark that another carries, by whichever door', () => {
    const archive = openTest();
    archive.createPiece(draft('A-1'), T0);
    const other = archive.createPiece(draft('B-1'), T0);
    expect(() => archive.createPiece(draft('a-1'), T0)).toThrow(withCode('conflict'));
    expect(() => archive.changePiece(other.id, { mark: 'a-1' }, T0)).toThrow(withCode('conflict'));
    expect(archive.changePiece(other.id, { mark: 'b-1' }, T0).mark).toBe('b-1');
  });

  it('are open as long as a step is left and nobody has put them away', () => {
    const archive = openTest();
    const [a, b] = [archive.createPiece(draft('A'), T0), archive.createPiece(draft('B'), T0 + 1)];
    archive.createPiece(draft('C', { route: [] }), T0);
    const open = () => archive.openPieces().map(({ mark }) => mark);
    expect(open()).toEqual(['A', 'B']);
    const done = { at: T0, by: '', firingId: null, outcome: 'done' } as const;
    archive.tickStep(a.id, a.route[0]?.id ?? '', done, T0);
    archive.changePiece(b.id, { archived: true }, T0);
    expect(open()).toEqual([]);
    archive.tickStep(a.id, a.route[0]?.id ?? '', null, T0);
    expect(open()).toEqual(['A']);
  });

  it('keep nothing of an attachment whose observation cannot be kept', () => {
    const { archive, db } = withHandle();
    const about = { pieceId: 'nope', firingId: null, stepId: null, at: T0, by: '', note: '', createdAt: T0 };
    const file = { fileName: 'a.txt', contentType: 'text/plain', sha256: 'x' } as const;
    expect(() => archive.addAttachment({ ...about, file, content: Buffer.from('x') })).toThrow(
      withCode('not-found'),
    );
    expect(db.prepare('SELECT count(*) FROM attachments').pluck().get()).toBe(0);
  });

  it('leave the record of a firing alone, and go out of it when it is deleted', () => {
    const archive = openTest();
    const furnace = addFurnace(archive);
    const { id } = archive.createPiece(draft('A'), T0);
    const row = archive.createFiring(
      firingDraft(furnace.id, {
        status: 'finished',
        endedAt: T0 + 1,
        pieces: [loaded(id, 'A'), loaded('gone', 'Z')],
      }),
    );
    expect(archive.firing(row.id)?.pieces).toEqual(row.pieces);
    expect(archive.firings({ limit: 5 }).map(({ marks }) => marks)).toEqual([['A', 'Z']]);
    archive.saveLoad(row.id, [loaded(id, 'A')]);
    expect(archive.firingsOfPiece(id)).toMatchObject([
      { firing: { id: row.id, marks: ['A'] }, as: { mark: 'A' } },
    ]);
    archive.deleteFiring(row.id);
    expect(archive.firingsOfPiece(id)).toEqual([]);
    expect(archive.piece(id)).not.toBeNull();
  });
});

describe('the templates that a shop begins with', () => {
  it('are given once: those that were deleted do not come back', () => {
    const path = temporaryFile();
    const before = openTest(path);
    const [first, ...rest] = before.routeTemplates();
    expect(rest.length).toBeGreaterThanOrEqual(2);
    before.deleteRouteTemplate(first?.id ?? '');
    before.close();
    expect(openTest(path).routeTemplates()).toEqual(rest);
  });

  it('come to a shop that was there before pieces were', () => {
    const path = temporaryFile();
    const old = openDatabase(path);
    old.close();
    expect(MIGRATIONS[5]).toMatch(/CREATE TABLE pieces/);
    const archive = openTest(path);
    expect(archive.routeTemplates().map(({ name }) => name)).toContain('Plain forged tool');
  });

  it('and firings of before have no load', () => {
    const { db } = withHandle();
    expect(migrate(db, MIGRATIONS)).toBe(0);
    expect(db.prepare('SELECT count(*) FROM firing_pieces').pluck().get()).toBe(0);
  });
});

describe('a search of pieces', () => {
  const filters: [string, PieceFilter, RegExp][] = [
    ['everything', { limit: 50 }, /^SCAN pieces USING COVERING INDEX pieces_by_age$/],
    ['words', { limit: 50, q: 'leaf spring' }, /^SCAN pieces USING COVERING INDEX pieces_by_age$/],
    [
      'a mark',
      { limit: 1, mark: 'A-1', archived: 'any' },
      /^SEARCH pieces USING (COVERING )?INDEX pieces_by_mark \(mark=\?\)$/m,
    ],
    [
      'the next page',
      { limit: 50, after: 'x' },
      /^SEARCH pieces USING COVERING INDEX pieces_by_age \(created_at<\?\)/,
    ],
  ];
  it.each(filters)(
    'for %s walks an index that holds all it asks for, and sorts nothing',
    (_, filter, index) => {
      const { db } = withHandle();
      const { sql, values } = idsSql(filter);
      const steps = db.prepare<[object], { detail: string }>(`EXPLAIN QUERY PLAN ${sql}`).all(values);
      const plan = steps.map(({ detail }) => detail).join('\n');
      expect(plan).toMatch(index);
      expect(plan).not.toMatch(/TEMP B-TREE/);
    },
  );

  it('takes a quote, a percent sign and a semicolon for what they are', () => {
    const archive = openTest();
    archive.createPiece(draft('A', { title: "50% nickel'; DROP TABLE pieces" }), T0);
    const marks = (q: string) => archive.pieces({ q, limit: 5 }).pieces.map(({ mark }) => mark);
    expect(marks("nickel'; drop")).toEqual(['A']);
    expect(marks('5_% %')).toEqual([]);
  });
});
