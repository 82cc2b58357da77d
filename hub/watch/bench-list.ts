import type { Archive } from '../archive/types.ts';
import { benchOf, type DueItem } from '../bench/bench.ts';
import type { BenchFurnaceState } from '../bench/furnaces.ts';
import type { FurnaceProposal, ProposedBatch } from '../bench/proposals.ts';
import type { Bench, BenchBatch, BenchFurnace, BenchItem } from '../contract/bench.ts';
import type { DisplayUnit } from '../contract/schedule.ts';
import { words } from '../contract/words/words.ts';
import { furnaceReading } from './furnace-heat.ts';
import { knownSteels } from './piece-steel.ts';
import { steelBook } from './steel-book.ts';

/** The bench list as the shop stands now. It is worked out afresh each time: nothing of it is kept. */
export function benchList(archive: Archive, now: number): Bench {
  const steelOf = knownSteels(steelBook(archive));
  const { displayUnit } = archive.shop().settings;
  const firings = archive.runningFirings();
  const lies = new Map(firings.flatMap(({ id, pieces }) => pieces.map(({ pieceId }) => [pieceId, id])));
  const { due, furnaces, unplaced } = benchOf({
    pieces: archive.openPieces(),
    steelOf: (piece) => steelOf(piece.steel),
    scheduleOf: (id) => archive.schedule(id),
    furnaces: furnaceStates(archive, now),
    firingOf: (pieceId) => lies.get(pieceId) ?? null,
  });
  return {
    at: now,
    due: due.map(itemOf),
    furnaces: furnaces.map((proposal) => furnaceOf(proposal, displayUnit)),
    unplaced: unplaced.map((batch) => batchOf(batch, displayUnit)),
  };
}

function furnaceStates(archive: Archive, now: number): BenchFurnaceState[] {
  const channels = archive.channels();
  const busy = new Set(archive.runningFirings().map(({ furnaceId }) => furnaceId));
  return archive
    .furnaces()
    .filter((furnace) => !furnace.archived)
    .map(({ id, name, kind, ratedCelsius }) => ({
      id,
      name,
      kind,
      ratedCelsius,
      presentCelsius: furnaceReading(channels, id, now)?.celsius ?? null,
      runs: busy.has(id),
    }));
}

function itemOf({ piece, steel, step, plan, urgent, before, firingId }: DueItem): BenchItem {
  const { id: pieceId, mark, title } = piece;
  const steelTitle = steel?.title ?? (piece.steel.title || (piece.steel.grade ?? ''));
  return { pieceId, mark, title, steelTitle, step, window: plan?.window ?? null, urgent, before, firingId };
}

function furnaceOf(
  { furnace, batches, travelCelsius, order }: FurnaceProposal,
  unit: DisplayUnit,
): BenchFurnace {
  const { id: furnaceId, presentCelsius } = furnace;
  const inOrder = batches.map((batch) => batchOf(batch, unit));
  return { furnaceId, presentCelsius, batches: inOrder, travelCelsius, order };
}

function batchOf(batch: ProposedBatch, unit: DisplayUnit): BenchBatch {
  const reasons = batch.reasons.map(({ code, params }) => ({
    code,
    params: { ...params },
    text: words('en').bench(code, params, unit),
  }));
  return { ...batch, pieceIds: [...batch.pieceIds], reasons };
}
