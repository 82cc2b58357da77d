import type { Archive } from '../archive/types.ts';
import type { FiringDetail, FiringVerdict } from '../contract/firing.ts';
import type { RouteStep, StepOutcome } from '../contract/piece.ts';

/** Steps of routes that a firing was for. */

type Over = Pick<FiringDetail, 'id' | 'pieces' | 'endedAt'> & {
  readonly judgement: { verdict: FiringVerdict };
};

/**
 * A finished firing ticks the step that it was for, with its verdict. A step that is ticked already stays as it
 * is, and a step or piece that is gone is passed over: the firing itself is kept whatever became of them.
 */
export function tickRoutes(archive: Archive, firing: Over, now: number): void {
  const at = firing.endedAt ?? now;
  for (const { pieceId, step } of stepsOf(archive, firing)) {
    if (step.done !== null) continue;
    const outcome = outcomeOf(archive, firing, pieceId);
    archive.tickStep(pieceId, step.id, { at, by: '', firingId: firing.id, outcome }, now);
  }
}

/** The firing was judged again: ticks that it made take the new verdict; one that was taken away stays away. */
export function retickRoutes(archive: Archive, firing: Over, now: number): void {
  for (const { pieceId, step } of stepsOf(archive, firing)) {
    const outcome = outcomeOf(archive, firing, pieceId);
    if (step.done?.firingId !== firing.id || step.done.outcome === outcome) continue;
    archive.tickStep(pieceId, step.id, { ...step.done, outcome }, now);
  }
}

function stepsOf(archive: Archive, { pieces }: Over): { pieceId: string; step: RouteStep }[] {
  return pieces.flatMap(({ pieceId, routeStepId }) => {
    const step = archive.piece(pieceId)?.route.find(({ id }) => id === routeStepId);
    return step ? [{ pieceId, step }] : [];
  });
}

/** The verdict of the piece where it has one of its own, else that of the whole firing. */
function outcomeOf(archive: Archive, firing: Over, pieceId: string): StepOutcome {
  const verdict = archive.pieceVerdict(firing.id, pieceId) ?? firing.judgement.verdict;
  return verdict === 'pending' ? 'done' : verdict;
}
