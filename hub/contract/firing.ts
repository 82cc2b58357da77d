import { z } from 'zod';
import { AlarmKind, Params } from './alarm.ts';
import { LoadPiece, PieceMark } from './load.ts';
import { EpochMs, Gap } from './reading.ts';
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
  'wait-core',
  'turn-piece',
  'leave-buried',
  'temper-soon',
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
      .describe('Soak clock, seconds: by the core when the pieces are known, else by the coldest channel'),
    soakSecondsCore: z
      .number()
      .nullable()
      .describe('Time the computed core of the slowest piece was inside tolerance; null: no piece known'),
    soakSecondsAir: z.number().describe('Time the coldest watched channel was inside tolerance, seconds'),
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
      'arrest',
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

/** An instant that is foretold. It lies between `low` and `high` with 80 %; null: farther than is foretold. */
export const ForetoldInstant = z.object({
  at: EpochMs,
  low: EpochMs.nullable(),
  high: EpochMs.nullable(),
});
export type ForetoldInstant = z.infer<typeof ForetoldInstant>;

/** Where the temperature is going, up to 15 minutes on and never across the end of the running segment. */
export const FiringForecast = z
  .object({
    points: z
      .array(z.object({ at: EpochMs, celsius: z.number(), low: z.number(), high: z.number() }))
      .describe('Mean and 80 % band of the temperature around the coldest watched probe'),
    soakStartsAt: ForetoldInstant.nullable().describe('When the soak clock will start; null: not foretold'),
    soakEndsAt: ForetoldInstant.nullable().describe('When the soak clock will be full'),
    limitInSeconds: z
      .number()
      .nullable()
      .describe('Until the upper limit is as likely crossed as not; null: not within the time looked at'),
    limitProbability: z
      .number()
      .describe(
        'Probability that the upper limit is crossed within the time looked at; 0 while a plan is followed',
      ),
  })
  .meta({ id: 'FiringForecast' });
export type FiringForecast = z.infer<typeof FiringForecast>;

/** One piece of the load as it is computed. The band holds what the furnace and the start may be, not the probe's ±. */
export const PieceHeat = z
  .object({
    pieceId: Id,
    mark: z.string(),
    part: z.enum(['only', 'slowest', 'quickest']).describe('Of the load, by the heat it takes a surface'),
    place: z
      .enum(['furnace', 'still-air', 'ash', 'vermiculite', 'quench'])
      .describe('Where it is taken to be'),
    computedTo: EpochMs.describe('Not moved on while nothing is measured'),
    coreCelsius: z.number().nullable().describe('null while nothing is measured'),
    surfaceCelsius: z.number().nullable(),
    coreLowCelsius: z.number().nullable(),
    coreHighCelsius: z.number().nullable(),
    correctedBy: Id.nullable().describe('The thermocouple on the load that the model is drawn to'),
    bridgedSeconds: z.number().describe('Time without a reading that was bridged by a straight line'),
  })
  .meta({ id: 'PieceHeat' });
export type PieceHeat = z.infer<typeof PieceHeat>;

/** What the soak clock listens to. */
export const SoakClockOn = z.enum(['core', 'coldest-thermocouple']);
export type SoakClockOn = z.infer<typeof SoakClockOn>;

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
    soakClockOn: SoakClockOn,
    soakClockText: z.string().describe('What the soak clock listens to, in words'),
    pieces: z.array(PieceHeat).describe('The slowest and the quickest piece of the load; empty: not known'),
    forecast: FiringForecast.nullable().describe('null: blind, not running, or nothing to foretell'),
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
