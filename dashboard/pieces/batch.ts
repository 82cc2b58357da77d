import type { Bench, BenchBatch, BenchItem } from '../../hub/contract/bench.ts';
import type { Piece } from '../../hub/contract/piece.ts';
import type { Proposal } from '../../hub/contract/planning.ts';
import type { PieceChange } from '../api/piece-client.ts';
import { pieceRouteForm, routeDraft } from './route-form.ts';

/** What a proposed batch comes to. Pure. */

/** A batch with the pieces it speaks of, and the furnace it is proposed for; null: none of the shop can. */
export interface KnownBatch {
  readonly batch: BenchBatch;
  readonly items: readonly BenchItem[];
  readonly furnaceId: string | null;
}

export interface FurnaceBatches {
  readonly furnaceId: string;
  readonly presentCelsius: number | null;
  readonly travelCelsius: number;
  readonly order: 'exact' | 'sweep';
  readonly batches: readonly KnownBatch[];
}

/** The batches of every furnace that has any, with their pieces. */
export function furnaceBatches({ furnaces, due }: Pick<Bench, 'furnaces' | 'due'>): FurnaceBatches[] {
  return furnaces
    .filter(({ batches }) => batches.length > 0)
    .map(({ batches, ...furnace }) => ({
      ...furnace,
      batches: batches.map((batch) => knownBatch(batch, due, furnace.furnaceId)),
    }));
}

export function knownBatch(
  batch: BenchBatch,
  due: readonly BenchItem[],
  furnaceId: string | null,
): KnownBatch {
  const ids = new Set(batch.pieceIds);
  return { batch, items: due.filter(({ pieceId }) => ids.has(pieceId)), furnaceId };
}

export function marksOf({ items }: KnownBatch): string {
  return items.map(({ mark }) => mark).join(', ');
}

/** The load that a firing of this batch takes in. */
export function loadOf({ items }: KnownBatch): { readonly pieceId: string; readonly routeStepId: string }[] {
  return items.map(({ pieceId, step }) => ({ pieceId, routeStepId: step.id }));
}

/** The route of a piece with a schedule named at one of its steps; everything else as it was, ticks too. */
export function namingSchedule(
  piece: Pick<Piece, 'route'>,
  stepId: string,
  scheduleId: string,
): Required<Pick<PieceChange, 'route'>> {
  const { steps, nextKey } = pieceRouteForm(piece.route);
  const named = steps.map((each) =>
    each.id === stepId && each.step.kind === 'heat' ? { ...each, step: { ...each.step, scheduleId } } : each,
  );
  return { route: routeDraft({ steps: named, nextKey }) };
}

/** The faults of a plan, the wrong ones before the doubtful. */
export function byWeight(faults: Proposal['faults']): Proposal['faults'] {
  return [...faults].sort((a, b) => Number(a.weight === 'doubt') - Number(b.weight === 'doubt'));
}
