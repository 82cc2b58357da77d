import { z } from 'zod';
import { Answer, Flag, Provenance } from './estimate.ts';
import { namesASteel, SteelAsked, steelShape } from './steel-choice.ts';

/** Critical temperatures of a steel, and what a magnet says about it. */

export const MagnetAnswer = z
  .object({
    lost: Answer.describe('Where attraction goes on heating, °C'),
    cause: z
      .enum(['curie', 'end-of-transformation', 'curie-before-transformation'])
      .nullable()
      .describe('What went first'),
    proves: z.enum(['above-770', 'above-ac1', 'nothing']),
    plus: Answer.describe('`lost` and what the smith adds to it, °C'),
    meaning: z.array(Flag).describe('What that temperature does to this steel'),
  })
  .meta({ id: 'MagnetAnswer' });
export type MagnetAnswer = z.infer<typeof MagnetAnswer>;

export const MagnetQuestion = z
  .strictObject({
    ...steelShape,
    offsetCelsius: z.number().default(100).describe('What the smith adds by eye, 0 to 300 °C'),
  })
  .superRefine(namesASteel)
  .meta({ id: 'MagnetQuestion', examples: [{ steel: '1045' }, { composition: { C: 0.2, Mn: 0.45 } }] });

export const MagnetReport = z
  .object({ steel: SteelAsked, offsetCelsius: z.number(), ...MagnetAnswer.shape })
  .meta({ id: 'MagnetReport' });

export const CriticalTemperaturesQuestion = z
  .strictObject({
    ...steelShape,
    coolingCelsiusPerHour: z.number().default(28).describe('For Ar1 and Ar3, 1 to 20 000 °C/h'),
    carbonInAustenitePercent: z
      .number()
      .optional()
      .describe('Carbon dissolved in austenite, for Ms; all of it when left out'),
  })
  .superRefine(namesASteel)
  .meta({
    id: 'CriticalTemperaturesQuestion',
    examples: [
      { composition: { C: 0.45, Mn: 0.75, Si: 0.25 } },
      { steel: '1084', coolingCelsiusPerHour: 100 },
    ],
  });
export type CriticalTemperaturesQuestion = z.infer<typeof CriticalTemperaturesQuestion>;

export const FormulaOpinion = z
  .object({
    formula: z.string(),
    celsius: z.number(),
    inValidity: z.boolean(),
    outside: z.array(z.string()).describe('Elements beyond its validity, in words'),
    from: Provenance,
    rangeFrom: Provenance,
  })
  .meta({ id: 'FormulaOpinion' });

/** Every name here is an answer in °C. */
export const criticalShape = {
  ac1: Answer.describe('Start of transformation on heating'),
  ac3: Answer.describe('End of transformation on heating; never below Ac1'),
  acm: Answer.describe('Where the last carbide dissolves: above 0.77 % C only'),
  ms: Answer.describe('Start of martensite'),
  m90: Answer.describe('90 % martensite'),
  mf: Answer.describe('99 % martensite, commonly called Mf'),
  ar1: Answer.describe('End of transformation on cooling'),
  ar3: Answer.describe('Start of transformation on cooling'),
};

export const CriticalTemperaturesAnswer = z
  .object({
    steel: SteelAsked,
    carbonClass: z.enum(['hypoeutectoid', 'near-eutectoid', 'hypereutectoid']),
    ...criticalShape,
    coolingCelsiusPerHour: z.number(),
    opinions: z
      .object({
        ac1: z.array(FormulaOpinion),
        ac3: z.array(FormulaOpinion),
        ms: z.array(FormulaOpinion),
      })
      .describe('What every formula says, those outside their validity marked'),
    magnet: MagnetAnswer.describe('With 100 °C added'),
  })
  .meta({ id: 'CriticalTemperaturesAnswer' });
export type CriticalTemperaturesAnswer = z.infer<typeof CriticalTemperaturesAnswer>;
