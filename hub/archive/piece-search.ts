import type { Piece } from '../contract/piece.ts';
import type { PieceFilter } from './piece-types.ts';

/** More words than this narrow nothing down. */
const MOST_WORDS = 8;

/** What a search looks in, in small letters: SQLite itself folds ASCII alone. */
export function searchWords({ mark, title, note, steel }: Piece): string {
  return [mark, title, steel.grade ?? '', steel.title, note].join('\n').toLowerCase();
}

function wordsOf(q: string | undefined): string[] {
  return (q ?? '').toLowerCase().split(/\s+/).filter(Boolean).slice(0, MOST_WORDS);
}

function archivedTerm(archived: PieceFilter['archived']): string | null {
  if (archived === 'any') return null;
  return archived === 'yes' ? 'archived = 1' : 'archived = 0';
}

/**
 * The ids of one page and one more, the newest first. Only the terms asked for stand in it, and every column
 * is in the index that fits, so that SQLite reads no route before it knows which pieces are on the page.
 */
export function idsSql(filter: PieceFilter): { sql: string; values: Record<string, unknown> } {
  const words = wordsOf(filter.q);
  const terms = [
    filter.mark === undefined ? null : 'mark = @mark COLLATE NOCASE',
    archivedTerm(filter.archived),
    ...words.map((_, index) => `instr(search, @word${index}) > 0`),
    filter.after === undefined
      ? null
      : '(created_at, id) < (SELECT created_at, id FROM pieces WHERE id = @after)',
  ].filter((term) => term !== null);
  const where = terms.length > 0 ? `WHERE ${terms.join(' AND ')}` : '';
  const values = {
    mark: filter.mark,
    after: filter.after,
    limit: filter.limit + 1,
    ...Object.fromEntries(words.map((word, index) => [`word${index}`, word])),
  };
  return { sql: `SELECT id FROM pieces ${where} ORDER BY created_at DESC, id DESC LIMIT @limit`, values };
}
