import { z } from 'zod';
import { Flag } from './estimate.ts';
import { ExposureFrom, ExposureUsed, exposureShape, oneExposure, pieceShape } from './piece.ts';

/** How long a piece takes to arrive, and when it may come out. */

export const SoakTimeQuestion = z
  .strictObject({
    ...pieceShape,
    initialCelsius: z.number().default(20),
    ...exposureShape,
    targetCelsius: z
      .number()
      .optional()
      .describe('What the core shall reach; the surroundings when left out'),
    toleranceCelsius: z.number().default(10).describe('Arrived when within this of the target, K'),
    holdSeconds: z.number().default(0).describe('Time at heat that the trade asks for, s'),
    alsoThicknessMm: z
      .array(z.number())
      .max(8)
      .default([])
      .describe('The same for other thicknesses: what thinner and thicker would do'),
  })
  .superRefine(oneExposure)
  .meta({
    id: 'SoakTimeQuestion',
    examples: [
      {
        shape: 'plate',
        thicknessMm: 25,
        surroundingsCelsius: 815,
        targetCelsius: 815,
        toleranceCelsius: 10,
        holdSeconds: 1800,
        alsoThicknessMm: [12, 50],
      },
    ],
  });
export type SoakTimeQuestion = z.infer<typeof SoakTimeQuestion>;

export const Soak = z
  .object({
    thicknessMm: z.number(),
    arrivalSeconds: z.number().describe('Until the core is within tolerance'),
    holdSeconds: z.number(),
    totalSeconds: z.number().describe('Until the piece may come out'),
    lagCelsius: z.number().describe('Surface minus core at arrival, K: what the thermometer hides'),
    surfaceBeyondBand: z.boolean(),
    shown: z.string(),
  })
  .meta({ id: 'Soak' });

export const SoakTimeAnswer = z
  .object({
    ...Soak.shape,
    exposure: ExposureUsed,
    exposureFrom: ExposureFrom,
    others: z.array(
      z.union([Soak, z.object({ thicknessMm: z.number(), arrivalSeconds: z.null(), reason: Flag })]),
    ),
    source: z.string(),
  })
  .meta({ id: 'SoakTimeAnswer' });
export type SoakTimeAnswer = z.infer<typeof SoakTimeAnswer>;
