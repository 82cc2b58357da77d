import { z } from 'zod';
import { EpochMs } from './reading.ts';

/**
 * Findings and alarms. A finding is what a judge noticed, as a code with its numbers; an alarm is a finding
 * that needs a person. Words for people are made from the code in `words/`, nowhere else.
 */

export const ALARM_KINDS = [
  'not-watching-channel',
  'not-watching-node',
  'not-watching-air',
  'unsafe-air-second',
  'unsafe-air-first',
  'probe-fault',
  'overshoot',
  'overshoot-ahead',
  'soak-stalled',
  'ramp-stalled',
] as const;
export const AlarmKind = z.enum(ALARM_KINDS).meta({ id: 'AlarmKind' });
export type AlarmKind = z.infer<typeof AlarmKind>;

/** Meaning by IEC 60073: danger is red, warning is yellow; each also has a shape and words. */
export const AlarmPriority = z.enum(['danger', 'warning']).meta({ id: 'AlarmPriority' });
export type AlarmPriority = z.infer<typeof AlarmPriority>;

/** States of IEC 62682 / ISA-18.2 that this version uses; derived from two facts, active and acknowledged. */
export const AlarmState = z
  .enum(['unacknowledged', 'acknowledged', 'returned-unacknowledged', 'normal'])
  .meta({ id: 'AlarmState' });
export type AlarmState = z.infer<typeof AlarmState>;

export const Params = z.record(z.string(), z.union([z.number(), z.string(), z.null()]));
export type Params = z.infer<typeof Params>;

/** What a judge noticed. `subject` says of what: a firing, furnace, channel or node id, or 'shop'. */
export interface Finding {
  readonly kind: AlarmKind;
  readonly subject: string;
  /** Since when it holds, epoch ms. */
  readonly since: number;
  readonly params: Params;
}

export const Alarm = z
  .object({
    id: z.string(),
    kind: AlarmKind,
    priority: AlarmPriority,
    subject: z.string(),
    firingId: z.string().nullable(),
    furnaceId: z.string().nullable(),
    params: Params,
    state: AlarmState,
    active: z.boolean(),
    raisedAt: EpochMs,
    clearedAt: EpochMs.nullable(),
    acknowledgedAt: EpochMs.nullable(),
    acknowledgedBy: z.string().nullable(),
    title: z.string().describe('What is wrong, in a few words'),
    message: z.string().describe('What was measured, against which limit'),
    guidance: z.array(z.string()).describe('What to check and do, in order'),
  })
  .meta({ id: 'Alarm' });
export type Alarm = z.infer<typeof Alarm>;

export const AcknowledgeRequest = z
  .strictObject({ by: z.string().trim().min(1).max(80).default('wall') })
  .meta({ id: 'AcknowledgeRequest' });
