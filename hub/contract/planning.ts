import { z } from 'zod';
import { Params } from './alarm.ts';
import { namesASteel, steelShape } from './compute/steel-choice.ts';
import { Section } from './load.ts';
import { RouteHeat } from './route-template.ts';
import { COOLING_MEDIA, ScheduleDraft, Segment } from './schedule.ts';
import { Id } from './shop.ts';

/** Schedules that come from the steel; and the check of any schedule against its pieces. */

export const PLAN_FAULTS = [
  'beyond-rating',
  'too-hot-for-steel',
  'step-not-recommended',
  'no-window-known',
  'soak-shorter-than-core',
  'never-reaches-core',
  'anneal-cools-too-fast',
  'anneal-stops-too-hot',
  'normalise-below-upper-critical',
  'harden-above-window',
  'harden-below-window',
  'never-that-hot',
  'section-does-not-harden',
  'temper-leaves-too-hard',
  'temper-leaves-too-soft',
  'sub-critical-above-ac1',
  'gas-will-not-suffice',
  'gas-may-not-suffice',
  'gas-not-known',
  'ends-after-closing',
] as const;
export type PlanFaultCode = (typeof PLAN_FAULTS)[number];

/** What speaks against a schedule for a piece. The smith decides: nothing here forbids a start. */
export const PlanFault = z
  .object({
    code: z.enum(PLAN_FAULTS),
    weight: z
      .enum(['wrong', 'doubt'])
      .describe('wrong: this will not do what the step is for; doubt: it may not'),
    segment: z.int().nullable(),
    pieceId: Id.nullable(),
    mark: z.string().nullable(),
    params: Params,
    text: z.string(),
  })
  .meta({ id: 'PlanFault' });
export type PlanFault = z.infer<typeof PlanFault>;

/** Which pieces: those on the bench by id, or one that is described here. */
const pieceIds = z.array(Id).max(60).default([]).describe('Pieces on the bench; empty: the one given here');

export const ProposalRequest = z
  .strictObject({
    step: RouteHeat,
    furnaceId: Id,
    pieceIds,
    ...steelShape,
    section: Section.optional().describe('Needed without pieceIds'),
    wantedHrc: z.number().min(20).max(70).optional().describe('For a temper: the hardness that is wanted'),
    coolIn: z.enum(COOLING_MEDIA).optional().describe('How it shall cool; chosen from the step without it'),
  })
  .superRefine((question, ctx) => {
    if (question.pieceIds.length > 0) return;
    namesASteel(question, ctx);
    if (question.section !== undefined) return;
    ctx.addIssue({ code: 'custom', path: ['section'], message: 'give the section, or pieces by their ids' });
  })
  .meta({ id: 'ProposalRequest' });
export type ProposalRequest = z.infer<typeof ProposalRequest>;

export const Proposal = z
  .object({
    draft: ScheduleDraft.describe('Ready to be sent to /api/v1/schedules, with its basis'),
    faults: z.array(PlanFault).describe('What the check says of the proposal itself'),
    expectedSeconds: z
      .number()
      .nullable()
      .describe('Until the end of the soak, from a cold furnace; null: not known'),
  })
  .meta({ id: 'Proposal' });
export type Proposal = z.infer<typeof Proposal>;

export const PlanCheckRequest = z
  .strictObject({
    furnaceId: Id,
    scheduleId: Id.optional(),
    segments: z.array(Segment).min(1).max(40).optional().describe('A schedule that is not stored yet'),
    pieces: z
      .array(z.strictObject({ pieceId: Id, routeStepId: Id.nullable().default(null) }))
      .max(60)
      .default([]),
    wantedHrc: z.number().min(20).max(70).optional(),
  })
  .superRefine(({ scheduleId, segments }, ctx) => {
    if ((scheduleId === undefined) !== (segments === undefined)) return;
    const message = 'name a stored schedule or send its segments: one of the two';
    ctx.addIssue({ code: 'custom', path: ['scheduleId'], message });
  })
  .meta({ id: 'PlanCheckRequest' });
export type PlanCheckRequest = z.infer<typeof PlanCheckRequest>;

export const PlanCheck = z
  .object({
    faults: z.array(PlanFault),
    checked: z.array(z.string()).describe('What was looked at'),
    notChecked: z.array(z.string()).describe('What could not be, and why'),
  })
  .meta({ id: 'PlanCheck' });
export type PlanCheck = z.infer<typeof PlanCheck>;
