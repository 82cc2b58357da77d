import type { Piece, RouteStep, StepOutcome } from '../contract/piece.ts';
import type { Schedule } from '../contract/schedule.ts';
import type { Steel } from '../physics/steel/own-steel.ts';
import { batchesOf, type DueHeat } from './batches.ts';
import { dueStep, stepBefore, waitsForTemper } from './due.ts';
import { type BenchFurnaceState, furnaceFor } from './furnaces.ts';
import { alone, type FurnaceProposal, inFurnace, nowhere, type ProposedBatch } from './proposals.ts';
import { heatLengthMm } from './section.ts';
import { type HeatPlan, heatPlan } from './window.ts';

/**
 * The bench list: what is due next for every piece, and which pieces could share a firing, in which furnace and
 * in which order. Pure: the same pieces, furnaces and schedules always give the same proposal. The user decides.
 */

export interface BenchInput {
  /** The oldest first. */
  readonly pieces: readonly Piece[];
  /** Null: the steel of this piece cannot be computed with. */
  readonly steelOf: (piece: Piece) => Steel | null;
  /** Null: there is none (any more). */
  readonly scheduleOf: (id: string) => Schedule | null;
  readonly furnaces: readonly BenchFurnaceState[];
  /** The running firing that a piece lies in; null: none. */
  readonly firingOf: (pieceId: string) => string | null;
}

export interface DueItem {
  readonly piece: Piece;
  readonly steel: Steel | null;
  readonly step: RouteStep;
  readonly plan: HeatPlan | null;
  readonly urgent: boolean;
  readonly before: StepOutcome | null;
  readonly firingId: string | null;
}

export interface Proposal {
  readonly due: readonly DueItem[];
  readonly furnaces: readonly FurnaceProposal[];
  readonly unplaced: readonly ProposedBatch[];
}

/** The proposal for what lies on the bench. */
export function benchOf(input: BenchInput): Proposal {
  const due = input.pieces.flatMap((piece) => dueItem(piece, input) ?? []);
  const waiting = due.filter(({ firingId }) => firingId === null);
  const batches = batchesOf(waiting.flatMap((item) => heatOf(item) ?? []));
  const placed = batches.map((batch) => ({ batch, furnace: furnaceFor(batch, input.furnaces) }));
  return {
    due: due.toSorted((a, b) => Number(b.urgent) - Number(a.urgent)),
    furnaces: input.furnaces.map((furnace) =>
      inFurnace(
        furnace,
        placed.filter((each) => each.furnace === furnace).map((each) => each.batch),
      ),
    ),
    unplaced: [
      ...placed.flatMap(({ batch, furnace }) => (furnace === null ? nowhere(batch) : [])),
      ...waiting.flatMap(({ piece, step, plan }) =>
        step.kind === 'heat' && plan === null ? alone(piece.id, step) : [],
      ),
    ],
  };
}

function dueItem(piece: Piece, input: BenchInput): DueItem | null {
  const step = dueStep(piece);
  if (step === null) return null;
  const steel = input.steelOf(piece);
  const scheduleId = step.kind === 'heat' ? step.scheduleId : null;
  const schedule = scheduleId === null ? null : input.scheduleOf(scheduleId);
  return {
    piece,
    steel,
    step,
    plan: step.kind === 'heat' ? heatPlan(step, steel, schedule) : null,
    urgent: waitsForTemper(piece),
    before: stepBefore(piece, step)?.done?.outcome ?? null,
    firingId: input.firingOf(piece.id),
  };
}

function heatOf({ piece, step, plan, urgent }: DueItem): DueHeat | null {
  if (step.kind !== 'heat' || plan === null) return null;
  const { lowCelsius, highCelsius, scheduleId } = plan.window;
  return {
    pieceId: piece.id,
    step: step.step,
    lowCelsius,
    highCelsius,
    scheduleId,
    heatLengthMm: heatLengthMm(piece.section),
    urgent,
    coolsInFurnaceTo: plan.coolsInFurnaceTo,
  };
}
