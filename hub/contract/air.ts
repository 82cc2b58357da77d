import { z } from 'zod';
import { CohbConstantsUsed, WORK_RATES } from './compute/carboxyhaemoglobin.ts';
import {
  AirLimit,
  CustomLimits,
  exposureShape,
  LIMIT_PROFILES,
  LimitKind,
  TwaConvention,
} from './compute/exposure.ts';
import { AirNotices } from './compute/gas-curve.ts';
import { DecayCondition } from './compute/ventilation.ts';
import { EpochMs } from './reading.ts';
import { QUANTITIES } from './units.ts';

/** The air of the shop: settings, how the shop stands, measured air changes, and what the page about it shows. */

export const WORKING_RATES = WORK_RATES.filter(
  (rate): rate is Exclude<typeof rate, 'rest' | 'level-0'> => rate !== 'rest' && rate !== 'level-0',
);

/** Limits to judge a shop by must be such that the judge takes them: it is asked at every start. */
const KeptLimits = CustomLimits.superRefine(({ source: _source, ...limits }, ctx) => {
  const given = Object.entries(limits).flatMap(([name, ppm]) => (ppm === undefined ? [] : [{ name, ppm }]));
  if (given.length === 0) {
    ctx.addIssue({ code: 'custom', path: ['twaPpm'], message: 'give at least one limit, 1 to 10 000 ppm' });
  }
  for (const { name, ppm } of given) {
    if (ppm >= 1 && ppm <= 10_000) continue;
    ctx.addIssue({ code: 'custom', path: [name], message: `${ppm} ppm is no limit: 1 to 10 000 ppm` });
  }
});

/** Fields of the shop's settings about its air. */
export const airSettingsShape = {
  airProfile: z
    .enum([...LIMIT_PROFILES, 'custom'])
    .default('strictest')
    .describe('Whose limits for carbon monoxide the shop is judged by'),
  airCustomLimits: KeptLimits.nullable().default(null).describe('For the profile custom'),
  workRate: z
    .enum(WORKING_RATES)
    .default('heavy')
    .describe('For the estimate of carboxyhaemoglobin; nobody rests at a forge'),
  roomCubicMetres: z
    .number()
    .min(1)
    .max(100_000)
    .nullable()
    .default(null)
    .describe('Volume of the room, m³; null: not known'),
};

/** Dates of a gas sensor, by its maker or by the shop. */
export const sensorDatesShape = {
  calibratedAt: EpochMs.nullable().default(null).describe('When it was last calibrated'),
  calibrationDueAt: EpochMs.nullable().default(null).describe('From then on it counts as overdue'),
  endOfLifeAt: EpochMs.nullable().default(null).describe('From then on it is to be replaced'),
};

const Tag = z.string().trim().min(1).max(40);

/** How the shop stands: a condition that changes how much air it changes. */
export const AirTags = z
  .object({
    at: EpochMs,
    tags: z.array(Tag).max(8).describe('In words of the shop: "door open", "fan on"; none: all shut'),
    by: z.string(),
  })
  .meta({ id: 'AirTags' });
export type AirTags = z.infer<typeof AirTags>;

export const AirTagsRequest = z
  .strictObject({
    tags: AirTags.shape.tags,
    by: z.string().trim().min(1).max(80).default('wall'),
  })
  .meta({ id: 'AirTagsRequest' });

const DecayMeasured = z.object({
  airChangesPerHour: z.number(),
  standardError: z.number(),
  low: z.number(),
  high: z.number(),
  confidence: z.number(),
  count: z.int(),
  leftOut: z.int(),
  seconds: z.number(),
  conditions: z.array(DecayCondition),
  conditionsHeld: z.boolean().nullable(),
});

/** One fall of a gas that was followed to its end. */
export const AirChange = z
  .object({
    channel: z.string(),
    gas: z.enum(QUANTITIES),
    from: EpochMs,
    to: EpochMs,
    end: z
      .enum(['arrived', 'lit', 'changed', 'silent', 'long'])
      .describe('Why it ended: at the background, a flame, a tag changed, no readings, two hours'),
    tags: z.array(z.string()).nullable().describe('How the shop stood; null: nobody said'),
    backgroundPpm: z.number(),
    fit: DecayMeasured,
  })
  .meta({ id: 'AirChange' });
type Measured = z.infer<typeof DecayMeasured>;
/** As the judge hands it out. */
export type AirChange = Readonly<
  Omit<z.infer<typeof AirChange>, 'tags' | 'fit'> & {
    tags: readonly string[] | null;
    fit: Readonly<Omit<Measured, 'conditions'> & { conditions: readonly Measured['conditions'][number][] }>;
  }
>;

const Range = z.object({ low: z.number(), value: z.number(), high: z.number().nullable() });

export const AirSensorNow = z
  .object({
    channel: z.string(),
    label: z.string(),
    gas: z.enum(QUANTITIES),
    unit: z.string().describe('Base unit, UCUM code'),
    value: z.number().nullable().describe('Null: nothing fresh; then nobody knows'),
    at: EpochMs.nullable().describe('Of the last good reading'),
    fresh: z.boolean(),
    calibratedAt: EpochMs.nullable(),
    calibrationDueAt: EpochMs.nullable(),
    endOfLifeAt: EpochMs.nullable(),
  })
  .meta({ id: 'AirSensorNow' });

export const AirExposure = z
  .object({
    channel: z.string(),
    label: z.string(),
    ...exposureShape,
    blood: z.object({
      lowPercent: z.number(),
      chosenPercent: z.number(),
      highPercent: z.number(),
      highestPercent: z.number(),
      limitPercent: z.number(),
    }),
    doseShare: z.number().describe('Of the dose at which an alarm standard would sound, 0 to 1'),
  })
  .meta({ id: 'AirExposure' });

export const AirVentilation = z
  .object({
    tags: z.array(z.string()).nullable().describe('How the shop stands now; null: nobody said'),
    tagsSince: EpochMs.nullable(),
    knownTags: z.array(z.string()).describe('Every tag that was ever said here'),
    history: z.array(AirChange).describe('Newest first; those whose conditions broke say so'),
    measured: AirChange.nullable().describe('The newest that counts with the tags of now'),
    secondsUntilBelow: Range.nullable().describe(
      'Until the limit of the day is reached with nothing burning; a time to wait, then read the sensor',
    ),
    limitPpm: z.number().nullable(),
    highestSourceCubicMetresPerHour: Range.nullable().describe(
      'Of pure carbon monoxide, that the room carries at the limit of the day; plan with low',
    ),
    following: z.boolean().describe('A fall is being followed now'),
  })
  .meta({ id: 'AirVentilation' });

/** What `GET /api/v1/air` answers. */
export const AirView = z
  .object({
    now: EpochMs,
    judgedTo: EpochMs.describe('Means and doses are known up to here'),
    profile: z.enum([...LIMIT_PROFILES, 'custom']),
    convention: TwaConvention,
    workRate: z.enum(WORK_RATES),
    constants: CohbConstantsUsed,
    firstPpm: z.number(),
    secondPpm: z.number(),
    limits: z.array(z.object({ kind: LimitKind, limit: AirLimit })).describe('Of the profile'),
    sensors: z.array(AirSensorNow),
    shift: z
      .object({ from: EpochMs, to: EpochMs })
      .nullable()
      .describe('The present working day; null: no furnace has been hot for six hours'),
    countedFrom: EpochMs.describe('Peak, coverage and minutes above count from here: the shift, or the rest'),
    exposure: z.array(AirExposure).describe('One a carbon monoxide sensor'),
    lastShift: z
      .object({
        from: EpochMs,
        to: EpochMs,
        exposure: z.array(z.object({ channel: z.string(), label: z.string(), ...exposureShape })),
      })
      .nullable()
      .describe('The working day before, as far as the hub has seen it; null: none in the last twelve hours'),
    furnaces: z.array(
      z.object({
        id: z.string(),
        name: z.string(),
        hot: z.boolean().nullable().describe('null: not known'),
        burning: z.boolean().nullable(),
      }),
    ),
    fires: z.array(z.object({ furnaceId: z.string(), from: EpochMs, to: EpochMs.nullable() })),
    ventilation: AirVentilation,
    notices: AirNotices,
  })
  .meta({ id: 'AirView' });
export type AirView = z.infer<typeof AirView>;
