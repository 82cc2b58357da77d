import { z } from 'zod';
import { heatShape, holdsOrFollows } from './curve.ts';
import { Answer, Estimate } from './estimate.ts';
import { namesASteel, SteelAsked, steelShape } from './steel-choice.ts';

/** Hardness after tempering fully hardened steel. */

export const TemperingQuestion = z
  .strictObject({ ...steelShape, ...heatShape })
  .superRefine(namesASteel)
  .superRefine(holdsOrFollows)
  .meta({
    id: 'TemperingQuestion',
    examples: [
      { steel: '1084', celsius: 200, hours: 2 },
      {
        composition: { C: 0.4, Mn: 0.88, Si: 0.25, Cr: 0.95, Mo: 0.2 },
        curve: [
          { atMs: 0, celsius: 20 },
          { atMs: 1800000, celsius: 540 },
          { atMs: 5400000, celsius: 540 },
        ],
      },
    ],
  });
export type TemperingQuestion = z.infer<typeof TemperingQuestion>;

export const TemperingAnswer = z
  .object({
    steel: SteelAsked,
    parameter: z.number().describe('Hollomon-Jaffe: T (C + log10 hours), T in kelvin; not divided by 1000'),
    constant: z.number().describe('C, for hours: 21.3 - 5.8 (%C)'),
    hardnessHrc: Answer,
    opinions: z.array(Estimate).describe('Every way of predicting that speaks, the one used first'),
    equivalent: z
      .object({
        referenceCelsius: z.number(),
        hours: z.number(),
        longestGapMs: z.number().describe('Longest stretch that no reading tells about'),
      })
      .nullable()
      .describe('Of a curve: the hold at its peak that does the same; null for a hold'),
  })
  .meta({ id: 'TemperingAnswer' });
export type TemperingAnswer = z.infer<typeof TemperingAnswer>;

export const TemperingCurveQuestion = z
  .strictObject({
    ...steelShape,
    hours: z.number().default(1),
    fromCelsius: z.number().min(20).max(720).default(150),
    toCelsius: z.number().min(20).max(720).default(700),
    points: z.int().min(2).max(60).default(23),
  })
  .superRefine(namesASteel)
  .superRefine(({ fromCelsius, toCelsius }, ctx) => {
    if (fromCelsius < toCelsius) return;
    ctx.addIssue({ code: 'custom', path: ['toCelsius'], message: 'must lie above fromCelsius' });
  })
  .meta({ id: 'TemperingCurveQuestion', examples: [{ steel: '1084', hours: 2 }] });

export const TemperingCurveAnswer = z
  .object({
    steel: SteelAsked,
    hours: z.number(),
    quenchedHardnessHrc: Answer.describe('Before tempering'),
    points: z.array(z.object({ celsius: z.number(), hardnessHrc: Answer })),
  })
  .meta({ id: 'TemperingCurveAnswer' });
