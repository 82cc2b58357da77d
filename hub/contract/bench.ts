import { z } from 'zod';
import { Params } from './alarm.ts';
import { Provenance } from './compute/estimate.ts';
import { PieceMark } from './load.ts';
import { RouteStep, StepOutcome } from './piece.ts';
import { EpochMs } from './reading.ts';
import { RouteHeat } from './route-template.ts';
import { Id } from './shop.ts';

/** The bench list: what is due next for every piece, and which pieces could share a firing. A proposal only. */

export const BENCH_REASONS = [
  'share-window',
  'share-section',
  'share-schedule',
  'alone-no-window',
  'alone-no-partner',
  'furnace-fits',
  'no-furnace',
  'temper-first',
  'nearest-heat',
  'first-heat-unknown',
  'furnace-runs',
] as const;
export type BenchReasonCode = (typeof BENCH_REASONS)[number];

export const BenchReason = z
  .object({ code: z.enum(BENCH_REASONS), params: Params, text: z.string().describe('In English') })
  .meta({ id: 'BenchReason' });
export type BenchReason = z.infer<typeof BenchReason>;

/**
 * Where a heat may be aimed, °C: from the schedule chosen for the step, else from the steel, as wide at least as its
 * source is good for. A temper has none without a schedule.
 */
export const BenchWindow = z
  .object({
    lowCelsius: z.number(),
    highCelsius: z.number(),
    by: z.enum(['schedule', 'steel']),
    scheduleId: Id.nullable(),
    from: Provenance.nullable().describe('Of a window of the steel; null for a schedule'),
  })
  .meta({ id: 'BenchWindow' });
export type BenchWindow = z.infer<typeof BenchWindow>;

export const BenchItem = z
  .object({
    pieceId: Id,
    mark: PieceMark,
    title: z.string(),
    steelTitle: z.string(),
    step: RouteStep.describe('The first step that is not done'),
    window: BenchWindow.nullable().describe('Of a heat; null: not known, or no heat'),
    urgent: z.boolean().describe('Hardened and not tempered yet'),
    before: StepOutcome.nullable().describe('How the step before it came out; not-met: look before going on'),
    firingId: Id.nullable().describe('It lies in this running firing; null: in none'),
  })
  .meta({ id: 'BenchItem' });
export type BenchItem = z.infer<typeof BenchItem>;

export const BenchBatch = z
  .object({
    step: RouteHeat,
    pieceIds: z.array(Id),
    window: z
      .object({ lowCelsius: z.number(), highCelsius: z.number() })
      .nullable()
      .describe('What suits every piece of it; null: not known'),
    targetCelsius: z.number().nullable(),
    scheduleId: Id.nullable().describe('When its pieces name one'),
    reasons: z.array(BenchReason),
  })
  .meta({ id: 'BenchBatch' });
export type BenchBatch = z.infer<typeof BenchBatch>;

export const BenchFurnace = z
  .object({
    furnaceId: Id,
    presentCelsius: z.number().nullable().describe('null: no fresh reading'),
    batches: z.array(BenchBatch).describe('In the order proposed'),
    travelCelsius: z.number().describe('All its heating up and cooling down between them, °C'),
    order: z.enum(['exact', 'sweep']).describe('exact: no order has less; sweep: a rule for many batches'),
  })
  .meta({ id: 'BenchFurnace' });
export type BenchFurnace = z.infer<typeof BenchFurnace>;

export const Bench = z
  .object({
    at: EpochMs,
    due: z.array(BenchItem).describe('Every piece that has a step left: urgent ones first, then the oldest'),
    furnaces: z.array(BenchFurnace),
    unplaced: z
      .array(BenchBatch)
      .describe('Heats that no furnace of the shop can do, or whose heat is not known'),
  })
  .meta({ id: 'Bench' });
export type Bench = z.infer<typeof Bench>;
