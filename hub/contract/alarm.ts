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
  'unsafe-air-idlh',
  'unsafe-air-second',
  'unsafe-air-ceiling',
  'unsafe-air-saturated',
  'unsafe-air-dose',
  'unsafe-air-short-mean',
  'unsafe-air-low-oxygen',
  'unsafe-air-carbon-dioxide-second',
  'unsafe-air-first',
  'unsafe-air-blood',
  'unsafe-air-day-mean',
  'unsafe-air-carbon-dioxide-first',
  'unsafe-air-high-oxygen',
  'gas-flame-out',
  'gas-escaping',
  'gas-on-cold',
  'air-other-source',
  'air-sensors-disagree',
  'air-sensor-flat',
  'air-sensor-overdue',
  'probe-fault',
  'gas-empty',
  'gas-valve-shut',
  'gas-creep',
  'gas-chill',
  'gas-restricted',
  'gas-droop',
  'gas-lost',
  'gas-will-not-last',
  'gas-off-band',
  'gas-left-on',
  'overshoot',
  'overshoot-ahead',
  'soak-stalled',
  'ramp-stalled',
  'notify-failed',
] as const;
export const AlarmKind = z.enum(ALARM_KINDS).meta({ id: 'AlarmKind' });
export type AlarmKind = z.infer<typeof AlarmKind>;

/** Meaning by IEC 60073: danger is red, warning is yellow; each also has a shape and words. */
export const AlarmPriority = z.enum(['danger', 'warning']).meta({ id: 'AlarmPriority' });
export type AlarmPriority = z.infer<typeof AlarmPriority>;

/**
 * States of IEC 62682 / ISA-18.2. Latched: the condition has gone and a person has to reset it. Shelved, suppressed
 * and out of service are set aside: never announced, always listed.
 */
export const ALARM_STATES = [
  'unacknowledged',
  'acknowledged',
  'returned-unacknowledged',
  'latched-unacknowledged',
  'latched-acknowledged',
  'shelved',
  'suppressed',
  'out-of-service',
  'normal',
] as const;
export const AlarmState = z.enum(ALARM_STATES).meta({ id: 'AlarmState' });
export type AlarmState = z.infer<typeof AlarmState>;

/** Everything that can happen to an alarm. */
export const ALARM_EVENTS = [
  'condition-on',
  'condition-off',
  'acknowledge',
  'silence',
  'reset',
  'shelve',
  'unshelve',
  'shelf-ends',
  'suppress',
  'suppression-ends',
  'take-out-of-service',
  'return-to-service',
] as const;
export const AlarmEvent = z.enum(ALARM_EVENTS).meta({ id: 'AlarmEvent' });
export type AlarmEvent = z.infer<typeof AlarmEvent>;

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
    activeSince: EpochMs.nullable().describe('Since when the condition holds; null while it does not'),
    shelf: z
      .object({ at: EpochMs, until: EpochMs, by: z.string(), why: z.string() })
      .nullable()
      .describe('Put off by a person until an instant; it comes back by itself'),
    suppression: z
      .object({ at: EpochMs, rule: z.string() })
      .nullable()
      .describe('Held back by a rule of the definitions while another alarm tells the same trouble'),
    outOfService: z
      .object({ at: EpochMs, by: z.string(), why: z.string() })
      .nullable()
      .describe('Taken out by a person for work, until it is returned'),
    dangerToLife: z.boolean().describe('Cannot be shelved, suppressed or taken out of service'),
    title: z.string().describe('What is wrong, in a few words'),
    message: z.string().describe('What was measured, against which limit'),
    guidance: z.array(z.string()).describe('What to check and do, in order'),
  })
  .meta({ id: 'Alarm' });
export type Alarm = z.infer<typeof Alarm>;

/** What holds and is not announced, because a rule says that another alarm tells the same trouble. */
export const HeldBackAlarm = z
  .object({
    kind: AlarmKind,
    subject: z.string(),
    since: EpochMs,
    rule: z.string(),
    title: z.string(),
    message: z.string(),
  })
  .meta({ id: 'HeldBackAlarm' });
export type HeldBackAlarm = z.infer<typeof HeldBackAlarm>;

const By = z.string().trim().min(1).max(80);
const Why = z.string().trim().min(1).max(500).describe('The reason, in words');

export const AcknowledgeRequest = z
  .strictObject({ by: By.default('wall') })
  .meta({ id: 'AcknowledgeRequest' });

/** A shelf is for a shift at most: longer is work for "out of service". Common practice, no source. */
export const MOST_SHELF_MINUTES = 480;

/** Either for some minutes or until an instant, one minute to `MOST_SHELF_MINUTES` from now. */
export const ShelveRequest = z
  .strictObject({
    minutes: z.number().min(1).max(MOST_SHELF_MINUTES).optional(),
    until: EpochMs.optional(),
    by: By,
    why: Why,
  })
  .refine(({ minutes, until }) => (minutes === undefined) !== (until === undefined), {
    path: ['minutes'],
    message: 'say either minutes or until',
  })
  .meta({ id: 'ShelveRequest' });

export const UnshelveRequest = z.strictObject({ by: By }).meta({ id: 'UnshelveRequest' });
export const OutOfServiceRequest = z.strictObject({ by: By, why: Why }).meta({ id: 'OutOfServiceRequest' });
/** What was done and tested before it counts again. */
export const ReturnToServiceRequest = z
  .strictObject({ by: By, why: Why })
  .meta({ id: 'ReturnToServiceRequest' });
export const ResetAlarmRequest = z
  .strictObject({ by: By, why: Why.optional() })
  .meta({ id: 'ResetAlarmRequest' });
