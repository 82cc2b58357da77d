import { z } from 'zod';
import { Flag } from './estimate.ts';
import {
  ExposureFrom,
  ExposureUsed,
  exposureShape,
  HeatCurves,
  oneExposure,
  Points,
  pieceShape,
} from './piece.ts';

/** Core, surface and mean of a piece over time. */

export const ConductionQuestion = z
  .strictObject({
    ...pieceShape,
    initialCelsius: z.number().describe('The piece at the start, equally hot throughout, °C'),
    ...exposureShape,
    seconds: z
      .number()
      .gt(0)
      .max(30 * 86_400)
      .optional()
      .describe('Length of the curves; left out: a fifth more than the core takes, or 4 h'),
    points: Points,
    targetCelsius: z
      .number()
      .optional()
      .describe('What the core shall reach; the surroundings when left out'),
    toleranceCelsius: z.number().default(10).describe('Arrived when within this of the target, K'),
  })
  .superRefine(oneExposure)
  .meta({
    id: 'ConductionQuestion',
    examples: [
      { shape: 'bar', thicknessMm: 25, initialCelsius: 20, surroundingsCelsius: 850 },
      {
        shape: 'plate',
        thicknessMm: 100,
        initialCelsius: 200,
        surroundingsCelsius: 800,
        emissivity: 0,
        filmWattsPerSquareMetreKelvin: 250,
        seconds: 857,
        material: {
          kind: 'plain',
          conductivityWattsPerMetreKelvin: 48,
          specificHeatJoulesPerKilogramKelvin: 550,
          densityKilogramsPerCubicMetre: 7830,
        },
      },
    ],
  });
export type ConductionQuestion = z.infer<typeof ConductionQuestion>;

export const EnergyBalance = z
  .object({
    heatInJoulesPerKilogram: z.number().describe('Through the surface, summed over every step'),
    heatContentRiseJoulesPerKilogram: z.number().describe('What the piece holds more at the end'),
    imbalanceJoulesPerKilogram: z.number().describe('Their difference: rounding, if all is well'),
  })
  .meta({ id: 'EnergyBalance' });

export const ConductionAnswer = z
  .object({
    curves: HeatCurves,
    timeToToleranceSeconds: z
      .number()
      .nullable()
      .describe('Until the core is within tolerance of the target; null with a reason when it never is'),
    timeToToleranceShown: z.string().nullable(),
    reason: Flag.nullable().describe('Why there is no time'),
    targetCelsius: z.number(),
    toleranceCelsius: z.number(),
    lagCelsius: z.number().nullable().describe('Surface minus core when the core arrives, K'),
    surfaceBeyondBand: z.boolean().nullable().describe('The skin is hotter than target + tolerance then'),
    energy: EnergyBalance,
    exposure: ExposureUsed,
    exposureFrom: ExposureFrom,
    austeniteShare: z.number().describe('At the end; 0 for a material that does not transform'),
    source: z.string(),
  })
  .meta({ id: 'ConductionAnswer' });
export type ConductionAnswer = z.infer<typeof ConductionAnswer>;
