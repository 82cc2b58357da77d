import type { Bench } from '../../hub/contract/bench.ts';
import type { Piece } from '../../hub/contract/piece.ts';
import type { PieceQuery } from '../api/piece-client.ts';
import { steelSaid } from './said.ts';
import { dueStep, stepKey, stepName } from './step-name.ts';

/** Which pieces to show. Pure. */

export interface PieceFilter {
  readonly text: string;
  /** Id of a steel; empty: every one. */
  readonly steel: string;
  /** Key of a step ("heat:temper"); empty: whatever is due. */
  readonly due: string;
  readonly archived: 'no' | 'yes' | 'any';
}

export const EVERY_PIECE: PieceFilter = { text: '', steel: '', due: '', archived: 'no' };

export interface PieceRow {
  readonly id: string;
  readonly mark: string;
  readonly title: string;
  readonly steel: string;
  readonly due: string;
  readonly archived: boolean;
}

/**
 * The question to the hub. It looks for words and not for one steel, so a steel goes along as a word and `rowsOf`
 * keeps those that are meant.
 */
export function pieceQuery(filter: PieceFilter, after: string | null): PieceQuery {
  const { text, steel, archived } = filter;
  const q = [text, steel].map((each) => each.trim()).filter((each) => each !== '');
  return {
    archived,
    q: q.length === 0 ? undefined : q.join(' '),
    after: after ?? undefined,
    limit: isSifted(filter) ? 200 : 50,
  };
}

/** True when rows of an answer may be dropped here, so that one page may hold few of them or none. */
export function isSifted({ steel, due }: PieceFilter): boolean {
  return steel !== '' || due !== '';
}

/** Rows of those pieces that fit: what is due is known here alone. */
export function rowsOf(
  pieces: readonly Piece[],
  { steel, due }: PieceFilter,
  titles: ReadonlyMap<string, string>,
): PieceRow[] {
  return pieces.flatMap((piece) => {
    const step = dueStep(piece);
    if (steel !== '' && piece.steel.grade !== steel) return [];
    if (due !== '' && (step === null || stepKey(step) !== due)) return [];
    const { id, mark, title, archived } = piece;
    return [{ id, mark, title, steel: steelSaid(piece, titles), due: step ? stepName(step) : '', archived }];
  });
}

/** The steps that are due somewhere, to choose from: an empty choice would only lead to an empty list. */
export function dueKeys({ due }: Pick<Bench, 'due'>): ReadonlySet<string> {
  return new Set(due.map(({ step }) => stepKey(step)));
}
