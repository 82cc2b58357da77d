import { z } from 'zod';

/** The colour steel has at a heat. */

export const Glow = z
  .object({
    name: z.string(),
    lowCelsius: z.number(),
    highCelsius: z.number(),
    rgb: z.tuple([z.int(), z.int(), z.int()]).describe('A suggestion for a screen, no measurement'),
    uncertaintyCelsius: z.number().describe('What a colour read by eye is worth at best, ± K'),
  })
  .meta({ id: 'Glow' });

export const GlowQuestion = z
  .strictObject({ celsius: z.number().optional().describe('Left out: the whole scale only') })
  .meta({ id: 'GlowQuestion', examples: [{ celsius: 860 }, {}] });

export const GlowAnswer = z
  .object({ glow: Glow.nullable(), scale: z.array(Glow), source: z.string() })
  .meta({ id: 'GlowAnswer' });
