import { z } from 'zod';
import { EpochMs } from '../reading.ts';
import { Provenance } from './estimate.ts';
import { AirNotices, GasSamples, gapShape } from './gas-curve.ts';

/** Exposure to carbon monoxide against the limits of a body. */

export const LIMIT_PROFILES = ['strictest', 'eu', 'uk', 'germany', 'osha', 'niosh', 'acgih'] as const;
export const ALARM_STANDARDS = ['en-50291-1', 'ul-2034', 'csa-6.19'] as const;

export const CustomLimits = z
  .strictObject({
    twaPpm: z.number().optional().describe('Mean of the day, its sum divided by 8 h'),
    stelPpm: z.number().optional().describe('Mean of any 15 min'),
    ceilingPpm: z.number().optional(),
    idlhPpm: z.number().optional(),
    source: z.string().trim().min(1).max(200).describe('Who set them'),
  })
  .meta({ id: 'CustomLimits', description: 'Limits of the shop’s own; at least one, 1 to 10 000 ppm' });
export type CustomLimits = z.infer<typeof CustomLimits>;

export const LimitKind = z.enum(['twa', 'stel', 'excursion', 'ceiling', 'idlh']).meta({ id: 'LimitKind' });
export type LimitKind = z.infer<typeof LimitKind>;

export const AirLimit = z
  .object({
    id: z.string(),
    body: z.string(),
    ppm: z.number(),
    milligramsPerCubicMetre: z.number().nullable().describe('As printed; null where not printed'),
    averagingSeconds: z.number().describe('0 is the instant'),
    edition: z.string(),
    force: z.enum(['in-force', 'guideline', 'superseded']),
    from: Provenance,
  })
  .meta({ id: 'AirLimit', description: 'A ceiling on risk, never a line below which air is good' });
export type AirLimit = z.infer<typeof AirLimit>;

export const KnownMean = z
  .object({
    ppm: z.number().nullable().describe('With gaps filled as stated; null where too much is unknown'),
    atLeastPpm: z.number().describe('What the measured time alone adds up to'),
    coverage: z.number().describe('Share of the time that was measured, 0 to 1'),
    measuredSeconds: z.number(),
    gapSeconds: z.number(),
  })
  .meta({ id: 'KnownMean' });
export type KnownMean = z.infer<typeof KnownMean>;

export const LimitReading = z
  .object({
    kind: LimitKind,
    limit: AirLimit,
    ppm: z.number().nullable().describe('What is compared: the mean, or the level of the instant'),
    standing: z
      .enum(['above', 'not-above', 'unknown'])
      .describe('not-above: enough was measured and it is not above; no claim that the air is good'),
    minutesAbove: z.number().describe('With the level above the limit, filled gaps included'),
  })
  .meta({ id: 'LimitReading' });
export type LimitReading = z.infer<typeof LimitReading>;

const AtLevel = z.object({ at: EpochMs, ppm: z.number() });

export const exposureShape = {
  twa: KnownMean.describe('The day so far by the convention of the body'),
  lastEightHours: KnownMean,
  stel: KnownMean.describe('The 15 minutes that end now'),
  highestStel: AtLevel.nullable(),
  highestEightHours: AtLevel.nullable(),
  peak: AtLevel.nullable(),
  coverage: z.number().describe('Share of the time that was measured, 0 to 1'),
  limits: z.array(LimitReading),
};

export const TwaConvention = z
  .discriminatedUnion('kind', [
    z.object({ kind: z.literal('sum-over'), hours: z.number() }),
    z.object({ kind: z.literal('mean-of-shift'), leastHours: z.number(), mostHours: z.number() }),
  ])
  .meta({
    id: 'TwaConvention',
    description:
      'sum-over: sum of level times time over the hours, however long the day was; mean-of-shift: over the hours worked, within the ends',
  });

export const ExposureQuestion = z
  .strictObject({
    profile: z.union([z.enum(LIMIT_PROFILES), CustomLimits]).default('strictest'),
    samples: GasSamples,
    startAt: EpochMs.optional().describe('When the work began; the first sample where left out'),
    endAt: EpochMs.optional().describe(
      'When it ended; the last sample where left out; within 48 h of the start',
    ),
    ...gapShape,
  })
  .meta({
    id: 'ExposureQuestion',
    examples: [
      {
        profile: 'osha',
        samples: [
          { at: 0, ppm: 150 },
          { at: 7_200_000, ppm: 75 },
          { at: 14_400_000, ppm: 50 },
        ],
        endAt: 28_800_000,
        longestHoldSeconds: 14_400,
      },
      { samples: [{ at: 0, ppm: 12 }], endAt: 900_000, gap: { kind: 'unknown' } },
    ],
  });

export const ExposureAnswer = z
  .object({
    profile: z.enum([...LIMIT_PROFILES, 'custom']),
    convention: TwaConvention,
    startAt: EpochMs,
    endAt: EpochMs,
    ...exposureShape,
    doseWarnings: z
      .array(z.object({ standard: z.enum(ALARM_STANDARDS), at: EpochMs.nullable() }))
      .describe('When the dose of a standard for alarms was full; null: not, which is no evidence'),
    notices: AirNotices,
  })
  .meta({ id: 'ExposureAnswer' });
