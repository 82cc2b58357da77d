import { z } from 'zod';
import { EpochMs } from './reading.ts';
import { Id } from './shop.ts';

/** What somebody saw or measured on a piece. An observation is never changed: it is deleted and made again. */

export const HARDNESS_SCALES = ['HRC', 'HRB', 'HV', 'HB'] as const;

/** The reach of each scale: a reading outside is a slip of the pen. */
const SCALE_REACH: Readonly<Record<(typeof HARDNESS_SCALES)[number], readonly [low: number, high: number]>> =
  {
    HRC: [0, 72],
    HRB: [0, 110],
    HV: [20, 2000],
    HB: [20, 700],
  };

const HardnessSeen = z
  .strictObject({
    kind: z.literal('hardness'),
    scale: z.enum(HARDNESS_SCALES),
    readings: z
      .array(z.strictObject({ value: z.number(), position: z.string().trim().max(80).default('') }))
      .min(1)
      .max(40),
  })
  .superRefine(({ scale, readings }, ctx) => {
    const [low, high] = SCALE_REACH[scale];
    readings.forEach(({ value }, index) => {
      if (value >= low && value <= high) return;
      const message = `${value} ${scale} cannot be: the scale is read from ${low} to ${high}`;
      ctx.addIssue({ code: 'custom', path: ['readings', index, 'value'], message });
    });
  });

/** What the person says. */
const SEEN = [
  z.strictObject({
    kind: z.literal('straightness'),
    outMm: z.number().min(0).max(1000).describe('How far it is out of straight, mm'),
    overMm: z
      .number()
      .gt(0)
      .max(20_000)
      .nullable()
      .default(null)
      .describe('Over this length; null: the whole'),
  }),
  z.strictObject({
    kind: z.literal('file'),
    result: z.enum(['skates', 'bites']),
    position: z.string().max(80).default(''),
  }),
  z.strictObject({ kind: z.literal('crack'), found: z.boolean(), position: z.string().max(80).default('') }),
  z.strictObject({ kind: z.literal('note'), text: z.string().trim().min(1).max(4000) }),
] as const;

export const MAGNET_CAUSES = ['curie', 'end-of-transformation', 'curie-before-transformation'] as const;

/** Where this steel should let go of the magnet, °C, as known when it was seen. */
export const MagnetExpected = z
  .object({
    celsius: z.number(),
    lowCelsius: z.number(),
    highCelsius: z.number(),
    cause: z.enum(MAGNET_CAUSES),
    formula: z.string(),
    standing: z.string(),
    source: z.string(),
  })
  .meta({ id: 'MagnetExpected' });
export type MagnetExpected = z.infer<typeof MagnetExpected>;

/** A tap: the magnet let go now. The hub notes what was measured and compares. */
const MagnetTapped = z.strictObject({ kind: z.literal('magnet'), furnaceId: Id });
const MagnetSeen = z.object({
  ...MagnetTapped.shape,
  channelId: Id.nullable().describe('Whose reading was taken; null: none was fresh'),
  readingAt: EpochMs.nullable(),
  measuredCelsius: z.number().nullable().describe('Of the furnace, not of the steel; null: no fresh reading'),
  expected: MagnetExpected.nullable().describe('null: not known for this steel'),
  differenceCelsius: z.number().nullable().describe('Measured less expected'),
  agrees: z
    .enum(['inside', 'below', 'above', 'not-known'])
    .describe('Where the measured temperature lies against the band of the expected one'),
});

/** The media that a shop attaches; nothing that a browser would run. */
export const ATTACHMENT_TYPES = [
  'image/jpeg',
  'image/png',
  'image/webp',
  'application/pdf',
  'text/plain',
] as const;
export const AttachmentType = z.enum(ATTACHMENT_TYPES);
export type AttachmentType = z.infer<typeof AttachmentType>;
/** A photo of a telephone is 3 to 6 MB. */
export const MOST_ATTACHMENT_BYTES = 8 * 1024 * 1024;
export const MOST_ATTACHMENTS_OF_A_PIECE = 100;

const AttachmentSeen = z.object({
  kind: z.literal('attachment'),
  attachmentId: Id.describe('GET /api/v1/attachments/{id}'),
  fileName: z.string(),
  contentType: AttachmentType,
  bytes: z.int(),
  sha256: z.string().describe('Of the content, hexadecimal'),
});

export const ObservationSeen = z
  .discriminatedUnion('kind', [HardnessSeen, ...SEEN, MagnetSeen, AttachmentSeen])
  .meta({ id: 'ObservationSeen' });
export type ObservationSeen = z.infer<typeof ObservationSeen>;
export type MagnetSeen = z.infer<typeof MagnetSeen>;

const about = {
  firingId: Id.nullable().default(null).describe('The firing it was seen in or after; null: none'),
  stepId: Id.nullable().default(null).describe('The step of the route it belongs to; null: none'),
  by: z.string().trim().max(80).default(''),
  note: z.string().max(4000).default(''),
};

/** What a person sends. A photo or file is sent to the attachments of the piece instead. */
export const ObservationDraft = z
  .strictObject({
    at: EpochMs.optional().describe('Default now'),
    ...about,
    seen: z.discriminatedUnion('kind', [HardnessSeen, ...SEEN, MagnetTapped]),
  })
  .meta({ id: 'ObservationDraft' });
export type ObservationDraft = z.infer<typeof ObservationDraft>;

export const Observation = z
  .object({ id: Id, pieceId: Id, at: EpochMs, ...about, seen: ObservationSeen, createdAt: EpochMs })
  .meta({ id: 'Observation' });
export type Observation = z.infer<typeof Observation>;
