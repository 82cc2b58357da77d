import { z } from 'zod';
import { Alarm } from './alarm.ts';
import { FiringDetail, FiringVerdict, Note } from './firing.ts';
import { RecordPiece } from './firing-record-piece.ts';
import { GasUsed } from './gas.ts';
import { ChannelUncertainty, Probe } from './probe.ts';
import { EpochMs, ReadingSeries } from './reading.ts';
import { Id } from './shop.ts';

/** The record of a firing: it stands alone, and its schema is published under the path that it names. */

export const FIRING_RECORD_SCHEMA = '/api/v1/schemas/firing-record';

/** Why a firing was judged (again). */
export const JUDGED_WHY = ['ended', 'late-readings', 'newer-rules', 'asked'] as const;
export const JudgedWhy = z.enum(JUDGED_WHY);
export type JudgedWhy = z.infer<typeof JudgedWhy>;

const judgedShape = {
  judgedAt: EpochMs,
  judgeVersion: z.string().describe('Of the rules that judge segments'),
  recordVersion: z.string().describe('Of the rules that judge pieces'),
  why: JudgedWhy,
  verdict: FiringVerdict,
};

/** A verdict that was given before, by the rules of its time. */
export const EarlierVerdict = z
  .object({
    ...judgedShape,
    pieces: z.array(z.object({ pieceId: Id, mark: z.string(), verdict: FiringVerdict, text: z.string() })),
    text: z.string().describe('Such as: Judged again by rules firing-3/record-1: was met with doubts'),
  })
  .meta({ id: 'EarlierVerdict' });
export type EarlierVerdict = z.infer<typeof EarlierVerdict>;

/** What stood behind a watched channel in this firing. */
export const ProbeInForce = z
  .object({
    channel: z.string(),
    label: z.string(),
    probe: Probe.nullable().describe('With its correction; null: nobody has said'),
    frozenAt: EpochMs.nullable().describe(
      'When it was written down with the firing; null: as it is set up now',
    ),
  })
  .meta({ id: 'ProbeInForce' });
export type ProbeInForce = z.infer<typeof ProbeInForce>;

/** Carbon monoxide of one place while the firing ran. It tells what was measured there and nothing more. */
export const RecordAir = z
  .object({
    channel: z.string(),
    label: z.string(),
    peakPpm: z.number().nullable(),
    peakAt: EpochMs.nullable(),
    worstQuarterHourPpm: z
      .number()
      .nullable()
      .describe('Highest mean over 15 minutes of which at least three quarters were measured'),
    meanPpm: z.number().nullable().describe('Time-weighted over what was measured'),
    measuredSeconds: z.number(),
    notMeasuredSeconds: z
      .number()
      .describe('Time of the firing for which nobody knows: never counted as zero'),
  })
  .meta({ id: 'RecordAir' });
export type RecordAir = z.infer<typeof RecordAir>;

const findingsShape = {
  judged: z
    .object(judgedShape)
    .nullable()
    .default(null)
    .describe('By which rules, and why; null: it still runs'),
  pieces: z.array(RecordPiece).default([]).describe('In the order of the load'),
  earlier: z.array(EarlierVerdict).default([]).describe('Verdicts that were given before, the newest first'),
  probes: z.array(ProbeInForce).default([]),
  uncertainty: z
    .array(ChannelUncertainty)
    .default([])
    .describe('Of each watched channel; records of earlier versions have none'),
  air: z.array(RecordAir).default([]).describe('Of each room-air sensor for carbon monoxide'),
  gas: GasUsed.nullable()
    .default(null)
    .describe('null: no gas is set up for its furnace, or none was measured'),
};

/** What came of a firing without its readings: what `GET /api/v1/firings/{id}/findings` answers. */
export const FiringFindings = z.object({ firingId: Id, ...findingsShape }).meta({ id: 'FiringFindings' });
export type FiringFindings = z.infer<typeof FiringFindings>;

/** Everything about one firing: what `GET /api/v1/firings/{id}/record?format=json` answers. */
export const FiringRecord = z
  .object({
    schema: z.literal(FIRING_RECORD_SCHEMA),
    format: z.literal('soakwatch-firing-record'),
    formatVersion: z.literal(2),
    exportedAt: EpochMs,
    shop: z.object({ id: z.string(), name: z.string() }),
    firing: FiringDetail,
    furnaceName: z.string(),
    notes: z.array(Note),
    alarms: z.array(Alarm).describe('With when each ended and who acknowledged it'),
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
    ...findingsShape,
    caution: z.string(),
  })
  .meta({ id: 'FiringRecord' });
export type FiringRecord = z.infer<typeof FiringRecord>;
