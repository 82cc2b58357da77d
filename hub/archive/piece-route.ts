import type { RouteStep, RouteStepDraft, StepDone } from '../contract/piece.ts';
import { ArchiveError } from './errors.ts';

/** The route as kept: new steps get an id, steps that are there keep theirs and their tick. */
export function keptRoute(
  drafts: readonly RouteStepDraft[],
  before: readonly RouteStep[],
  ids: () => string,
): RouteStep[] {
  const left = new Map(before.map((step) => [step.id, step.done]));
  return drafts.map((draft) => {
    if (draft.id === undefined) return { ...draft, id: ids(), done: null };
    const done = left.get(draft.id);
    if (done === undefined) {
      const message = `step "${draft.id}" is not in this route, or stands in it twice: read the piece again and send the route anew`;
      throw new ArchiveError('conflict', message);
    }
    left.delete(draft.id);
    return { ...draft, id: draft.id, done };
  });
}

/** The route with one step ticked or unticked. @throws ArchiveError `not-found` */
export function tickedRoute(route: readonly RouteStep[], stepId: string, done: StepDone | null): RouteStep[] {
  if (!route.some((step) => step.id === stepId)) {
    throw new ArchiveError('not-found', `there is no step "${stepId}" in the route of this piece`);
  }
  return route.map((step) => (step.id === stepId ? { ...step, done } : step));
}
