import type { Archive } from '../archive/types.ts';
import { frozenPiece } from '../bench/load.ts';
import type { FiringDraft } from '../contract/firing.ts';
import type { LoadPiece } from '../contract/load.ts';
import type { Piece, RouteStep } from '../contract/piece.ts';
import { words } from '../contract/words/words.ts';
import { WatchError } from './errors.ts';
import { steelOfPiece } from './piece-steel.ts';
import { steelBook } from './steel-book.ts';

export type LoadAsked = FiringDraft['pieces'];

/** Pieces as asked for, frozen as a firing takes them in. */
export type LoadResolver = (asked: LoadAsked) => LoadPiece[];

/**
 * @returns a resolver that throws WatchError `not-found` (piece or step), `conflict` (put away),
 *   `invalid-request` (twice, or no heat), and what the steel of a piece refuses with
 */
export function loadResolver(archive: Archive): LoadResolver {
  const book = steelBook(archive);
  return (asked) => {
    refuseTwice(asked.map(({ pieceId }) => pieceId));
    return asked.map(({ pieceId, routeStepId }) => {
      const piece = pieceOf(archive, pieceId);
      return frozenPiece(
        piece,
        steelOfPiece(book, piece.steel),
        routeStepId === null ? null : heatOf(piece, routeStepId),
      );
    });
  };
}

function refuseTwice(ids: readonly string[]): void {
  const twice = ids.find((id, index) => ids.indexOf(id) !== index);
  if (twice === undefined) return;
  throw new WatchError('invalid-request', `the piece ${twice} stands in the load twice: name it once`);
}

function pieceOf(archive: Archive, id: string): Piece {
  const piece = archive.piece(id);
  if (!piece) throw new WatchError('not-found', `there is no piece ${id}: add it under Pieces first`);
  if (!piece.archived) return piece;
  throw new WatchError('conflict', `${piece.mark} is put away: take it out again first`);
}

function heatOf(piece: Piece, stepId: string): RouteStep {
  const step = piece.route.find(({ id }) => id === stepId);
  if (!step) throw new WatchError('not-found', `there is no step ${stepId} in the route of ${piece.mark}`);
  if (step.kind === 'heat') return step;
  throw new WatchError(
    'invalid-request',
    `step ${stepId} of ${piece.mark} is no heat: a firing cannot do it`,
  );
}

/** What a change of the load was, in words for the journal. */
export function loadChangeText(before: readonly LoadPiece[], after: readonly LoadPiece[]): string {
  const only = (these: readonly LoadPiece[], those: readonly LoadPiece[]) =>
    these.filter(({ pieceId }) => !those.some((other) => other.pieceId === pieceId)).map(({ mark }) => mark);
  return words('en').load(only(after, before), only(before, after));
}
