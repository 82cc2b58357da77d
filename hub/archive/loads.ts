import type { LoadPiece } from '../contract/load.ts';
import { type Context, fromJson } from './context.ts';
import { type StoredSummary, summarySelect, toSummary } from './firing-summaries.ts';
import type { PieceStore } from './piece-types.ts';

export interface LoadPart {
  readonly read: (firingId: string) => LoadPiece[];
  /** Inside a transaction of the caller's. */
  readonly replace: (firingId: string, pieces: readonly LoadPiece[]) => void;
  readonly firingsOfPiece: PieceStore['firingsOfPiece'];
}

/** What lay in each firing, as it was frozen. */
export function loadPart({ db }: Context): LoadPart {
  const read = db
    .prepare<[string], string>('SELECT document FROM firing_pieces WHERE firing_id = ? ORDER BY position')
    .pluck();
  const clear = db.prepare('DELETE FROM firing_pieces WHERE firing_id = ?');
  const insert = db.prepare(
    'INSERT INTO firing_pieces (firing_id, position, piece_id, mark, document) VALUES (?, ?, ?, ?, ?)',
  );
  const ofPiece = db.prepare<[string], StoredSummary & { document: string }>(
    `${summarySelect(['p.document'])} JOIN firing_pieces p ON p.firing_id = f.id
     WHERE p.piece_id = ? ORDER BY f.started_at, f.id`,
  );
  return {
    read: (firingId) => read.all(firingId).map((text) => fromJson<LoadPiece>(text)),
    replace(firingId, pieces) {
      clear.run(firingId);
      pieces.forEach((piece, position) => {
        insert.run(firingId, position, piece.pieceId, piece.mark, JSON.stringify(piece));
      });
    },
    firingsOfPiece: (pieceId) =>
      ofPiece.all(pieceId).map(({ document, ...row }) => ({
        firing: toSummary(row),
        as: fromJson<LoadPiece>(document),
      })),
  };
}
