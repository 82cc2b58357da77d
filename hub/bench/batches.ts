import type { RouteHeat } from '../contract/route-template.ts';
import { MOST_SECTION_FACTOR, sectionFactor } from './section.ts';

/** Which pieces can share a firing. */

/** A heat that is due, as far as sharing a furnace goes. */
export interface DueHeat {
  readonly pieceId: string;
  readonly step: RouteHeat;
  readonly lowCelsius: number;
  readonly highCelsius: number;
  /** The schedule that was chosen for it; null: any that suits. */
  readonly scheduleId: string | null;
  readonly heatLengthMm: number;
  readonly urgent: boolean;
  /** Where the furnace stands afterwards when it cools in it, °C; null: drawn out hot. */
  readonly coolsInFurnaceTo: number | null;
}

export interface Batch {
  readonly step: RouteHeat;
  readonly heats: readonly DueHeat[];
  /** What suits every one of them. */
  readonly lowCelsius: number;
  readonly highCelsius: number;
  readonly scheduleId: string | null;
}

/** A common window must leave a furnace room to move, unless a piece's own is narrower. Common practice, no source. */
const LEAST_COMMON_CELSIUS = 10;
/** As many as a firing takes. */
const MOST_PIECES = 60;

/** What suits all of them; `lowCelsius` may lie above `highCelsius`: then nothing does. */
export function commonWindow(heats: readonly DueHeat[]): { lowCelsius: number; highCelsius: number } {
  return {
    lowCelsius: Math.max(...heats.map((heat) => heat.lowCelsius)),
    highCelsius: Math.min(...heats.map((heat) => heat.highCelsius)),
  };
}

/** The same step, a common window, sections that heat through in like times, and no two schedules. */
export function mayShare(heats: readonly DueHeat[]): boolean {
  const { lowCelsius, highCelsius } = commonWindow(heats);
  const narrowest = Math.min(...heats.map((heat) => heat.highCelsius - heat.lowCelsius));
  return (
    heats.length <= MOST_PIECES &&
    new Set(heats.map((heat) => heat.step)).size <= 1 &&
    schedulesOf(heats).length <= 1 &&
    highCelsius - lowCelsius >= Math.min(LEAST_COMMON_CELSIUS, narrowest) &&
    sectionFactor(heats.map((heat) => heat.heatLengthMm)) <= MOST_SECTION_FACTOR
  );
}

/**
 * Every heat in exactly one batch. Greedy: the heat that must stay coolest founds a batch, and takes in what can
 * lie with it, the likest sections first; then the next that is left. For windows alone this gives the fewest
 * batches; with sections too it may give one more than need be.
 */
export function batchesOf(heats: readonly DueHeat[]): Batch[] {
  const left = heats.toSorted(byCoolest);
  const batches: Batch[] = [];
  for (let founder = left.shift(); founder !== undefined; founder = left.shift()) {
    const group = gather(founder, left);
    for (const heat of group.slice(1)) left.splice(left.indexOf(heat), 1);
    batches.push(batchOf(founder.step, group));
  }
  return batches;
}

function gather(founder: DueHeat, candidates: readonly DueHeat[]): DueHeat[] {
  const unlikeness = (heat: DueHeat) => Math.abs(Math.log(heat.heatLengthMm / founder.heatLengthMm));
  const group = [founder];
  const likely = candidates.filter((heat) => mayShare([founder, heat]));
  for (const heat of likely.toSorted((a, b) => unlikeness(a) - unlikeness(b))) {
    if (mayShare([...group, heat])) group.push(heat);
  }
  return group;
}

function batchOf(step: RouteHeat, heats: readonly DueHeat[]): Batch {
  return { step, heats, ...commonWindow(heats), scheduleId: schedulesOf(heats)[0] ?? null };
}

function schedulesOf(heats: readonly DueHeat[]): string[] {
  return [...new Set(heats.flatMap(({ scheduleId }) => scheduleId ?? []))];
}

/** Urgent ones found their batches first, so that they are never split for the sake of others. */
function byCoolest(a: DueHeat, b: DueHeat): number {
  return Number(b.urgent) - Number(a.urgent) || a.highCelsius - b.highCelsius;
}
