import { z } from 'zod';
import { AlarmEvent, AlarmKind, AlarmPriority, AlarmState, Params } from './alarm.ts';
import { EpochMs } from './reading.ts';

/** The journal of the alarms: everything that happened to each, never changed afterwards. */

/** One step in the life of an alarm, before the journal has taken it in. */
export const AlarmTransition = z.object({
  at: EpochMs,
  alarmId: z.string(),
  kind: AlarmKind,
  priority: AlarmPriority,
  subject: z.string(),
  firingId: z.string().nullable(),
  furnaceId: z.string().nullable(),
  event: AlarmEvent,
  from: AlarmState,
  to: AlarmState,
  active: z.boolean().describe('Whether the condition holds after it'),
  activeSince: EpochMs.nullable(),
  by: z.string().nullable().describe('Who did it; null: the hub'),
  why: z.string().nullable().describe('The reason that a person gave, or the rule that did it'),
  until: EpochMs.nullable().describe('The end of a shelf'),
  params: Params.describe('The numbers of the alarm at that instant'),
});
export type AlarmTransition = z.infer<typeof AlarmTransition>;

export const AlarmJournalEntry = AlarmTransition.extend({
  seq: z.int().describe('1, 2, 3 … without a hole'),
  previousHash: z.string().describe('`hash` of the entry before; 64 zeros before the first'),
  hash: z.string().describe('SHA-256, hex, of the canonical JSON (RFC 8785) of the entry without this field'),
}).meta({ id: 'AlarmJournalEntry' });
export type AlarmJournalEntry = z.infer<typeof AlarmJournalEntry>;

export const ALARM_JOURNAL_BREAKS = [
  'missing-entry',
  'previous-hash-differs',
  'content-differs',
  'head-differs',
] as const;

/** Whether the chain of the journal holds. A cut at its end shows only against a head that was kept elsewhere. */
export const AlarmJournalCheck = z
  .object({
    holds: z.boolean(),
    entries: z.int(),
    head: z
      .object({ seq: z.int(), hash: z.string() })
      .nullable()
      .describe('The last entry: keep it elsewhere to notice a cut'),
    breaks: z
      .array(z.object({ seq: z.int(), code: z.enum(ALARM_JOURNAL_BREAKS), detail: z.string() }))
      .describe('The first places where it does not hold, 100 at most'),
  })
  .meta({ id: 'AlarmJournalCheck' });
export type AlarmJournalCheck = z.infer<typeof AlarmJournalCheck>;
