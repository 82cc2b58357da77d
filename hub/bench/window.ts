import type { BenchWindow } from '../contract/bench.ts';
import type { HeatStep } from '../contract/piece.ts';
import { windowStepOf } from '../contract/route-template.ts';
import type { Schedule, Segment } from '../contract/schedule.ts';
import type { Steel } from '../physics/steel/own-steel.ts';

/** Where the heat of a step may be, and where it leaves the furnace. */

export interface HeatPlan {
  readonly window: BenchWindow;
  /** Where the furnace stands afterwards when the piece cools in it, °C; null: it is drawn out hot. */
  readonly coolsInFurnaceTo: number | null;
}

/**
 * The schedule that was chosen for the step says it by its hottest hold, else the steel by the window of the
 * step. Null: no schedule, and no window is known for this steel.
 */
export function heatPlan(step: HeatStep, steel: Steel | null, schedule: Schedule | null): HeatPlan | null {
  return (schedule && planOfSchedule(schedule)) ?? (steel && planOfSteel(step, steel));
}

function planOfSchedule({ id, segments }: Schedule): HeatPlan | null {
  const hottest = hottestOf(segments.filter((segment) => segment.kind === 'soak')) ?? hottestOf(segments);
  if (hottest === null) return null;
  const cooling = segments.find((segment) => segment.kind === 'cool' && segment.medium === 'furnace');
  return {
    window: {
      lowCelsius: hottest.targetCelsius - hottest.toleranceCelsius,
      highCelsius: hottest.targetCelsius + hottest.toleranceCelsius,
      by: 'schedule',
      scheduleId: id,
      from: null,
    },
    coolsInFurnaceTo: cooling?.targetCelsius ?? null,
  };
}

type Held = Exclude<Segment, { kind: 'cool' }>;

function hottestOf(segments: readonly Segment[]): Held | null {
  const held = segments.filter((segment) => segment.kind !== 'cool');
  return held.reduce<Held | null>(
    (best, segment) => (best === null || segment.targetCelsius > best.targetCelsius ? segment : best),
    null,
  );
}

/**
 * The window of the steel as a heat to aim at. A temper has none: its heat follows from the hardness that is
 * wanted, so it must be chosen. A window narrower than its source is good for is taken as wide as that.
 */
function planOfSteel(step: HeatStep, steel: Steel): HeatPlan | null {
  const wanted = windowStepOf(step.step);
  const found = steel.windows.find((window) => window.step === wanted);
  if (found === undefined || wanted === 'temper') return null;
  const { lowCelsius: low, highCelsius: high, from, coolToCelsius, uncertaintyCelsius } = found;
  const half = Math.max((high - low) / 2, uncertaintyCelsius);
  const middle = (low + high) / 2;
  return {
    window: { lowCelsius: middle - half, highCelsius: middle + half, by: 'steel', scheduleId: null, from },
    coolsInFurnaceTo: coolToCelsius ?? null,
  };
}
