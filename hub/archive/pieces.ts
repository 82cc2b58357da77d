import type { Piece, PiecePage, PiecePatch } from '../contract/piece.ts';
import { type Context, fromJson } from './context.ts';
import { ArchiveError } from './errors.ts';
import { keptRoute, tickedRoute } from './piece-route.ts';
import { idsSql, searchWords } from './piece-search.ts';
import type { PieceFilter, PieceStore } from './piece-types.ts';

type PiecePart = Pick<
  PieceStore,
  'pieces' | 'piece' | 'openPieces' | 'createPiece' | 'changePiece' | 'tickStep'
>;

type StoredPiece = Omit<Piece, 'archived' | 'steel' | 'section' | 'route'> & {
  archived: number;
  steel: string;
  section: string;
  route: string;
};

const SELECT = `
  SELECT id, mark, title, note, steel, section, route, archived, created_at AS createdAt,
    updated_at AS updatedAt
  FROM pieces`;

const COLUMNS = `id, mark, title, archived, open_steps, created_at, updated_at, search, steel, section, note, route`;
const INSERT = `
  INSERT INTO pieces (${COLUMNS}) VALUES (@id, @mark, @title, @archived, @openSteps, @createdAt, @updatedAt,
    @search, @steel, @section, @note, @route)`;
const UPDATE = `
  UPDATE pieces SET mark = @mark, title = @title, archived = @archived, open_steps = @openSteps,
    updated_at = @updatedAt, search = @search, steel = @steel, section = @section, note = @note, route = @route
  WHERE id = @id`;

function toPiece(row: StoredPiece): Piece {
  return {
    ...row,
    archived: row.archived === 1,
    steel: fromJson<Piece['steel']>(row.steel),
    section: fromJson<Piece['section']>(row.section),
    route: fromJson<Piece['route']>(row.route),
  };
}

function toRow(piece: Piece): object {
  return {
    ...piece,
    archived: Number(piece.archived),
    openSteps: piece.route.filter((step) => step.done === null).length,
    search: searchWords(piece),
    steel: JSON.stringify(piece.steel),
    section: JSON.stringify(piece.section),
    route: JSON.stringify(piece.route),
  };
}

/** Pieces with their routes. A route is one document: it is read and written as a whole. */
export function piecePart({ db, ids, write }: Context): PiecePart {
  const one = db.prepare<[string], StoredPiece>(`${SELECT} WHERE id = ?`);
  const open = db.prepare<[], StoredPiece>(
    `${SELECT} WHERE archived = 0 AND open_steps > 0 ORDER BY created_at, id`,
  );
  const bearer = db
    .prepare<[string], string>('SELECT id FROM pieces WHERE mark = ? COLLATE NOCASE AND archived = 0')
    .pluck();
  const insert = db.prepare(INSERT);
  const update = db.prepare(UPDATE);

  function piece(id: string): Piece | null {
    const row = one.get(id);
    return row ? toPiece(row) : null;
  }

  function mustFind(id: string): Piece {
    const found = piece(id);
    if (!found) throw new ArchiveError('not-found', `there is no piece with the id "${id}"`);
    return found;
  }

  function refuseTaken({ id, mark, archived }: Piece): void {
    const holder = archived ? undefined : bearer.get(mark);
    if (holder === undefined || holder === id) return;
    throw new ArchiveError(
      'conflict',
      `the mark "${mark}" is on another piece: choose another mark, or put that piece away first`,
    );
  }

  function save(changed: Piece, statement: typeof insert): Piece {
    refuseTaken(changed);
    statement.run(toRow(changed));
    return changed;
  }

  function change(id: string, { route, ...named }: PiecePatch, at: number): Piece {
    const before = mustFind(id);
    const kept = route === undefined ? before.route : keptRoute(route, before.route, ids);
    const said = Object.fromEntries(Object.entries(named).filter(([, value]) => value !== undefined));
    return save({ ...before, ...said, route: kept, updatedAt: at }, update);
  }

  function page(filter: PieceFilter): PiecePage {
    const { sql, values } = idsSql(filter);
    const found = db.prepare<[object], string>(sql).pluck().all(values);
    const pieces = found.slice(0, filter.limit).map(mustFind);
    return { pieces, next: found.length > filter.limit ? (pieces.at(-1)?.id ?? null) : null };
  }

  return {
    pieces: page,
    piece,
    openPieces: () => open.all().map(toPiece),
    createPiece: ({ route, ...draft }, at) =>
      write(() => {
        const made = { ...draft, id: ids(), archived: false, createdAt: at, updatedAt: at };
        return save({ ...made, route: keptRoute(route, [], ids) }, insert);
      }),
    changePiece: (id, named, at) => write(() => change(id, named, at)),
    tickStep: (pieceId, stepId, done, at) =>
      write(() => {
        const before = mustFind(pieceId);
        return save({ ...before, route: tickedRoute(before.route, stepId, done), updatedAt: at }, update);
      }),
  };
}
