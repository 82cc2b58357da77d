import type { Bench, BenchItem } from '../../hub/contract/bench.ts';
import type { Schedule } from '../../hub/contract/schedule.ts';

/** Which pieces may go into a firing that is about to start. Pure. */

/** Pieces whose next step is a heat and that lie in no firing; those that name this schedule come first. */
export function heatsDue(bench: Pick<Bench, 'due'>, schedule: Pick<Schedule, 'id'>): readonly BenchItem[] {
  const heats = bench.due.filter(({ step, firingId }) => step.kind === 'heat' && firingId === null);
  const names = (item: BenchItem) => item.step.kind === 'heat' && item.step.scheduleId === schedule.id;
  return [...heats.filter(names), ...heats.filter((item) => !names(item))];
}

/** Those in hand from the start: pieces whose step names this schedule. */
export function meantFor(bench: Pick<Bench, 'due'>, schedule: Pick<Schedule, 'id'>): ReadonlySet<string> {
  return new Set(
    bench.due.flatMap(({ step, pieceId, firingId }) =>
      step.kind === 'heat' && step.scheduleId === schedule.id && firingId === null ? [pieceId] : [],
    ),
  );
}

export interface LoadEntry {
  readonly pieceId: string;
  readonly routeStepId: string;
}

export function loadOf(due: readonly BenchItem[], chosen: ReadonlySet<string>): LoadEntry[] {
  return due
    .filter(({ pieceId }) => chosen.has(pieceId))
    .map(({ pieceId, step }) => ({ pieceId, routeStepId: step.id }));
}

/** A piece in or out of the load. */
export function toggled(chosen: ReadonlySet<string>, pieceId: string): ReadonlySet<string> {
  const next = new Set(chosen);
  if (!next.delete(pieceId)) next.add(pieceId);
  return next;
}
