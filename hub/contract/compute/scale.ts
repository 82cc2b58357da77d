import { z } from 'zod';
import { heatShape, holdsOrFollows } from './curve.ts';
import { Band } from './estimate.ts';

/** Scale grown in air, and the metal it took. */

export const ScaleQuestion = z
  .strictObject(heatShape)
  .superRefine(holdsOrFollows)
  .meta({ id: 'ScaleQuestion', examples: [{ celsius: 900, hours: 1 }] });

export const ScaleAnswer = z
  .object({
    thicknessMetres: Band.describe('Shown in mm'),
    metalLossMetres: Band.describe('From each face; shown in mm'),
    gainKilogramsPerSquareMetre: Band.describe('Oxygen taken up'),
    secondsCounted: z.number().describe('Between 700 and 1250 °C'),
    cautions: z.array(z.enum(['above-range', 'uncounted-below-700', 'long-gap'])),
    source: z.string(),
  })
  .meta({ id: 'ScaleAnswer' });
