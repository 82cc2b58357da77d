import { z } from 'zod';
import { Answer } from './estimate.ts';
import { namesASteel, SteelAsked, steelShape } from './steel-choice.ts';

/** What a quench leaves: martensite, austenite, hardness; and what slower cooling leaves. */

export const MartensiteQuestion = z
  .strictObject({
    ...steelShape,
    carbonInAustenitePercent: z
      .number()
      .optional()
      .describe('Dissolved carbon; left out: all of it up to 0.77 % C, 0.60 to 0.75 % above'),
    quenchCelsius: z.number().default(20).describe('Temperature that the quench reaches, -196 to 400 °C'),
  })
  .superRefine(namesASteel)
  .meta({ id: 'MartensiteQuestion', examples: [{ steel: '1095' }, { steel: '1045', quenchCelsius: 60 }] });
export type MartensiteQuestion = z.infer<typeof MartensiteQuestion>;

export const MartensiteAnswer = z
  .object({
    steel: SteelAsked,
    carbonInAustenitePercent: z.number().describe('Used for Ms and hardness'),
    carbonAssumed: z.boolean().describe('True: nobody gave it; the usual 0.68 % of a hypereutectoid steel'),
    ms: Answer,
    m90: Answer,
    mf: Answer,
    retainedAustenite: Answer.describe('Fraction, 0 to 1'),
    quenchedHardnessHrc: Answer.describe('Of untempered martensite'),
    halfMartensiteHrc: Answer.describe('Where half is martensite: the centre of a bar of critical diameter'),
  })
  .meta({ id: 'MartensiteAnswer' });

export const STRUCTURES = ['martensite', 'bainite', 'ferrite-pearlite'] as const;

export const CoolingStructuresQuestion = z
  .strictObject({
    ...steelShape,
    coolingCelsiusPerHour: z.number().describe('At 700 °C, 1 to 10 000 000 °C/h'),
    austenitisedCelsius: z.number().default(850),
    austenitisedHours: z.number().default(0.5),
  })
  .superRefine(namesASteel)
  .meta({ id: 'CoolingStructuresQuestion', examples: [{ steel: '4140', coolingCelsiusPerHour: 100000 }] });

export const CoolingStructuresAnswer = z
  .object({
    steel: SteelAsked,
    limits: z
      .array(
        z.object({
          limit: z.enum([
            'martensite-100',
            'martensite-90',
            'martensite-50',
            'bainite-100',
            'ferrite-pearlite-90',
          ]),
          celsiusPerHour: z.number(),
          shown: z.string(),
        }),
      )
      .describe('Slowest (martensite) or fastest (the others) cooling at 700 °C that gives this'),
    hardnessHv: z
      .array(z.object({ structure: z.enum(STRUCTURES), hardness: Answer }))
      .describe('Of each structure, were it to form at this rate'),
    slowCooled: z
      .object({
        pearlite: z.number(),
        proeutectoidFerrite: z.number(),
        proeutectoidCementite: z.number(),
      })
      .nullable()
      .describe('Lever rule, fractions: plain carbon steel only; null outside 0.022 to 2.14 % C'),
  })
  .meta({ id: 'CoolingStructuresAnswer' });
