import { z } from 'zod';
import { FiringVerdict } from './firing.ts';
import { EpochMs } from './reading.ts';
import { Id } from './shop.ts';

/** How firings of one schedule come out, one after the other: what `GET /api/v1/statistics` answers. */

export const MEASURES = ['soak-mean', 'peak', 'soak-time', 'hardness'] as const;
export const Measure = z.enum(MEASURES).meta({ id: 'Measure' });
export type Measure = z.infer<typeof Measure>;

/** More points than this no chart shows apart. */
export const MOST_CHARTED = 500;

export const RULES = ['N1', 'N2', 'N3', 'N4', 'N5', 'N6', 'N7', 'N8', 'W1', 'W2', 'W3', 'W4'] as const;
export const RuleId = z
  .enum(RULES)
  .describe('Nelson 1984 (N) and Western Electric 1956 (W) tests for special causes');
export type RuleId = z.infer<typeof RuleId>;

export const ChartPoint = z
  .object({
    at: EpochMs.describe('Start of the firing, or the instant of the hardness reading'),
    value: z.number().describe('°C, seconds or HRC, by the measure'),
    firingId: Id.nullable(),
    pieceId: Id.nullable().describe('Hardness only'),
    title: z.string(),
    marks: z.array(z.string()),
    furnaceId: Id.nullable(),
    furnaceName: z.string(),
    scheduleVersion: z.int().nullable(),
    verdict: FiringVerdict.nullable(),
    rules: z.array(RuleId).describe('Tests whose pattern this point completes'),
  })
  .meta({ id: 'ChartPoint' });
export type ChartPoint = z.infer<typeof ChartPoint>;

const Limits = z.object({ centre: z.number(), lower: z.number(), upper: z.number() });

/** A stretch between changes that shifted the mean, with limits of its own. */
export const BatchStage = z
  .object({
    from: z.int().describe('Index of its first point'),
    to: z.int().describe('One past its last'),
    values: Limits,
  })
  .meta({ id: 'BatchStage' });
export type BatchStage = z.infer<typeof BatchStage>;

/**
 * Individuals and moving ranges, limits at three sigma from the mean moving range. What stands beside `stages` is of
 * the last one: the process as it is now.
 */
export const BatchChart = z
  .object({
    stages: z.array(BatchStage).describe('One, unless a known change shifted the mean for sure'),
    values: Limits,
    ranges: Limits,
    movingRanges: z.array(z.number()).describe('One fewer than points'),
    sigmaWithin: z.number(),
    sigmaOverall: z.number(),
  })
  .meta({ id: 'BatchChart' });
export type BatchChart = z.infer<typeof BatchChart>;

/** Fewer values than this say nothing about capability. Common practice, no single source. */
export const LEAST_FOR_CAPABILITY = 25;

const Indices = z.object({
  potential: z.number().nullable().describe('Cp or Pp: null with a limit on one side only'),
  actual: z.number().describe('Cpk or Ppk'),
});
export const NoCapability = z.enum([
  'no-tolerance',
  'tolerance-changed',
  'several-furnaces',
  'few-values',
  'not-in-control',
  'does-not-vary',
]);
export type NoCapability = z.infer<typeof NoCapability>;
export const BatchCapability = z
  .discriminatedUnion('known', [
    z.object({
      known: z.literal(true),
      within: Indices.describe('Cp and Cpk'),
      overall: Indices.describe('Pp and Ppk'),
    }),
    z.object({ known: z.literal(false), reason: NoCapability }),
  ])
  .meta({ id: 'BatchCapability' });
export type BatchCapability = z.infer<typeof BatchCapability>;

/** What was changed in the shop. Append-only. */
export const SHOP_CHANGES = ['probe', 'probe-moved', 'calibration', 'cylinder', 'furnace', 'other'] as const;
export const ShopChangeKind = z.enum(SHOP_CHANGES);
export type ShopChangeKind = z.infer<typeof ShopChangeKind>;

export const ShopChangeDraft = z
  .strictObject({
    at: EpochMs.optional().describe('Default now'),
    kind: z.enum(['probe', 'calibration', 'cylinder', 'furnace', 'other']),
    furnaceId: Id.nullable().default(null).describe('null: the whole shop'),
    text: z.string().trim().max(200).default(''),
    by: z.string().trim().max(80).default(''),
  })
  .meta({ id: 'ShopChangeDraft' });
export type ShopChangeDraft = z.infer<typeof ShopChangeDraft>;

export const ShopChange = z
  .object({
    id: Id,
    at: EpochMs,
    kind: ShopChangeKind,
    furnaceId: Id.nullable(),
    channelId: Id.nullable().describe(
      'The channel whose probe or furnace was changed; null: said by a person',
    ),
    text: z.string(),
    by: z.string(),
  })
  .meta({ id: 'ShopChange' });
export type ShopChange = z.infer<typeof ShopChange>;

/** A change between two points, and what it brought. */
export const MarkedChange = z
  .object({
    at: EpochMs,
    kind: z.enum([...SHOP_CHANGES, 'schedule']),
    text: z.string(),
    index: z.int().describe('The first point after it'),
    shift: z
      .object({ value: z.number(), low: z.number(), high: z.number(), sure: z.boolean() })
      .nullable()
      .describe('Mean after less mean before (Welch, 95 % band), between the changes on both sides'),
  })
  .meta({ id: 'MarkedChange' });
export type MarkedChange = z.infer<typeof MarkedChange>;

export const BatchStatistics = z
  .object({
    measure: Measure,
    unit: z.enum(['Cel', 's', 'HRC']),
    segment: z.int().nullable().describe('The soak that is looked at'),
    soaks: z.array(z.object({ index: z.int(), targetCelsius: z.number(), durationSeconds: z.int() })),
    points: z.array(ChartPoint).describe('The oldest first'),
    chart: BatchChart.nullable().describe('null with fewer than 2 points'),
    tolerance: z
      .object({ lower: z.number().nullable(), upper: z.number().nullable() })
      .nullable()
      .describe('Of the newest version of the schedule; null: it names none for this measure'),
    capability: BatchCapability,
    changes: z.array(MarkedChange),
    leftOut: z
      .object({
        unknown: z.int().describe('Firings in which the measure is not known'),
        otherScale: z.int().describe('Hardness readings in another scale than HRC'),
        older: z.boolean().describe('There are more before those that are shown'),
      })
      .describe('What is not in the chart'),
  })
  .meta({ id: 'BatchStatistics' });
export type BatchStatistics = z.infer<typeof BatchStatistics>;

/** One tempered and measured piece. */
export const TemperedPoint = z
  .object({
    pieceId: Id,
    mark: z.string(),
    firingId: Id.describe('The last temper before it was measured'),
    at: EpochMs,
    tempers: z.int().describe('How many tempers its parameter holds'),
    parameter: z.number().describe('Hollomon-Jaffe, kelvin, time in hours'),
    hardnessHrc: z.number().describe('Mean of its readings'),
  })
  .meta({ id: 'TemperedPoint' });
export type TemperedPoint = z.infer<typeof TemperedPoint>;

export const TemperingLearned = z
  .object({
    steels: z.array(z.object({ id: z.string(), title: z.string(), pieces: z.int() })),
    steelId: z.string().nullable(),
    constant: z.number().nullable().describe('C for hours, from the carbon of the steel'),
    points: z.array(TemperedPoint),
    curve: z
      .array(z.object({ parameter: z.number(), hardnessHrc: z.number(), low: z.number(), high: z.number() }))
      .describe('The line through them and the band that holds 80 % of single pieces; empty: not fitted'),
    hold: z
      .array(z.object({ parameter: z.number(), celsiusForOneHour: z.number() }))
      .describe('What the ends of the curve are for one hour'),
    notFitted: z.enum(['few-pieces', 'tempered-alike']).nullable(),
  })
  .meta({ id: 'TemperingLearned' });
export type TemperingLearned = z.infer<typeof TemperingLearned>;
