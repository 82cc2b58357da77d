import { z } from 'zod';
import { EpochMs } from '../reading.ts';
import { pieceShape } from './piece.ts';

/** A furnace's own emissivity and film coefficient, from a run with a thermocouple in the load. */

/** More points than this teach a fit of two numbers nothing; send the run thinned. */
export const MOST_FIT_POINTS = 2000;

/** A run that can be read at a glance: 20 mm bar, a chamber at 450 and then at 850 °C; minutes, °C, °C. */
const EXAMPLE_RUN = [
  [0, 450, 20],
  [2, 450, 121.75],
  [4, 450, 201.25],
  [6, 450, 264],
  [8, 450, 312.25],
  [10, 450, 349.25],
  [12, 450, 376.75],
  [14, 450, 397],
  [16, 450, 411.75],
  [18, 450, 422.5],
  [20, 850, 522.25],
  [22, 850, 675.25],
  [24, 850, 733],
  [26, 850, 765.75],
  [28, 850, 808],
  [30, 850, 832],
] as const;

export const FurnaceFitQuestion = z
  .strictObject({
    ...pieceShape,
    loadAt: z.enum(['core', 'surface']).default('core').describe('Where the load thermocouple sits'),
    run: z
      .array(z.strictObject({ atMs: EpochMs, chamberCelsius: z.number(), loadCelsius: z.number() }))
      .max(MOST_FIT_POINTS)
      .describe('In order of time, 12 points at least; beyond 200 evenly thinned'),
  })
  .meta({
    id: 'FurnaceFitQuestion',
    examples: [
      {
        shape: 'bar',
        thicknessMm: 20,
        run: EXAMPLE_RUN.map(([minute, chamberCelsius, loadCelsius]) => ({
          atMs: minute * 60_000,
          chamberCelsius,
          loadCelsius,
        })),
      },
    ],
  });
export type FurnaceFitQuestion = z.infer<typeof FurnaceFitQuestion>;

export const FurnaceFitAnswer = z
  .object({
    emissivity: z.number().describe('Effective, chamber to load'),
    filmWattsPerSquareMetreKelvin: z.number(),
    rmsCelsius: z.number().describe('What the fit leaves, K'),
    worstCelsius: z.number(),
    pointsUsed: z.int(),
    emissivityStandardError: z.number(),
    filmStandardError: z.number(),
    correlation: z.number(),
    separated: z
      .boolean()
      .describe(
        'False: the run cannot tell radiation from convection; use the pair together, near this heat',
      ),
    shown: z.object({ emissivity: z.string(), filmWattsPerSquareMetreKelvin: z.string() }),
    source: z.string(),
  })
  .meta({ id: 'FurnaceFitAnswer' });
