import { z } from 'zod';
import { AlarmKind, AlarmPriority } from './alarm.ts';

/** The definitions of the alarms with their rationalisation, as `GET /api/v1/alarm-definitions` answers. */

export const AlarmSetpoint = z
  .object({
    from: z
      .enum(['setting', 'channel', 'schedule', 'rule'])
      .describe('setting: of the shop; channel: of each channel; schedule: of each segment; rule: no number'),
    name: z.string().describe('Which one'),
    value: z.number().nullable().describe('What it is now, in `unit`; null where it is not one number'),
    unit: z.string(),
  })
  .meta({ id: 'AlarmSetpoint' });
export type AlarmSetpoint = z.infer<typeof AlarmSetpoint>;

export const AlarmDefinitionEntry = z
  .object({
    kind: AlarmKind,
    name: z.string(),
    priority: AlarmPriority,
    rank: z.int().describe('The smaller the louder'),
    dangerToLife: z.boolean(),
    cause: z.string(),
    consequence: z.string().describe('What comes of it if nobody acts'),
    action: z.string().describe('What to do first'),
    secondsToAct: z.number().describe('From the announcement to the consequence; 0: at once'),
    setpoint: AlarmSetpoint,
    deadbandPercent: z.number().describe('Percent of the limit by which a value must fall back; 0: none'),
    deadbandMostPercentOfTolerance: z.number().nullable(),
    onDelaySeconds: z.number(),
    offDelaySeconds: z.number(),
    latching: z.boolean().describe('Stays after the condition has gone, until a person resets it'),
    acknowledgeReturn: z.boolean().describe('Went by itself: still waits for someone to have seen it'),
    suppressedBy: z.array(z.object({ rule: z.string(), by: AlarmKind, same: z.string() })),
    followsFrom: z.array(z.object({ kind: AlarmKind, same: z.string() })),
    source: z.string().describe('Where the numbers come from'),
    timeSource: z.string().describe('Where the time to act comes from'),
  })
  .meta({ id: 'AlarmDefinition' });
export type AlarmDefinitionEntry = z.infer<typeof AlarmDefinitionEntry>;
