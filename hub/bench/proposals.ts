import type { BenchReasonCode } from '../contract/bench.ts';
import type { HeatStep } from '../contract/piece.ts';
import type { RouteHeat } from '../contract/route-template.ts';
import type { Batch } from './batches.ts';
import { type BenchFurnaceState, COLD_CELSIUS, isUsual, targetIn } from './furnaces.ts';
import { type Ordered, orderStops, type Stop } from './order.ts';
import { MOST_SECTION_FACTOR, sectionFactor } from './section.ts';

/** What is proposed, each with its reasons as codes and numbers. */

export interface Reason {
  readonly code: BenchReasonCode;
  readonly params: Readonly<Record<string, number | string | null>>;
}

export interface ProposedBatch {
  readonly step: RouteHeat;
  readonly pieceIds: readonly string[];
  /** Null: the heat is not known. */
  readonly window: { readonly lowCelsius: number; readonly highCelsius: number } | null;
  readonly targetCelsius: number | null;
  readonly scheduleId: string | null;
  readonly reasons: readonly Reason[];
}

export interface FurnaceProposal {
  readonly furnace: BenchFurnaceState;
  readonly batches: readonly ProposedBatch[];
  readonly travelCelsius: number;
  readonly order: Ordered['by'];
}

/** The batches of one furnace in the order that travels least. */
export function inFurnace(furnace: BenchFurnaceState, batches: readonly Batch[]): FurnaceProposal {
  const start = furnace.presentCelsius ?? COLD_CELSIUS;
  const stops = batches.map((batch) => stopOf(batch, furnace));
  const { order, travelCelsius, by } = orderStops(stops, start);
  let at = start;
  const inOrder = order.flatMap((place, rank) => {
    const [batch, stop] = [batches[place], stops[place]];
    if (batch === undefined || stop === undefined) return [];
    const reasons = orderReasons(furnace, stop, rank, Math.abs(stop.targetCelsius - at));
    at = stop.leavesCelsius;
    return [proposed(batch, stop.targetCelsius, [...reasons, fits(furnace, batch.step)])];
  });
  return { furnace, batches: inOrder, travelCelsius, order: by };
}

/** In an oven what may cool in it does; elsewhere pieces are drawn out hot and buried. */
function stopOf(batch: Batch, furnace: BenchFurnaceState): Stop {
  const targetCelsius = targetIn(batch, furnace) ?? batch.lowCelsius;
  const cooled = batch.heats.flatMap(({ coolsInFurnaceTo }) => coolsInFurnaceTo ?? []);
  const stays = furnace.kind === 'electric-oven' && cooled.length > 0;
  return {
    targetCelsius,
    leavesCelsius: stays ? Math.min(...cooled, targetCelsius) : targetCelsius,
    urgent: batch.heats.some((heat) => heat.urgent),
  };
}

function orderReasons(furnace: BenchFurnaceState, stop: Stop, rank: number, stepCelsius: number): Reason[] {
  const reasons: Reason[] = [{ code: 'nearest-heat', params: { stepCelsius } }];
  if (stop.urgent) reasons.unshift({ code: 'temper-first', params: {} });
  if (rank > 0) return reasons;
  if (furnace.presentCelsius === null) reasons.push({ code: 'first-heat-unknown', params: {} });
  if (furnace.runs) reasons.push({ code: 'furnace-runs', params: {} });
  return reasons;
}

function fits(furnace: BenchFurnaceState, step: RouteHeat): Reason {
  const { name, ratedCelsius } = furnace;
  return {
    code: 'furnace-fits',
    params: { furnace: name, ratedCelsius, usual: Number(isUsual(step, furnace)) },
  };
}

/** A batch that no furnace can heat. */
export function nowhere(batch: Batch): ProposedBatch {
  return proposed(batch, null, [{ code: 'no-furnace', params: { targetCelsius: batch.lowCelsius } }]);
}

/** A heat whose temperature is not known: nobody can say what it could lie with. */
export function alone(pieceId: string, { step, scheduleId }: HeatStep): ProposedBatch {
  const none = { window: null, targetCelsius: null, scheduleId };
  return { step, pieceIds: [pieceId], ...none, reasons: [{ code: 'alone-no-window', params: {} }] };
}

function proposed(batch: Batch, targetCelsius: number | null, more: readonly Reason[]): ProposedBatch {
  const { step, heats, lowCelsius, highCelsius, scheduleId } = batch;
  return {
    step,
    pieceIds: heats.map((heat) => heat.pieceId),
    window: { lowCelsius, highCelsius },
    targetCelsius,
    scheduleId,
    reasons: [...shareReasons(batch), ...more],
  };
}

function shareReasons({ heats, lowCelsius, highCelsius, scheduleId }: Batch): Reason[] {
  if (heats.length === 1) return [{ code: 'alone-no-partner', params: {} }];
  const factor = sectionFactor(heats.map((heat) => heat.heatLengthMm));
  const reasons: Reason[] = [
    { code: 'share-window', params: { lowCelsius, highCelsius } },
    { code: 'share-section', params: { factor, mostFactor: MOST_SECTION_FACTOR } },
  ];
  const agreed = scheduleId !== null && heats.every((heat) => heat.scheduleId === scheduleId);
  return agreed ? [{ code: 'share-schedule', params: {} }, ...reasons] : reasons;
}
