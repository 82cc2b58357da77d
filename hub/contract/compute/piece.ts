import { z } from 'zod';
import { Flag } from './estimate.ts';

/** A piece, what it is made of, and what surrounds it. */

export const PIECE_SHAPES = ['plate', 'bar', 'cylinder', 'sphere'] as const;
export const PieceShape = z
  .enum(PIECE_SHAPES)
  .describe('plate: thickness; bar (or cylinder): diameter of a long round bar; sphere: diameter');
export type PieceShape = z.infer<typeof PieceShape>;

export const PieceMaterial = z
  .discriminatedUnion('kind', [
    z.strictObject({ kind: z.literal('structural') }),
    z.strictObject({
      kind: z.literal('transforming'),
      heatingFromCelsius: z.number().optional().describe('Start of transformation on heating; 725'),
      heatingToCelsius: z.number().optional().describe('745'),
      coolingFromCelsius: z.number().optional().describe('690'),
      coolingToCelsius: z.number().optional().describe('675'),
      latentJoulesPerKilogram: z.number().optional().describe('Heat of the whole transformation; 82 000'),
      undercoolingCelsius: z
        .number()
        .optional()
        .describe('Below `coolingFromCelsius` before it starts, K; 0'),
      coolingSeconds: z.number().optional().describe('Shortest time of the transformation on cooling; 0'),
    }),
    z.strictObject({
      kind: z.literal('plain'),
      conductivityWattsPerMetreKelvin: z.number(),
      specificHeatJoulesPerKilogramKelvin: z.number(),
      densityKilogramsPerCubicMetre: z.number(),
    }),
  ])
  .describe(
    'structural: carbon steel of EN 1993-1-2 with its transformation peak; transforming: eutectoid steel with its arrests on heating and on cooling kept apart; plain: constant properties',
  );
export type PieceMaterial = z.infer<typeof PieceMaterial>;

export const pieceShape = {
  shape: PieceShape,
  thicknessMm: z.number().describe('Thickness or diameter, mm: 0.2 to 1000'),
  material: PieceMaterial.default({ kind: 'structural' }),
};

/** Media as a typical film coefficient, in the order from slow to fast. */
export const MEDIA = [
  'still-air',
  'moving-air',
  'still-oil',
  'moving-oil',
  'still-water',
  'moving-water',
  'still-brine',
] as const;
export const Medium = z.enum(MEDIA);
export type Medium = z.infer<typeof Medium>;

export const MOST_SURROUNDINGS = 200;

/** The furnace that a question is about: what was fitted to it is used, else the usual values of its kind. */
export const FurnaceId = z
  .string()
  .min(1)
  .max(64)
  .describe('Id of a furnace: computes with what was fitted to it, else with the usual values of its kind');

/** Fields of a question about surroundings; finish with `.superRefine(oneExposure)`. */
export const exposureShape = {
  surroundingsCelsius: z.number().describe('Chamber, air or bath, °C'),
  surroundingsCurve: z
    .array(z.strictObject({ atSeconds: z.number().min(0), celsius: z.number() }))
    .min(1)
    .max(MOST_SURROUNDINGS)
    .optional()
    .describe('A chamber that changes, straight between points and held after the last, instead'),
  emissivity: z.number().optional().describe('Effective, 0 to 1; 0.8 when left out'),
  filmWattsPerSquareMetreKelvin: z.number().optional().describe('Film coefficient; 10 when left out'),
  medium: Medium.optional().describe('Takes emissivity and film coefficient from a medium instead'),
  furnace: FurnaceId.optional(),
};

interface ExposureAsked {
  readonly emissivity?: number | undefined;
  readonly filmWattsPerSquareMetreKelvin?: number | undefined;
  readonly medium?: Medium | undefined;
  readonly furnace?: string | undefined;
}

export function oneExposure(question: ExposureAsked, ctx: z.RefinementCtx): void {
  const own = question.emissivity !== undefined || question.filmWattsPerSquareMetreKelvin !== undefined;
  const asked = [own, question.medium !== undefined, question.furnace !== undefined].filter(Boolean);
  if (asked.length < 2) return;
  const path = [question.furnace === undefined ? 'medium' : 'furnace'];
  const message =
    'a medium and a furnace bring their own emissivity and film coefficient: give one of them, or the two numbers';
  ctx.addIssue({ code: 'custom', path, message });
}

export const ExposureUsed = z
  .object({ emissivity: z.number(), filmWattsPerSquareMetreKelvin: z.number() })
  .meta({ id: 'ExposureUsed' });

/** Where emissivity and film coefficient of an answer come from. */
export const ExposureFrom = z
  .object({
    by: z.enum(['asked', 'medium', 'furnace-fit', 'usual-of-kind', 'usual']),
    furnaceId: z.string().nullable(),
    residualCelsius: z
      .number()
      .nullable()
      .describe('What the fit of that furnace leaves, rms, K; null without a fit'),
    text: z.string().describe('The same in words, with the residual'),
    flags: z.array(Flag).describe('Where the fit is doubtful, or far from the heat that it was made at'),
  })
  .meta({ id: 'ExposureFrom' });
export type ExposureFrom = z.infer<typeof ExposureFrom>;

/** The usual number of points of a drawn curve, and the most. */
export const Points = z.int().min(2).max(1000).default(200).describe('Points of each curve');

export const HeatCurves = z
  .object({
    seconds: z.array(z.number()),
    coreCelsius: z.array(z.number()),
    surfaceCelsius: z.array(z.number()),
    meanCelsius: z.array(z.number()),
  })
  .meta({ id: 'HeatCurves', description: 'Columns of one length; seconds from the start' });
export type HeatCurves = z.infer<typeof HeatCurves>;
