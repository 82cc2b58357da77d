import { z } from 'zod';
import { airSettingsShape, sensorDatesShape } from './air.ts';
import { ChannelName } from './channel-name.ts';
import { FurnaceFit } from './furnace-fit.ts';
import { furnaceGasShape, gasSettingsShape } from './gas.ts';
import { Language } from './language.ts';
import { patchShape } from './patch.ts';
import { Probe } from './probe.ts';
import { EpochMs, Reading } from './reading.ts';
import { DisplayUnit } from './schedule.ts';
import { QUANTITIES, type Quantity } from './units.ts';

/** Furnaces, nodes, channels, bindings and the shop's own settings. */

export const Id = z.string().min(1).max(64);
const Name = z.string().trim().min(1).max(80);

/** A node's name is a topic level: it must be usable between two slashes of an MQTT topic. */
export const NodeName = z
  .string()
  .regex(
    /^[A-Za-z0-9][A-Za-z0-9_.:-]{0,63}$/,
    'letters, digits and _ . : - only, starting with a letter or digit, at most 64',
  );

export const FURNACE_KINDS = ['gas-forge', 'electric-oven', 'salt-bath'] as const;

export const FurnaceDraft = z
  .strictObject({
    name: Name,
    kind: z.enum(FURNACE_KINDS),
    ratedCelsius: z
      .number()
      .min(50)
      .max(1800)
      .describe('The highest temperature this furnace is built for, °C'),
    note: z.string().max(2000).default(''),
    ...furnaceGasShape,
  })
  .meta({ id: 'FurnaceDraft' });
export const Furnace = z
  .object({
    id: Id,
    ...FurnaceDraft.shape,
    fit: FurnaceFit.nullable()
      .default(null)
      .describe('How heat goes over in it, fitted from a firing; null: the usual values of its kind'),
    archived: z.boolean(),
    createdAt: EpochMs,
  })
  .meta({ id: 'Furnace' });
export type Furnace = z.infer<typeof Furnace>;

export const NodeStatus = z.enum(['online', 'offline', 'unknown']);
export type NodeStatus = z.infer<typeof NodeStatus>;

/** `adopted: false` is a node that spoke up on its own and waits for a person to accept it. */
export const NodeDraft = z
  .strictObject({
    name: NodeName,
    label: z.string().max(80).default(''),
    note: z.string().max(2000).default(''),
  })
  .meta({ id: 'NodeDraft' });
export const ShopNode = z
  .object({
    id: Id,
    ...NodeDraft.shape,
    adopted: z.boolean(),
    status: NodeStatus,
    statusAt: EpochMs.nullable(),
    lastHeardAt: EpochMs.nullable(),
    refused: z.record(z.string(), z.int()).describe('How many payloads were refused, by reason'),
    createdAt: EpochMs,
  })
  .meta({ id: 'Node' });
export type ShopNode = z.infer<typeof ShopNode>;

/** What a channel is to its furnace or to the shop. */
export const CHANNEL_ROLES = [
  'chamber',
  'load',
  'supply-pressure',
  'cylinder-mass',
  'cylinder-pressure',
  'cylinder-wall',
  'room-air',
  'cold-junction',
  'other',
] as const;
export const ChannelRole = z.enum(CHANNEL_ROLES);
export type ChannelRole = z.infer<typeof ChannelRole>;

/** The role that a channel most likely has, when nobody has said. */
export function likelyRole(quantity: Quantity, furnaceId: string | null): ChannelRole {
  switch (quantity) {
    case 'temperature':
      return furnaceId === null ? 'other' : 'chamber';
    case 'pressure':
      return 'supply-pressure';
    case 'mass':
      return 'cylinder-mass';
    case 'carbon-monoxide':
    case 'carbon-dioxide':
    case 'oxygen':
    case 'relative-humidity':
      return 'room-air';
    case 'emf':
      return 'other';
    default:
      return quantity satisfies never;
  }
}

export const ChannelDraft = z
  .strictObject({
    node: NodeName.describe('Name of the node that publishes it'),
    name: ChannelName.describe('Its name inside the node (resolved SenML name)'),
    label: z.string().max(80).default('').describe('What people call it'),
    quantity: z.enum(QUANTITIES),
    unit: z
      .string()
      .max(16)
      .nullable()
      .default(null)
      .describe('Unit assumed when a payload names none, UCUM code; null: the base unit'),
    role: ChannelRole.nullable().default(null).describe('null: chosen from the quantity and the furnace'),
    furnaceId: Id.nullable().default(null).describe('The furnace it belongs to; null: the shop'),
    possibleLow: z.number().nullable().default(null).describe('Lowest value this sensor can mean, base unit'),
    possibleHigh: z
      .number()
      .nullable()
      .default(null)
      .describe('Highest value this sensor can mean, base unit'),
    staleAfterSeconds: z.number().gt(0).max(86_400).nullable().default(null),
    probe: Probe.nullable()
      .default(null)
      .describe('The thermocouple of a temperature channel; null: not known'),
    ...sensorDatesShape,
  })
  .meta({ id: 'ChannelDraft' });
export type ChannelDraft = z.infer<typeof ChannelDraft>;
export const Channel = z
  .object({
    id: Id,
    ...ChannelDraft.shape,
    role: ChannelRole,
    baseUnit: z.string(),
    staleAfterSeconds: z
      .number()
      .describe('Without a reading for this long it counts as not watching, seconds'),
    adopted: z.boolean(),
    archived: z.boolean(),
    createdAt: EpochMs,
    latest: Reading.nullable().describe('The newest reading in the archive'),
  })
  .meta({ id: 'Channel' });
export type Channel = z.infer<typeof Channel>;

const MqttFilter = z
  .string()
  .min(1)
  .max(256)
  .regex(/^[^#\0]+$/, 'a topic with single-level + wildcards only (no #)');
const JsonPointer = z
  .string()
  .max(256)
  .regex(/^(\/([^~/]|~0|~1)*)*$/, 'an RFC 6901 JSON pointer, such as /temp_c');

/** How a foreign device's payload is read. A plug: further decoders join this union. */
export const PayloadDecoder = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('number') }),
  z.strictObject({
    kind: z.literal('json'),
    valuePointer: JsonPointer,
    timePointer: JsonPointer.nullable().default(null),
    timeFormat: z.enum(['epoch-seconds', 'epoch-milliseconds', 'iso8601']).default('epoch-seconds'),
  }),
]);
export type PayloadDecoder = z.infer<typeof PayloadDecoder>;

/** A foreign topic bound to a channel. */
export const BindingDraft = z
  .strictObject({
    topic: MqttFilter.describe('MQTT topic; + stands for one level'),
    node: NodeName.nullable().default(null).describe('Node name; null: the text of the first + level'),
    channel: ChannelName.describe('Channel name inside the node'),
    quantity: z.enum(QUANTITIES),
    unit: z.string().max(16).describe('Unit of the payload after scaling, UCUM code or common spelling'),
    scale: z.number().default(1),
    offset: z.number().default(0),
    decoder: PayloadDecoder,
  })
  .meta({ id: 'BindingDraft' });
export const Binding = z
  .object({ id: Id, ...BindingDraft.shape, createdAt: EpochMs })
  .meta({ id: 'Binding' });
export type Binding = z.infer<typeof Binding>;

/** A payload that could not be understood, kept so that a person can see why. */
export const Refusal = z
  .object({
    id: Id,
    at: EpochMs,
    node: z.string(),
    topic: z.string(),
    reason: z.string(),
    detail: z.string(),
    payloadText: z.string().describe('The start of the payload as text; unprintable bytes as \\xNN'),
    payloadBytes: z.int(),
  })
  .meta({ id: 'Refusal' });
export type Refusal = z.infer<typeof Refusal>;

/**
 * The shop's own settings. The CO limits default to the strictest of the European values: 20 ppm (8 h,
 * Directive 2004/37/EC Annex III) and 60 ppm (15 min, TRGS 900), both applied to the instant reading.
 */
export const ShopSettings = z
  .strictObject({
    name: z.string().trim().min(1).max(80).default('My shop'),
    displayUnit: DisplayUnit.default('Cel'),
    language: Language.default('en').describe('Language of what the hub says'),
    pressureUnit: z.enum(['bar', 'mbar', 'kPa', '[psi]', "[in_i'H2O]"]).default('bar'),
    massUnit: z.enum(['kg', '[lb_av]']).default('kg'),
    carbonMonoxideFirstPpm: z.number().gt(0).max(1200).default(20),
    carbonMonoxideSecondPpm: z.number().gt(0).max(1200).default(60),
    watchCarbonMonoxideFor: z.enum(['any-furnace', 'fuel-burning']).default('any-furnace'),
    ...airSettingsShape,
    ...gasSettingsShape,
    hotAboveCelsius: z
      .number()
      .min(40)
      .max(400)
      .default(100)
      .describe('A furnace above this counts as hot, °C'),
    overshootAheadSeconds: z.number().min(5).max(900).default(120),
    soakStalledSeconds: z.number().min(10).max(7200).default(180),
    rampStalledSeconds: z.number().min(30).max(14_400).default(600),
    screenDiagonalInches: z.number().min(5).max(120).default(43),
    viewingDistanceMetres: z.number().min(0.3).max(15).default(5),
  })
  .refine((s) => s.carbonMonoxideFirstPpm < s.carbonMonoxideSecondPpm, {
    path: ['carbonMonoxideSecondPpm'],
    message: 'the second CO limit must be above the first',
  })
  .refine((s) => s.airProfile !== 'custom' || s.airCustomLimits !== null, {
    path: ['airCustomLimits'],
    message: 'a custom profile needs its limits',
  })
  .meta({ id: 'ShopSettings' });
export type ShopSettings = z.infer<typeof ShopSettings>;

export const Shop = z.object({ id: Id, simulated: z.boolean(), settings: ShopSettings }).meta({ id: 'Shop' });
export type Shop = z.infer<typeof Shop>;

/** What may be changed of a channel. Adopting it is one of these. */
export const ChannelPatch = z
  .strictObject({
    label: z.string().max(80).optional(),
    unit: z.string().max(16).nullable().optional(),
    role: ChannelRole.optional(),
    furnaceId: Id.nullable().optional(),
    possibleLow: z.number().nullable().optional(),
    possibleHigh: z.number().nullable().optional(),
    staleAfterSeconds: z.number().gt(0).max(86_400).optional(),
    probe: Probe.nullable().optional(),
    ...patchShape(sensorDatesShape),
    adopted: z.boolean().optional(),
  })
  .meta({ id: 'ChannelPatch' });
export type ChannelPatch = z.infer<typeof ChannelPatch>;

export const NodePatch = z
  .strictObject({
    label: z.string().max(80).optional(),
    note: z.string().max(2000).optional(),
    adopted: z.boolean().optional(),
  })
  .meta({ id: 'NodePatch' });

export const FurnacePatch = z.strictObject(patchShape(FurnaceDraft.shape)).meta({ id: 'FurnacePatch' });

/** One press: take in a node with every channel it offers, its temperatures going to this furnace. */
export const AdoptRequest = z
  .strictObject({ furnaceId: Id.nullable().default(null) })
  .meta({ id: 'AdoptRequest' });

/** What may be changed of the shop's settings. */
export const ShopSettingsPatch = z
  .strictObject(patchShape(ShopSettings.shape))
  .meta({ id: 'ShopSettingsPatch' });

/** The shop, and where a node connects: what `GET /api/v1/shop` answers. */
export const About = z
  .object({ shop: Shop, mqtt: z.string().describe('Where nodes publish'), version: z.string(), now: EpochMs })
  .meta({ id: 'About' });
export type About = z.infer<typeof About>;
