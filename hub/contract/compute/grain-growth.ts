import { z } from 'zod';
import { heatShape, holdsOrFollows } from './curve.ts';
import { Band } from './estimate.ts';
import { namesASteel, SteelAsked, steelShape } from './steel-choice.ts';

/** Austenite grain size after a firing: a trend, beside what was measured. */

export const GrainGrowthQuestion = z
  .strictObject({ ...steelShape, ...heatShape })
  .superRefine(namesASteel)
  .superRefine(holdsOrFollows)
  .meta({ id: 'GrainGrowthQuestion', examples: [{ composition: { C: 0.8 }, celsius: 900, hours: 1 }] });

export const GrainGrowthAnswer = z
  .object({
    steel: SteelAsked,
    sizeMetres: Band.nullable().describe('Mean grain size, shown in µm; null: never reached 800 °C'),
    astmGrainNumber: z
      .number()
      .nullable()
      .describe('Of the value, read as a mean intercept; null outside 1 µm to 1 mm'),
    secondsCounted: z.number(),
    secondsAbove: z.number().describe('Above 1200 °C: not counted, the grain is coarser'),
    secondsCoarsening: z.number().describe('Above 950 °C, where grains grow several times within minutes'),
    measured: z
      .array(
        z.object({
          id: z.string(),
          steel: z.string(),
          probableSource: z.string(),
          sizeMetres: z.number().nullable().describe('At this hold; null where nothing was measured'),
        }),
      )
      .describe('Measured sets; sizes for a hold only, never extrapolated'),
    source: z.string(),
  })
  .meta({ id: 'GrainGrowthAnswer' });
