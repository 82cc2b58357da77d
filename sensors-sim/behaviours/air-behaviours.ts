/** What fouls the air of the room, and what carries it off. */
import { z } from 'zod';
import { share, timing } from './fields.ts';

/** Air changes an hour by state of the shop. Invented for a room of 60 m³. */
export const VENTILATION = { shut: 0.4, ajar: 2, open: 5, fan: 8 } as const;

export const AIR_BEHAVIOURS = [
  z
    .strictObject({
      name: z.literal('co-buildup'),
      ...timing,
      equivalenceRatio: z.number().min(0.8).max(1.5).default(1.25),
      escapeShare: share.default(0.03).describe('Share of the CO that does not burn at the mouth'),
      airChangesPerHour: z.number().min(0).max(60).default(0.3),
    })
    .describe('A rich flame behind a closed door'),
  z
    .strictObject({
      name: z.literal('rich-flame'),
      ...timing,
      equivalenceRatio: z.number().min(0.8).max(1.5).default(1.3).describe('Above 1: too little air'),
    })
    .describe('The burner runs rich, doors and fan as they are'),
  z
    .strictObject({
      name: z.literal('ventilation'),
      ...timing,
      state: z.enum(['shut', 'ajar', 'open', 'fan']).default('ajar'),
      airChangesPerHour: z
        .number()
        .min(0)
        .max(60)
        .nullable()
        .default(null)
        .describe('null: that of the state'),
    })
    .describe('Door shut, ajar, open, or the fan on as usual'),
  z
    .strictObject({
      name: z.literal('other-co-source'),
      ...timing,
      gramsPerHour: z.number().gt(0).max(5000).default(60),
    })
    .describe('Something else makes carbon monoxide: a stove, an engine at the door'),
] as const;
