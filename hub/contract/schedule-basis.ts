import { z } from 'zod';
import { Params } from './alarm.ts';
import { Provenance } from './compute/estimate.ts';
import { PieceShape } from './compute/piece.ts';
import { Composition } from './compute/steel-choice.ts';

/** What a schedule was made from, with the reason of every number. */

export const PLAN_REASONS = [
  'target-window',
  'target-for-hardness',
  'tolerance-furnace',
  'ramp-free',
  'ramp-even',
  'soak-hold',
  'soak-core-lag',
  'soak-core-clock',
  'cool-rule',
  'cool-bury',
  'cool-air',
  'cool-quench',
  'cool-furnace',
] as const;
export type PlanReasonCode = (typeof PLAN_REASONS)[number];

/** Why a number of a schedule is what it is. `path` names it as a pointer into the schedule. */
export const PlanReason = z
  .object({
    path: z.string().describe('Such as /segments/1/targetCelsius'),
    value: z
      .union([z.number(), z.string(), z.null()])
      .describe('What was proposed there: where the schedule now says otherwise, a person has changed it'),
    code: z.enum(PLAN_REASONS),
    params: Params,
    text: z.string(),
    from: Provenance,
  })
  .meta({ id: 'PlanReason' });
export type PlanReason = z.infer<typeof PlanReason>;

/** Kept with a schedule, and so with every firing under it. */
export const ScheduleBasis = z
  .object({
    madeAt: z.int().describe('Epoch ms'),
    step: z.string().describe('A heat of a route, such as full-anneal'),
    steel: z.object({ id: z.string().nullable(), title: z.string(), composition: Composition }),
    section: z.object({ shape: PieceShape, thicknessMm: z.number() }).describe('The thickest piece'),
    furnace: z.string().describe('Name of the furnace it was made for'),
    reasons: z.array(PlanReason),
    uncertainty: z.array(z.string()),
    askTheDataSheet: z.array(z.string()).describe("What to look up in the steel maker's data sheet first"),
  })
  .meta({ id: 'ScheduleBasis' });
export type ScheduleBasis = z.infer<typeof ScheduleBasis>;
