import { z } from 'zod';
import { heatShape, holdsOrFollows } from './curve.ts';
import { Band } from './estimate.ts';
import { Composition, namesASteel, SteelAsked, steelShape } from './steel-choice.ts';

/** Carbon on the move: diffusivity, and how deep a firing can have decarburised a piece. */

export const CarbonDiffusionQuestion = z
  .strictObject({
    phase: z.enum(['austenite', 'ferrite']).default('austenite'),
    celsius: z.number().describe('Austenite: 727 to 1200 °C; ferrite: 323 to 849 °C'),
    carbonPercent: z.number().default(0.8).describe('In the austenite, 0 to 1.4 mass %'),
    alloy: Composition.partial()
      .optional()
      .describe('Alloying for the factor in austenite, mass %; carbon is taken from carbonPercent'),
  })
  .meta({
    id: 'CarbonDiffusionQuestion',
    examples: [
      { celsius: 900, carbonPercent: 0.8 },
      { phase: 'ferrite', celsius: 700 },
    ],
  });

export const CarbonDiffusionAnswer = z
  .object({
    phase: z.enum(['austenite', 'ferrite']),
    celsius: z.number(),
    diffusivitySquareMetresPerSecond: Band.describe('Without the alloy factor; shown in µm²/s'),
    forms: z
      .array(z.object({ form: z.string(), squareMetresPerSecond: z.number() }))
      .describe('The forms that the band spans; empty for ferrite'),
    alloyFactor: z.number().nullable().describe('What alloying multiplies it by; null: not asked'),
    source: z.string(),
  })
  .meta({ id: 'CarbonDiffusionAnswer' });

export const DecarburisationQuestion = z
  .strictObject({
    ...steelShape,
    ...heatShape,
    ac1Celsius: z
      .number()
      .optional()
      .describe('Where austenite begins, 700 to 900 °C; the computed Ac1 of the steel when left out'),
  })
  .superRefine(namesASteel)
  .superRefine(holdsOrFollows)
  .meta({
    id: 'DecarburisationQuestion',
    examples: [{ composition: { C: 0.8 }, celsius: 900, hours: 1 }],
  });

export const DecarburisationAnswer = z
  .object({
    steel: SteelAsked,
    depthTo50Metres: Band.describe('Below this at least half of the carbon is left; shown in mm'),
    depthTo90Metres: Band,
    depthTo95Metres: Band,
    dtSquareMetres: Band.describe('Integral of the diffusivity over the counted time; shown in mm²'),
    ac1Celsius: z.number(),
    secondsCounted: z.number(),
    secondsBelow: z.number().describe('At or below Ac1: not counted'),
    cautions: z.array(z.enum(['above-range', 'ferrite-rim', 'long-gap'])),
    upperBound: z.literal(true).describe('Surface carbon taken as zero: the true depth is less'),
    source: z.string(),
  })
  .meta({ id: 'DecarburisationAnswer' });
