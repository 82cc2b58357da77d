import { z } from 'zod';
import { EpochMs } from '../reading.ts';
import { Provenance } from './estimate.ts';
import { AirNotices, GasSamples, gapShape } from './gas-curve.ts';

/** Carboxyhaemoglobin by the Coburn-Forster-Kane equation. */

export const WORK_RATES = [
  'rest',
  'light',
  'heavy',
  'level-0',
  'level-1',
  'level-2',
  'level-3',
  'level-4',
] as const;
export const WorkRate = z.enum(WORK_RATES).meta({ id: 'WorkRate' });
export type WorkRate = z.infer<typeof WorkRate>;

const constant = (what: string, low: number, high: number, unit: string) =>
  z.number().optional().describe(`${what}, ${low} to ${high} ${unit}`.trim());

/** Every one may be replaced; what is left out is that of a typical adult at the work rate. */
export const CohbConstants = z
  .strictObject({
    haldaneRatio: constant('Affinity of haemoglobin for CO against oxygen', 50, 500, ''),
    endogenousMlPerMin: constant('CO that the body makes', 0, 1, 'ml/min'),
    bloodMl: constant('Blood volume', 500, 15_000, 'ml'),
    oxygenCapacityMlPerMl: constant('Oxygen that full blood binds', 0.05, 0.4, 'ml/ml'),
    capillaryOxygenMmHg: constant('Mean oxygen pressure in the lung capillaries', 20, 700, 'mmHg'),
    barometricMmHg: constant('Air pressure', 300, 1600, 'mmHg'),
    waterVapourMmHg: constant('Water vapour in the lungs', 0, 60, 'mmHg'),
    diffusionMlPerMinMmHg: constant('Diffusing capacity of the lungs', 1, 200, 'ml/min/mmHg'),
    ventilationMlPerMin: constant('Alveolar ventilation', 500, 150_000, 'ml/min'),
  })
  .meta({ id: 'CohbConstants' });

export const CohbConstantsUsed = z
  .object({
    haldaneRatio: z.number(),
    endogenousMlPerMin: z.number(),
    bloodMl: z.number(),
    oxygenCapacityMlPerMl: z.number(),
    capillaryOxygenMmHg: z.number(),
    barometricMmHg: z.number(),
    waterVapourMmHg: z.number(),
    diffusionMlPerMinMmHg: z.number(),
    ventilationMlPerMin: z.number(),
  })
  .meta({ id: 'CohbConstantsUsed' });

interface Exposed {
  readonly samples?: readonly unknown[] | undefined;
  readonly ppm?: number | undefined;
  readonly minutes?: number | undefined;
  readonly endAt?: number | undefined;
}

function curveOrConstant({ samples, ppm, minutes, endAt }: Exposed, ctx: z.RefinementCtx): void {
  const whole = ppm !== undefined && minutes !== undefined;
  const partly = ppm !== undefined || minutes !== undefined || (endAt !== undefined && samples === undefined);
  if (samples === undefined ? whole && endAt === undefined : !partly) return;
  const path =
    ppm !== undefined && samples === undefined && minutes === undefined ? ['minutes'] : ['samples'];
  const message = 'give either samples (with endAt where it ends later) or a constant ppm with minutes';
  ctx.addIssue({ code: 'custom', path, message });
}

export const CarboxyhaemoglobinQuestion = z
  .strictObject({
    startPercent: z.number().default(0.75).describe('0 to 99.9 %; a smoker begins with 2 to 20 %'),
    workRate: WorkRate.default('heavy'),
    constants: CohbConstants.default({}),
    samples: GasSamples.optional(),
    endAt: EpochMs.optional().describe('When the curve ends; the last sample where left out'),
    ppm: z.number().optional().describe('A constant level instead of samples, 0 to 1e6'),
    minutes: z.number().optional().describe('Its length, 0 to 1e6'),
    ...gapShape,
  })
  .superRefine(curveOrConstant)
  .meta({
    id: 'CarboxyhaemoglobinQuestion',
    examples: [
      { startPercent: 0.75, workRate: 'heavy', ppm: 35, minutes: 480 },
      {
        workRate: 'rest',
        constants: { haldaneRatio: 240 },
        samples: [
          { at: 0, ppm: 100 },
          { at: 3_600_000, ppm: 0 },
        ],
        endAt: 7_200_000,
        longestHoldSeconds: 3600,
      },
    ],
  });
export type CarboxyhaemoglobinQuestion = z.infer<typeof CarboxyhaemoglobinQuestion>;

export const CohbPoint = z
  .object({
    minutes: z.number().describe('Since the start'),
    ppm: z.number().describe('The level from here on, as far as known'),
    nonlinearPercent: z.number(),
    linearPercent: z.number().describe('May pass 100 where the linear form has lost all meaning'),
  })
  .meta({ id: 'CohbPoint' });

export const CarboxyhaemoglobinAnswer = z
  .object({
    workRate: WorkRate,
    constants: CohbConstantsUsed,
    points: z.array(CohbPoint),
    last: CohbPoint,
    highestPercent: z.number().describe('Nonlinear'),
    equilibriumPercent: z.number().describe('Of the last level, nonlinear'),
    linearEquilibriumPercent: z.number(),
    linearHalfLifeMinutes: z.number(),
    gapMinutes: z.number().describe('In which an assumed level stood for a measured one'),
    from: Provenance,
    notices: AirNotices,
  })
  .meta({ id: 'CarboxyhaemoglobinAnswer' });
