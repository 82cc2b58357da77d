import { z } from 'zod';
import { Alarm, AlarmKind, Params } from './alarm.ts';
import { LoadPiece, PieceMark } from './load.ts';
import { ChannelUncertainty } from './probe.ts';
import { EpochMs, Gap, ReadingSeries } from './reading.ts';
import { Schedule } from './schedule.ts';
import { Id } from './shop.ts';

/** One run of a furnace under a frozen copy of a schedule. */

export const FiringStatus = z.enum(['running', 'finished', 'abandoned']).meta({ id: 'FiringStatus' });
export type FiringStatus = z.infer<typeof FiringStatus>;

export const FiringDraft = z
  .strictObject({
    furnaceId: Id,
    scheduleId: Id,
    title: z.string().trim().max(120).default(''),
    note: z.string().max(4000).default(''),
    startedAt: EpochMs.optional().describe(
      'Default now. An earlier instant judges what is already in the archive.',
    ),
    confirmations: z
      .array(z.strictObject({ segment: z.int().min(0), at: EpochMs }))
      .max(40)
      .default([])
      .describe('For a firing recorded afterwards: what the smith had done, and when'),
    endedAt: EpochMs.optional().describe('Only with startedAt: records a firing that is already over'),
    pieces: z
      .array(z.strictObject({ pieceId: Id, routeStepId: Id.nullable().default(null) }))
      .max(60)
      .default([])
      .describe('The load: pieces, and the step of its route that this firing is for each'),
  })
  .meta({ id: 'FiringDraft' });
export type FiringDraft = z.infer<typeof FiringDraft>;

export const FiringPatch = z
  .strictObject({ title: z.string().trim().max(120).optional(), note: z.string().max(4000).optional() })
  .meta({ id: 'FiringPatch' });

/** The one sentence that the wall says now: a code with its numbers, and its words in English. */
export const NEXT_MOVES = [
  'heat-up',
  'heat-up-slower',
  'heat-up-faster',
  'ease-off',
  'turn-down',
  'hold',
  'hold-raise',
  'quench-now',
  'cool-still-air',
  'cool-furnace',
  'cool-bury',
  'cool-slower',
  'cool-faster',
  'wait-cooling',
  'no-reading',
  'done',
] as const;
export const NextMove = z
  .object({ code: z.enum(NEXT_MOVES), params: Params, text: z.string() })
  .meta({ id: 'NextMove' });
export type NextMove = z.infer<typeof NextMove>;
export type NextMoveCode = (typeof NEXT_MOVES)[number];

export const SegmentState = z.enum(['waiting', 'running', 'done', 'skipped']);

/** What a segment achieved, beside what was planned. Null: not applicable or not known. */
export const SegmentResult = z
  .object({
    index: z.int(),
    state: SegmentState,
    startedAt: EpochMs.nullable(),
    endedAt: EpochMs.nullable(),
    startCelsius: z.number().nullable(),
    endCelsius: z.number().nullable(),
    soakSeconds: z
      .number()
      .describe('Soak clock: time the coldest watched channel was inside tolerance, seconds'),
    elapsedSeconds: z.number(),
    blindSeconds: z
      .number()
      .describe('Time in this segment without a fresh reading of every watched channel'),
    peakCelsius: z.number().nullable(),
    lowestCelsius: z.number().nullable(),
    meanCelsius: z.number().nullable().describe('Time-weighted mean of the coldest watched channel'),
    overshootCelsius: z
      .number()
      .nullable()
      .describe('How far the hottest watched channel went above tolerance, °C'),
    secondsAboveTolerance: z.number(),
    meanRateCelsiusPerHour: z.number().nullable(),
    steepestRateCelsiusPerHour: z.number().nullable().describe('Largest rate over five minutes, signed'),
    verdict: z.enum(['pending', 'met', 'met-with-doubts', 'not-met']),
    reasons: z.array(z.object({ code: z.string(), params: Params, text: z.string() })),
  })
  .meta({ id: 'SegmentResult' });
export type SegmentResult = z.infer<typeof SegmentResult>;

/** What the judge noticed in the course of the firing. */
export const FiringEvent = z
  .object({
    at: EpochMs,
    kind: z.enum([
      'segment-started',
      'segment-ended',
      'finding-raised',
      'finding-cleared',
      'blind',
      'seeing',
      'confirmed',
      'late-readings',
    ]),
    segment: z.int().nullable(),
    finding: AlarmKind.nullable(),
    params: Params,
    text: z.string(),
  })
  .meta({ id: 'FiringEvent' });
export type FiringEvent = z.infer<typeof FiringEvent>;

/** The plan as a curve from the start: what the temperature should be at each instant. */
export const PlanPoint = z.object({ at: EpochMs, celsius: z.number(), low: z.number(), high: z.number() });
export type PlanPoint = z.infer<typeof PlanPoint>;

export const FiringVerdict = z.enum(['pending', 'met', 'met-with-doubts', 'not-met']);
export type FiringVerdict = z.infer<typeof FiringVerdict>;

/** The judged state of a firing at one instant. The same readings always give the same answer. */
export const FiringJudgement = z
  .object({
    judgedTo: EpochMs,
    judgeVersion: z.string(),
    segmentIndex: z.int(),
    segments: z.array(SegmentResult),
    soakSeconds: z
      .number()
      .nullable()
      .describe('Soak clock of the running segment, seconds; null outside a soak'),
    measuredCelsius: z.number().nullable().describe('Coldest watched channel; null while blind'),
    hottestCelsius: z.number().nullable(),
    targetCelsius: z.number().nullable(),
    lowCelsius: z.number().nullable(),
    highCelsius: z.number().nullable(),
    plannedCelsius: z.number().nullable().describe('Where the plan is at this instant'),
    rateCelsiusPerHour: z.number().nullable(),
    insideTolerance: z.boolean(),
    blindSince: EpochMs.nullable(),
    arrivalAt: EpochMs.nullable().describe('Estimated arrival at the segment target'),
    endsAt: EpochMs.nullable().describe('Estimated end of the running segment'),
    firingEndsAt: EpochMs.nullable().describe('Estimated end of the whole schedule'),
    nextMove: NextMove,
    waitsForConfirmation: z.boolean().describe('The next move is for the smith to do and to confirm'),
    verdict: FiringVerdict,
    plan: z.array(PlanPoint),
    gaps: z.array(Gap),
    events: z.array(FiringEvent),
  })
  .meta({ id: 'FiringJudgement' });
export type FiringJudgement = z.infer<typeof FiringJudgement>;

export const Firing = z
  .object({
    id: Id,
    furnaceId: Id,
    title: z.string(),
    note: z.string(),
    status: FiringStatus,
    simulated: z.boolean(),
    startedAt: EpochMs,
    endedAt: EpochMs.nullable(),
    schedule: Schedule.describe('The frozen copy'),
    watchedChannels: z.array(Id).describe('Channels the soak clock listens to, frozen at the start'),
    pieces: z.array(LoadPiece).default([]).describe('The load, frozen at the start; empty: not known'),
    createdAt: EpochMs,
  })
  .meta({ id: 'Firing' });
export type Firing = z.infer<typeof Firing>;

export const FiringDetail = z
  .object({ ...Firing.shape, judgement: FiringJudgement })
  .meta({ id: 'FiringDetail' });
export type FiringDetail = z.infer<typeof FiringDetail>;

/** One row of the firings list. */
export const FiringSummary = z
  .object({
    ...Firing.omit({ schedule: true, watchedChannels: true, pieces: true }).shape,
    furnaceName: z.string(),
    scheduleName: z.string(),
    verdict: FiringVerdict,
    peakCelsius: z.number().nullable(),
    soakSeconds: z.number().describe('Soak clock over all segments, seconds'),
    alarmCount: z.int(),
    marks: z.array(PieceMark).default([]).describe('Of the pieces that lay in it, in the order of the load'),
  })
  .meta({ id: 'FiringSummary' });
export type FiringSummary = z.infer<typeof FiringSummary>;

export const ConfirmRequest = z
  .strictObject({ segment: z.int().min(0).describe('The segment whose work is done') })
  .meta({ id: 'ConfirmRequest' });

export const FinishRequest = z
  .strictObject({ at: EpochMs.optional(), abandoned: z.boolean().default(false) })
  .meta({ id: 'FinishRequest' });

export const NoteDraft = z
  .strictObject({
    at: EpochMs.optional(),
    text: z.string().trim().min(1).max(4000),
    by: z.string().max(80).default(''),
  })
  .meta({ id: 'NoteDraft' });
export const Note = z
  .object({ id: Id, firingId: Id, at: EpochMs, text: z.string(), by: z.string(), createdAt: EpochMs })
  .meta({ id: 'Note' });
export type Note = z.infer<typeof Note>;

/** Everything about one firing: what `GET /api/v1/firings/{id}/record?format=json` answers. */
export const FiringRecord = z
  .object({
    format: z.literal('soakwatch-firing-record'),
    formatVersion: z.literal(1),
    exportedAt: EpochMs,
    shop: z.object({ id: z.string(), name: z.string() }),
    firing: FiringDetail,
    furnaceName: z.string(),
    notes: z.array(Note),
    alarms: z.array(Alarm),
    channels: z.array(
      z.object({
        id: z.string(),
        node: z.string(),
        name: z.string(),
        label: z.string(),
        role: z.string(),
        unit: z.string(),
      }),
    ),
    series: z.array(ReadingSeries),
    uncertainty: z
      .array(ChannelUncertainty)
      .default([])
      .describe('Of each watched channel; records of earlier versions have none'),
    caution: z.string(),
  })
  .meta({ id: 'FiringRecord' });
export type FiringRecord = z.infer<typeof FiringRecord>;
