import { z } from 'zod';
import { Composition } from './compute/steel-choice.ts';
import { StepName } from './compute/step-name.ts';
import { patchShape } from './patch.ts';
import { EpochMs } from './reading.ts';

/** The shop's own steels and the mill certificates of its bars. */

const Id = z.string().min(1).max(64);
const Celsius = z.number().min(0, 'a temperature from 0 °C').max(1350, 'a temperature up to 1350 °C');

/** A window that the shop states itself; it takes the place of the computed one of the same step. */
export const OwnWindow = z
  .strictObject({
    step: StepName,
    lowCelsius: Celsius,
    highCelsius: Celsius,
    from: z
      .string()
      .trim()
      .min(1, "say where it comes from: maker's data sheet and its date")
      .max(200)
      .describe("Where it comes from: maker's data sheet …"),
    maxCoolingCelsiusPerHour: z.number().gt(0).max(10_000).nullable().default(null),
    coolToCelsius: Celsius.nullable().default(null).describe('Down to where that cooling holds, °C'),
    note: z.string().max(400).default(''),
  })
  .refine((window) => window.lowCelsius <= window.highCelsius, {
    path: ['highCelsius'],
    message: 'the upper end of a window lies below its lower end',
  })
  .meta({ id: 'OwnWindow' });
export type OwnWindow = z.infer<typeof OwnWindow>;

const Windows = z
  .array(OwnWindow)
  .max(16)
  .refine((windows) => new Set(windows.map(({ step }) => step)).size === windows.length, {
    message: 'each step has one window at most',
  });

const ownSteelShape = {
  name: z.string().trim().min(1).max(64).describe('Not a name of the catalogue, nor of another own steel'),
  composition: Composition,
  windows: Windows.default([]).describe('What a data sheet says; every other step is computed'),
  note: z.string().max(2000).default(''),
};

export const OwnSteelDraft = z.strictObject(ownSteelShape).meta({ id: 'OwnSteelDraft' });
export type OwnSteelDraft = z.infer<typeof OwnSteelDraft>;
export const OwnSteelPatch = z.strictObject(patchShape(ownSteelShape)).meta({ id: 'OwnSteelPatch' });
export type OwnSteelPatch = z.infer<typeof OwnSteelPatch>;

export const OwnSteel = z
  .object({ id: Id, ...ownSteelShape, archived: z.boolean(), createdAt: EpochMs, updatedAt: EpochMs })
  .meta({ id: 'OwnSteel' });
export type OwnSteel = z.infer<typeof OwnSteel>;

const certificateShape = {
  heatNumber: z.string().trim().min(1).max(64).describe('As stamped on the bar: heat or cast number'),
  date: z.iso.date('a date as 2026-01-31').nullable().default(null).describe('Of the certificate'),
  note: z.string().max(2000).default(''),
  composition: Composition,
};

export const MillCertificateDraft = z.strictObject(certificateShape).meta({ id: 'MillCertificateDraft' });
export type MillCertificateDraft = z.infer<typeof MillCertificateDraft>;
export const MillCertificatePatch = z
  .strictObject(patchShape(certificateShape))
  .meta({ id: 'MillCertificatePatch' });
export type MillCertificatePatch = z.infer<typeof MillCertificatePatch>;

/** Measured composition of one heat of a steel: compute with it by `certificate`. */
export const MillCertificate = z
  .object({
    id: Id,
    steel: z.string().describe('Id of the grade in the catalogue, or of the own steel'),
    ...certificateShape,
    archived: z.boolean(),
    createdAt: EpochMs,
    updatedAt: EpochMs,
  })
  .meta({ id: 'MillCertificate' });
export type MillCertificate = z.infer<typeof MillCertificate>;
