import { z } from 'zod';
import { Flag } from './compute/estimate.ts';
import { FurnaceFitAnswer } from './compute/furnace-fit.ts';
import { pieceShape } from './compute/piece.ts';
import { EpochMs } from './reading.ts';

/** A furnace's own emissivity and film coefficient, kept with it and used for it from then on. */

const FiringId = z.string().min(1).max(64);

/** Where the numbers come from: a firing of this furnace, or somebody's words. */
export const FitSource = z
  .discriminatedUnion('kind', [
    z.strictObject({ kind: z.literal('firing'), firingId: FiringId }),
    z.strictObject({ kind: z.literal('text'), text: z.string().trim().min(1).max(200) }),
  ])
  .meta({ id: 'FitSource' });
export type FitSource = z.infer<typeof FitSource>;

/** Root mean square that a fit may leave before it is remarked on, K: more than a thermocouple's own class. */
export const FIT_DOUBTFUL_CELSIUS = 10;
/** A fit that leaves more than this does not describe the furnace and is not kept, K. Common practice, no source. */
export const FIT_REFUSED_CELSIUS = 30;

const fitNumbers = {
  effectiveEmissivity: z.number().min(0).max(1).describe('Chamber to load, 0 to 1'),
  filmWattsPerSquareMetreKelvin: z.number().min(0).max(2000).describe('Film coefficient, W/(m² K)'),
  residualCelsius: z
    .number()
    .min(0)
    .describe('Root mean square of what the fit leaves, K: shown wherever the fit is used'),
  separated: z
    .boolean()
    .default(true)
    .describe('False: the run cannot tell radiation from convection; the pair holds near its own heat only'),
  loadLowCelsius: z.number().nullable().default(null).describe('Coldest of the load in the run, °C'),
  loadHighCelsius: z.number().nullable().default(null).describe('Hottest of the load in the run, °C'),
};

export const FurnaceFit = z
  .object({ ...fitNumbers, fittedAt: EpochMs, from: FitSource.nullable() })
  .meta({ id: 'FurnaceFit' });
export type FurnaceFit = z.infer<typeof FurnaceFit>;

/** A finished firing to learn from: what lay in the furnace, and which channels saw it. */
const firingShape = {
  firingId: FiringId,
  ...pieceShape,
  loadAt: z.enum(['core', 'surface']).default('core').describe('Where the load thermocouple sits'),
  chamberChannel: FiringId.nullable()
    .default(null)
    .describe('Id; null: the channel of the furnace with the role chamber'),
  loadChannel: FiringId.nullable()
    .default(null)
    .describe('Id; null: the channel of the furnace with the role load'),
};

/** What `POST /furnaces/{id}/fit/try` is asked: it computes and keeps nothing. */
export const FurnaceFitTry = z.strictObject(firingShape).meta({ id: 'FurnaceFitTry' });
export type FurnaceFitTry = z.infer<typeof FurnaceFitTry>;

export const FurnaceFitTried = z
  .object({
    fit: FurnaceFit.describe('As it would be kept'),
    answer: FurnaceFitAnswer,
    flags: z.array(Flag).describe('What speaks against keeping it'),
    refusal: Flag.nullable().describe('Why it will not be kept; null when it may'),
  })
  .meta({ id: 'FurnaceFitTried' });
export type FurnaceFitTried = z.infer<typeof FurnaceFitTried>;

/** What `PUT /furnaces/{id}/fit` keeps: numbers that are known, or a firing to fit now. */
export const FurnaceFitKeep = z
  .discriminatedUnion('kind', [
    z.strictObject({ kind: z.literal('numbers'), ...fitNumbers, from: FitSource.nullable().default(null) }),
    z.strictObject({ kind: z.literal('firing'), ...firingShape }),
  ])
  .meta({ id: 'FurnaceFitKeep' });
export type FurnaceFitKeep = z.infer<typeof FurnaceFitKeep>;
