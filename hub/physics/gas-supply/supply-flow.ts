/** How the flow of a gas supply changed over a window, by the scale under the cylinder. */
import { leastSquares } from '../statistics/least-squares.ts';
import { SUPPLY_CUTS, type SupplySample } from './supply-sample.ts';

/**
 * First third of the window against the last.
 * - `none`: nothing flowed in either
 * - `stopped`, `fell`, `steady`, `rose`
 */
export type FlowChange = 'none' | 'stopped' | 'fell' | 'steady' | 'rose';

export interface FlowOver {
  readonly before: number;
  readonly after: number;
  readonly change: FlowChange;
}

interface Weighed {
  readonly hours: number;
  readonly kilograms: number;
}

/** kg/h with what can be told from nothing. */
interface Rate {
  readonly kilogramsPerHour: number;
  readonly error: number;
  readonly least: number;
}

const LEAST_WEIGHED = 4;

/**
 * Flow before and after, kg/h; null without a scale, and where scale and time are too coarse to tell.
 *
 * A scale that shows whole steps looks perfectly still between them, so its step counts as noise.
 */
export function flowOver(samples: readonly SupplySample[]): FlowOver | null {
  const startMs = samples[0]?.atMs ?? 0;
  const weighed = samples.flatMap(({ atMs, contentsKilograms: kilograms }): Weighed[] =>
    kilograms === null || kilograms === undefined ? [] : [{ hours: (atMs - startMs) / 3.6e6, kilograms }],
  );
  const step = stepOf(weighed);
  const third = ((samples.at(-1)?.atMs ?? startMs) - startMs) / 3.6e6 / 3;
  if (step === null) return null;
  const early = rateOf(
    weighed.filter(({ hours }) => hours <= third),
    step,
  );
  const late = rateOf(
    weighed.filter(({ hours }) => hours >= 2 * third),
    step,
  );
  if (early === null || late === null) return null;
  const change = changeOf(early, late);
  return change === null ? null : { before: early.kilogramsPerHour, after: late.kilogramsPerHour, change };
}

/** Smallest change that the scale showed, kg; null when it showed none at all, so that nobody knows its step. */
function stepOf(weighed: readonly Weighed[]): number | null {
  let smallest = Number.POSITIVE_INFINITY;
  for (const [i, { kilograms }] of weighed.entries()) {
    const change = Math.abs(kilograms - (weighed[i - 1]?.kilograms ?? kilograms));
    if (change > 0) smallest = Math.min(smallest, change);
  }
  return Number.isFinite(smallest) ? smallest : null;
}

function rateOf(weighed: readonly Weighed[], step: number): Rate | null {
  if (weighed.length < LEAST_WEIGHED) return null;
  const rows = weighed.map(({ hours }) => [hours]);
  const fit = leastSquares({ rows, y: weighed.map(({ kilograms }) => kilograms) });
  const span = (weighed.at(-1)?.hours ?? 0) - (weighed[0]?.hours ?? 0);
  const error = Math.max(fit.standardErrors[1] ?? 0, step / span / SUPPLY_CUTS.standardErrors);
  return {
    kilogramsPerHour: -(fit.coefficients[1] ?? 0),
    error,
    least: SUPPLY_CUTS.standardErrors * error,
  };
}

function changeOf(early: Rate, late: Rate): FlowChange | null {
  const { flowShare, stoppedShare, standardErrors, leastKilogramsPerHour } = SUPPLY_CUTS;
  const [was, is] = [early.kilogramsPerHour, late.kilogramsPerHour];
  if (was <= Math.max(early.least, leastKilogramsPerHour)) {
    if (early.least > leastKilogramsPerHour) return null;
    return is > Math.max(late.least, leastKilogramsPerHour) ? 'rose' : 'none';
  }
  const noise = standardErrors * Math.hypot(early.error, late.error);
  // A scale too coarse, or a window too short, to see a third of the flow tells nothing about its change.
  if (noise > was / 3) return null;
  if (is < stoppedShare * was) return 'stopped';
  const change = is - was;
  if (Math.abs(change) < Math.max(flowShare * was, noise)) return 'steady';
  return change > 0 ? 'rose' : 'fell';
}
