import { z } from 'zod';
import { Answer } from './estimate.ts';
import { namesASteel, SteelAsked, steelShape } from './steel-choice.ts';

/** Whether a section hardens through: ideal diameter of ASTM A255 and Grossmann's severity. */

export const QUENCHES = [
  'still-air',
  'still-oil',
  'moderate-oil',
  'good-oil',
  'strong-oil',
  'still-water',
  'strong-water',
  'still-brine',
  'strong-brine',
] as const;
export const Quench = z.enum(QUENCHES);
export type Quench = z.infer<typeof Quench>;

export const HardenabilityQuestion = z
  .strictObject({
    ...steelShape,
    shape: z.enum(['bar', 'cylinder', 'plate']),
    thicknessMm: z.number().describe('Bar diameter or plate thickness, 0.5 to 1000 mm'),
    medium: Quench.optional().describe('Left out: every medium'),
  })
  .superRefine(namesASteel)
  .meta({
    id: 'HardenabilityQuestion',
    examples: [
      { steel: '4140', shape: 'bar', thicknessMm: 25, medium: 'good-oil' },
      { steel: '1045', shape: 'plate', thicknessMm: 8 },
    ],
  });
export type HardenabilityQuestion = z.infer<typeof HardenabilityQuestion>;

export const ThroughHardening = z.enum(['yes', 'no', 'borderline', 'unknown']);

export const HardenabilityAnswer = z
  .object({
    steel: SteelAsked,
    idealDiameterMm: Answer,
    factors: z.record(z.string(), z.number()).describe('Multiplying factors; the one of C is in inches'),
    media: z.array(
      z.object({
        medium: Quench,
        severityPerInch: z.object({ low: z.number(), high: z.number() }).describe('Grossmann H'),
        criticalMm: Answer.describe('Largest section that is half martensite at its centre'),
        hardensThrough: ThroughHardening,
      }),
    ),
  })
  .meta({ id: 'HardenabilityAnswer' });
