import { z } from 'zod';

/**
 * What the trade reminds itself of at a step of a route, as codes; the words are in `words/`. None has a
 * source that we have seen: each is habit, and says so wherever it is shown.
 */

export const REMINDER_CODES = [
  'thin-tip-heat-sink',
  'turn-for-even-heat',
  'lay-straight-in-ash',
  'still-air-no-draught',
  'smooth-before-quench',
  'lid-beside-the-oil',
  'quench-straight-in',
  'temper-soon-after-quench',
  'cool-between-tempers',
  'clean-before-hardness',
  'clean-before-file',
  'straighten-before-cold',
  'keep-cool-while-grinding',
] as const;
export const ReminderCode = z.enum(REMINDER_CODES).meta({ id: 'ReminderCode' });
export type ReminderCode = z.infer<typeof ReminderCode>;

/** How every reminder is known. Data rather than prose, so that no screen can forget to say it. */
export const REMINDER_STANDING = { standing: 'common-practice', source: '' } as const;

export const Reminder = z
  .object({
    code: ReminderCode,
    text: z.string().describe('In English'),
    standing: z.literal('common-practice').describe('Trade habit, no source'),
    source: z.literal(''),
  })
  .meta({ id: 'Reminder' });
export type Reminder = z.infer<typeof Reminder>;
