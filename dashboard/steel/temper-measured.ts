import type { z } from 'zod';
import type { TemperSet } from '../../hub/contract/compute/steels.ts';
import type { MeasuredPair } from './temper-chart.tsx';

/** Two tempers this near in time (a tenth) are told apart by no hardness tester. */
const SAME_TIME = 0.1;

/** What was measured after this time, of every set that states its time. */
export function measuredAt(
  sets: readonly z.infer<typeof TemperSet>[],
  hours: number,
): readonly MeasuredPair[] {
  return sets
    .filter(({ timeStated }) => timeStated)
    .flatMap(({ pairs }) => pairs)
    .filter((pair) => Math.abs(pair.hours - hours) <= SAME_TIME * hours);
}
