import { z } from 'zod';
import { Alarm, AlarmKind } from './alarm.ts';
import { EpochMs } from './reading.ts';

/** How the alarms of a stretch of time did, against the figures of EEMUA 191 and ISA-18.2. */

const Place = {
  kind: AlarmKind,
  place: z.string().describe('Id of the furnace, channel or node that it is about, or shop'),
  title: z.string(),
};

export const AlarmMeasure = z
  .object({
    measure: z.enum([
      'alarms-per-hour',
      'alarms-per-ten-minutes',
      'most-in-ten-minutes',
      'busy-periods-percent',
      'flood-percent',
      'most-frequent-percent',
      'chattering',
      'fleeting',
      'stale',
    ]),
    value: z.number(),
    target: z.number().describe('Up to this it is well'),
    most: z.number().nullable().describe('Up to this it can be managed; null: no second figure'),
    verdict: z.enum(['within', 'manageable', 'above']),
    source: z.string(),
    standing: z.enum(['published', 'site-rule']),
  })
  .meta({ id: 'AlarmMeasure' });
export type AlarmMeasure = z.infer<typeof AlarmMeasure>;

export const AlarmReview = z
  .object({
    from: EpochMs,
    to: EpochMs,
    enoughData: z.boolean().describe('The figures are meant for 30 days at least'),
    announced: z.int().describe('How often an alarm asked for somebody'),
    measures: z.array(AlarmMeasure),
    mostFrequent: z
      .array(z.object({ ...Place, count: z.int(), percent: z.number() }))
      .describe('Ten at most'),
    acknowledgement: z
      .object({
        answered: z.int(),
        unanswered: z.int(),
        medianSeconds: z.number().nullable(),
        ninetiethPercentileSeconds: z.number().nullable(),
      })
      .describe('From the announcement to the acknowledgement'),
    chattering: z.array(
      z.object({ ...Place, activations: z.int(), mostInOneMinute: z.int(), from: EpochMs, to: EpochMs }),
    ),
    fleeting: z.array(z.object({ ...Place, count: z.int() })),
    stale: z.array(z.object({ ...Place, alarmId: z.string(), activeSince: EpochMs })),
    standing: z.array(
      z.object({
        ...Place,
        alarmId: z.string(),
        state: Alarm.shape.state,
        active: z.boolean(),
        activeSince: EpochMs.nullable(),
      }),
    ),
    floods: z.array(z.object({ from: EpochMs, to: EpochMs.nullable(), alarms: z.int() })),
  })
  .meta({ id: 'AlarmReview' });
export type AlarmReview = z.infer<typeof AlarmReview>;
