import { z } from 'zod';
import { EpochMs } from '../reading.ts';
import { Flag } from './estimate.ts';

/** A measured curve of a gas in room air. */

/** A body may hold 256 kB, and about 40 bytes go to a sample. */
export const MOST_GAS_SAMPLES = 5000;

export const GasSample = z
  .strictObject({ at: EpochMs, ppm: z.number().describe('Below zero (a drifted sensor) counts as zero') })
  .meta({ id: 'GasSample' });

export const GasSamples = z
  .array(GasSample)
  .min(1)
  .max(MOST_GAS_SAMPLES)
  .describe('In order of time; each level stands until the next');

/** What stands where nothing was measured. Zero is not among them: silence is no clean air. */
export const GapFill = z
  .discriminatedUnion('kind', [
    z.strictObject({ kind: z.literal('unknown') }),
    z.strictObject({ kind: z.literal('hold') }),
    z.strictObject({ kind: z.literal('highest') }),
    z.strictObject({ kind: z.literal('level'), ppm: z.number() }),
  ])
  .meta({
    id: 'GapFill',
    description:
      'unknown: nothing; hold: the last level; highest: the highest so far; level: a stated worst case, or the last level where that was higher',
  });

/** Fields of a question about a curve with holes in it. */
export const gapShape = {
  longestHoldSeconds: z.number().default(300).describe('How long a sample is believed without another'),
  gap: GapFill.default({ kind: 'hold' }),
};

export const AirNotices = z.array(Flag).describe('What the numbers do not tell');
