import type { LoadPiece } from '../contract/load.ts';
import type { Piece, RouteStep } from '../contract/piece.ts';
import { windowStepOf } from '../contract/route-template.ts';
import type { Steel } from '../physics/steel/own-steel.ts';

/** A piece as a firing freezes it: with its steel by title and composition, so that the record stands alone. */
export function frozenPiece(piece: Piece, steel: Steel, step: RouteStep | null): LoadPiece {
  const { id, mark, title, section } = piece;
  return {
    pieceId: id,
    mark,
    title,
    steel: {
      id: steel.id === '' ? null : steel.id,
      title: steel.title,
      composition: { ...steel.composition },
    },
    section,
    routeStepId: step?.id ?? null,
    step: step?.kind === 'heat' ? windowStepOf(step.step) : null,
  };
}
