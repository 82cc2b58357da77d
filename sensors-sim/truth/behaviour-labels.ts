/** When each behaviour was switched on and off, as labels beside the readings. */
import type { Behaviour } from '../behaviours/behaviour.ts';
import type { Label } from './truth.ts';

/** The labels of a stretch of the behaviours' time, its end excluded, marked with the end of the step. */
export function behaviourLabels(
  behaviours: readonly Behaviour[],
  fromSeconds: number,
  toSeconds: number,
  atMs: number,
): Label[] {
  const isWithin = (at: number | null) => at !== null && at >= fromSeconds && at < toSeconds;
  return behaviours.flatMap(({ name, startSeconds, durationSeconds }): Label[] => {
    const ends = durationSeconds === null ? null : startSeconds + durationSeconds;
    return [
      ...(isWithin(startSeconds) ? [{ what: 'behaviour-began' as const, atMs, name }] : []),
      ...(isWithin(ends) ? [{ what: 'behaviour-ended' as const, atMs, name }] : []),
    ];
  });
}
