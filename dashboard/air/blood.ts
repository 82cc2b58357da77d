import type { z } from 'zod';
import type { AirExposure } from '../../hub/contract/air.ts';

/** The estimate of carboxyhaemoglobin as a band on a scale. Pure. */

type Blood = z.infer<typeof AirExposure>['blood'];

/** The scale reaches a little past the warning, or past the band where that is higher. */
export interface BloodScale {
  readonly topPercent: number;
  /** Shares of the scale, 0 to 1. */
  readonly low: number;
  readonly high: number;
  readonly limit: number;
}

export function bloodScale({ lowPercent, highPercent, limitPercent }: Blood): BloodScale {
  const topPercent = Math.max(limitPercent * 1.5, highPercent * 1.15);
  return {
    topPercent,
    low: lowPercent / topPercent,
    high: highPercent / topPercent,
    limit: limitPercent / topPercent,
  };
}
