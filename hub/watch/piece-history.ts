import type { Archive } from '../archive/types.ts';
import type { HistoryEntry, Piece, PieceHistory } from '../contract/piece.ts';
import type { FiringDesk } from './firing-desk.ts';

/** Everything that was done to a piece and seen on it, the oldest first; a firing stands at its start. */
export function pieceHistory(archive: Archive, firings: FiringDesk, piece: Piece): PieceHistory {
  const fired: HistoryEntry[] = archive.firingsOfPiece(piece.id).map(({ firing, as }) => ({
    kind: 'firing',
    at: firing.startedAt,
    firing: firings.asReached(firing),
    as,
    verdict: archive.pieceVerdict(firing.id, piece.id),
  }));
  const seen: HistoryEntry[] = archive
    .observations(piece.id)
    .map((observation) => ({ kind: 'observation', at: observation.at, observation }));
  return { piece, entries: [...fired, ...seen].toSorted((a, b) => a.at - b.at) };
}
