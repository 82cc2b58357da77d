import { z } from 'zod';
import { ChannelName } from './channel-name.ts';
import { EpochMs } from './reading.ts';

/** What is known of the thermocouple behind a temperature channel, and what its readings are good for. */

/** Letter-designated types of IEC 60584-1; the same list as `thermocoupleTypes` of hub/physics, held by test. */
export const THERMOCOUPLE_TYPES = ['B', 'E', 'J', 'K', 'N', 'R', 'S', 'T'] as const;
export const TOLERANCE_CLASSES = ['iec-1', 'iec-2', 'iec-3', 'astm-standard', 'astm-special'] as const;
export const PROBE_CONSTRUCTIONS = ['protected-wire', 'mineral-insulated'] as const;

/** Faults that can be told from the readings alone. */
export const PROBE_FAULTS = ['open', 'reversed', 'shorted', 'stuck', 'step', 'rate'] as const;
export type ProbeFaultCode = (typeof PROBE_FAULTS)[number];

const TYPE_MESSAGE = `the letter on the probe, one of ${THERMOCOUPLE_TYPES.join(', ')}`;
const CLASS_MESSAGE = `one of ${TOLERANCE_CLASSES.join(', ')}, or null when the class is not known`;

const coldJunctionChannel = ChannelName.describe(
  'Name, in the same node, of the channel that measures the terminals',
);

/**
 * How the channel's readings come about. `celsius`: the device sends a temperature that is right as it is.
 * `emf`: the device sends the emf and the temperature of its terminals, and the hub computes the temperature.
 * `straight-line`: the device sends a temperature that it computed with one slope, which the hub undoes.
 */
export const ProbeSource = z
  .discriminatedUnion('kind', [
    z.strictObject({ kind: z.literal('celsius') }),
    z.strictObject({
      kind: z.literal('emf'),
      emfChannel: ChannelName.describe('Name, in the same node, of the channel that carries the emf'),
      coldJunctionChannel,
    }),
    z.strictObject({
      kind: z.literal('straight-line'),
      slopeMillivoltsPerCelsius: z
        .number()
        .gt(0, 'a slope in millivolts per °C, above 0: 0.041276 for type K')
        .max(0.1, 'a slope in millivolts (not microvolts) per °C: 0.041276 for type K')
        .describe("The one slope that the digitiser assumes, mV/°C, from its maker's sheet"),
      coldJunctionChannel,
    }),
  ])
  .refine((source) => source.kind !== 'emf' || source.emfChannel !== source.coldJunctionChannel, {
    path: ['coldJunctionChannel'],
    message: 'the emf and the temperature of the terminals must be two channels',
  });
export type ProbeSource = z.infer<typeof ProbeSource>;

const Correction = z.strictObject({
  offsetCelsius: z
    .number()
    .min(-100, 'a correction of more than 100 °C is not one: replace the probe')
    .max(100, 'a correction of more than 100 °C is not one: replace the probe')
    .describe('Added to every reading as the last step, °C'),
  standardUncertaintyCelsius: z
    .number()
    .min(0, 'a standard uncertainty is not below 0')
    .max(100)
    .describe('Standard uncertainty of the correction (half of a certificate that says k = 2), °C'),
});

/** The probe of a temperature channel. Null where nobody has said. */
export const Probe = z
  .strictObject({
    type: z.enum(THERMOCOUPLE_TYPES, { error: TYPE_MESSAGE }),
    tolerance: z
      .enum(TOLERANCE_CLASSES, { error: CLASS_MESSAGE })
      .nullable()
      .default(null)
      .describe('Tolerance class of the wire: it holds for new wire and says nothing about drift'),
    construction: z
      .enum(PROBE_CONSTRUCTIONS, {
        error: `one of ${PROBE_CONSTRUCTIONS.join(', ')}, or null when not known`,
      })
      .nullable()
      .default(null),
    millimetres: z
      .number()
      .gt(0, 'a diameter in millimetres, above 0')
      .max(50, 'a diameter in millimetres, at most 50')
      .nullable()
      .default(null)
      .describe('Diameter of the wire, or of the sheath of a mineral-insulated probe, mm'),
    digitiserStepCelsius: z
      .number()
      .gt(0, 'a step in °C, above 0; null when not known')
      .max(20, 'a step in °C, at most 20')
      .nullable()
      .default(null)
      .describe('Smallest step that the device reports, °C'),
    correction: Correction.nullable().default(null),
    source: ProbeSource.default({ kind: 'celsius' }),
  })
  .meta({ id: 'Probe' });
export type Probe = z.infer<typeof Probe>;

/** One line of an uncertainty budget (GUM): what it is, how it was found, and what it does to the result. */
const UncertaintyLine = z.object({
  name: z.string(),
  distribution: z.enum(['rectangular', 'normal']),
  standard: z.number().describe('Standard uncertainty in `unit`'),
  unit: z.enum(['°C', 'mV', 'µV']),
  sensitivity: z.number().describe('Change of the result in °C for one `unit` of this input'),
  contributionCelsius: z.number(),
});

/**
 * How far a watched channel can be trusted, as its probe is set up now. A tolerance class is for new wire: drift
 * in service, placement and lead wire are not in it.
 */
export const ChannelUncertainty = z
  .object({
    channel: z.string(),
    atCelsius: z
      .number()
      .describe('The highest soak target of the schedule, °C; without a soak, its highest target'),
    expandedCelsius: z
      .number()
      .nullable()
      .describe(
        'Expanded uncertainty, ± °C; null when nothing is known of the wire, or not at this temperature',
      ),
    coverageFactor: z.number().nullable(),
    budget: z.array(UncertaintyLine),
    text: z.string().describe('The same in words, with what is not in it'),
  })
  .meta({ id: 'ChannelUncertainty' });
export type ChannelUncertainty = z.infer<typeof ChannelUncertainty>;

/** Why a probe has no limit to be counted against; the codes of hub/physics beside those of the set-up. */
const NoLimit = z.object({ code: z.string(), message: z.string() });

/**
 * How long a channel ran above the recommended upper temperature of its probe's size: a guide to life and
 * stability, no safety limit. Time for which nobody measured is not counted as below.
 */
export const TimeAboveLimit = z
  .object({
    channel: z.string(),
    limitCelsius: z.number().nullable().describe('Recommended upper temperature, °C; null: none is known'),
    reason: NoLimit.nullable().describe('Why there is no limit'),
    hoursAbove: z.number().nullable(),
    hoursWatched: z.number().nullable().describe('Hours with readings, those above included'),
    peakCelsius: z.number().nullable(),
    from: EpochMs.nullable().describe('What was counted begins here'),
    to: EpochMs.nullable().describe('and ends here'),
    complete: z
      .boolean()
      .describe('False: more days are there than one request may count; ask again and it goes on'),
  })
  .meta({ id: 'TimeAboveLimit' });
export type TimeAboveLimit = z.infer<typeof TimeAboveLimit>;

/** What `GET /api/v1/firings/{id}/probes` answers for each watched channel. */
export const FiringProbe = z
  .object({ uncertainty: ChannelUncertainty, above: TimeAboveLimit.describe('During this firing') })
  .meta({ id: 'FiringProbe' });
export type FiringProbe = z.infer<typeof FiringProbe>;
