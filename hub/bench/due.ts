import type { HeatStep, Piece, RouteStep } from '../contract/piece.ts';

/** What is next for a piece. */

/** The first step that is not done; null: the route is through, or there is none. */
export function dueStep(piece: Pick<Piece, 'route'>): RouteStep | null {
  return piece.route.find((step) => step.done === null) ?? null;
}

/** The step before the due one; null at the beginning of the route. */
export function stepBefore(piece: Pick<Piece, 'route'>, due: RouteStep): RouteStep | null {
  return piece.route[piece.route.indexOf(due) - 1] ?? null;
}

/**
 * Quenched and not tempered: its last heat was a hardening that was not skipped, and the next heat is a temper.
 * It stands full of stress, so it goes before everything else (common practice, no source).
 */
export function waitsForTemper(piece: Pick<Piece, 'route'>): boolean {
  const heats = piece.route.filter((step) => step.kind === 'heat');
  const last = heats.findLast(({ done }) => done !== null && done.outcome !== 'skipped');
  const next = heats.find(({ done }) => done === null);
  return last !== undefined && quenches(last) && next?.step === 'temper';
}

function quenches({ step }: HeatStep): boolean {
  return step === 'harden' || step === 'austenitise';
}
