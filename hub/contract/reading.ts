import { z } from 'zod';

/** How far a reading can be trusted. Only good readings are judged. */
export const Quality = z.enum(['good', 'uncertain', 'bad']).meta({ id: 'Quality' });
export type Quality = z.infer<typeof Quality>;

/** Why a reading is not good. */
export const QualityReason = z
  .enum(['future', 'out-of-range', 'sensor-fault', 'no-cold-junction'])
  .meta({ id: 'QualityReason', description: 'Why a reading is uncertain or bad' });
export type QualityReason = z.infer<typeof QualityReason>;

/** Epoch milliseconds, UTC. */
export const EpochMs = z.int().min(0).max(8_640_000_000_000_000).describe('Instant, epoch milliseconds UTC');

/** One value of one channel: `value` in the channel's base unit. */
export const Reading = z
  .object({
    at: EpochMs,
    value: z.number().describe("Value in the channel's base unit (Cel, Pa, [ppm], kg, V, %, %RH)"),
    quality: Quality,
    reason: QualityReason.optional(),
  })
  .meta({ id: 'Reading' });
export type Reading = z.infer<typeof Reading>;

/** A reading with the channel it belongs to. */
export interface ChannelReading extends Reading {
  readonly channel: string;
}

/** A stretch in which a channel said nothing usable: drawn as a gap, never joined over. */
export const Gap = z.object({ from: EpochMs, to: EpochMs }).meta({ id: 'Gap' });
export type Gap = z.infer<typeof Gap>;

/** What `GET /api/v1/channels/{id}/readings` answers. */
export const ReadingSeries = z
  .object({
    channel: z.string(),
    unit: z.string().describe('Base unit of every value, UCUM code'),
    from: EpochMs,
    to: EpochMs,
    total: z.int().describe('How many readings are stored in this span'),
    thinned: z
      .boolean()
      .describe('True when readings were left out to fit `points`; each slice keeps its lowest and highest'),
    readings: z.array(Reading),
    gaps: z.array(Gap),
  })
  .meta({ id: 'ReadingSeries' });
export type ReadingSeries = z.infer<typeof ReadingSeries>;
