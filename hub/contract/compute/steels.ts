import { z } from 'zod';
import { MillCertificate, OwnSteel } from '../own-steel.ts';
import { Flag, Provenance } from './estimate.ts';
import { namesASteel, SteelAsked, steelShape } from './steel-choice.ts';
import { StepName } from './step-name.ts';

export { STEPS, StepName } from './step-name.ts';

/** The catalogue of grades: limits, windows of every step, and where each number comes from. */

export const GradeName = z
  .object({
    system: z.enum(['SAE/AISI', 'EN', 'DIN', 'JIS', 'W-Nr', 'trade']),
    name: z.string(),
    same: z.boolean().describe('False: a near equivalent, like and not the same'),
    from: Provenance,
  })
  .meta({ id: 'GradeName' });

export const StepWindow = z
  .object({
    step: StepName,
    lowCelsius: z.number().describe('forge: where it must stop'),
    highCelsius: z.number().describe('forge: where it starts'),
    uncertaintyCelsius: z.number().describe('To be added on both sides'),
    from: Provenance,
    maxCoolingCelsiusPerHour: z.number().optional(),
    coolToCelsius: z.number().optional(),
    holdHours: z.array(z.number()).length(2).optional().describe('Least and most'),
    note: z.string().optional(),
    shown: z.string(),
  })
  .meta({ id: 'StepWindow' });
export type StepWindow = z.infer<typeof StepWindow>;

const Percents = z.record(z.string(), z.number());

export const SteelSummary = z
  .object({
    id: z.string(),
    title: z.string(),
    origin: z.enum(['catalogue', 'own']).describe('own: entered in this shop'),
    names: z.array(GradeName),
    nominal: Percents.describe('Mass percent: what is computed with, chosen inside the limits'),
    limits: z.record(z.string(), z.object({ low: z.number(), high: z.number() })),
    limitsFrom: Provenance,
    windows: z.array(StepWindow).describe('As published or recalled, then those computed by trade rules'),
    notRecommended: z.array(StepName).describe('Steps that must not be done to this grade'),
    quench: z.object({
      fluids: z.array(z.enum(['water', 'brine', 'fast-oil', 'oil', 'warm-oil', 'air'])),
      oilBelowMm: z.number().optional().describe('Above this thickness only the first fluid hardens it'),
      note: z.string().optional(),
      from: Provenance,
    }),
    quenched: z
      .object({ lowHrc: z.number().nullable(), highHrc: z.number(), from: Provenance })
      .nullable()
      .describe('Hardness as quenched; null: not known'),
    annealedBrinell: z
      .array(z.number())
      .length(2)
      .nullable()
      .describe('Least and most; its source is not recorded: take it as from memory'),
  })
  .meta({ id: 'SteelSummary' });
export type SteelSummary = z.infer<typeof SteelSummary>;

export const TemperSet = z
  .object({
    id: z.string(),
    title: z.string(),
    composition: Percents,
    quenchedHrc: z.number().nullable(),
    timeStated: z.boolean().describe('False: the source states no time and 1.5 h was assumed'),
    secondaryHardening: z.boolean(),
    pairs: z.array(z.object({ celsius: z.number(), hours: z.number(), hrc: z.number() })),
    from: Provenance,
  })
  .meta({ id: 'TemperSet', description: 'Hardness measured after tempering' });

export const SteelDetail = z
  .object({
    ...SteelSummary.shape,
    temperSets: z.array(TemperSet),
    own: OwnSteel.nullable().describe('As it was entered, for an own steel; null for a grade'),
    certificates: z.array(MillCertificate).describe('Of its bars, the newest first'),
  })
  .meta({ id: 'SteelDetail' });
export type SteelDetail = z.infer<typeof SteelDetail>;

export const SteelWindowsQuestion = z
  .strictObject(steelShape)
  .superRefine(namesASteel)
  .meta({
    id: 'SteelWindowsQuestion',
    examples: [
      { composition: { C: 0.7, Mn: 0.6, Si: 0.2 } },
      { steel: '1084', composition: { C: 0.83, Mn: 0.72, Si: 0.22, P: 0.011, S: 0.009 } },
    ],
  });

export const SteelWindowsAnswer = z
  .object({
    steel: SteelAsked,
    windows: z.array(StepWindow),
    outsideLimits: z
      .array(z.object({ element: z.string(), percent: z.number(), low: z.number(), high: z.number() }))
      .describe('Of a certificate, what lies outside the grade'),
    flags: z.array(Flag),
  })
  .meta({ id: 'SteelWindowsAnswer' });
