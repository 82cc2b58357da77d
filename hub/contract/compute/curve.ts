import { z } from 'zod';
import { EpochMs } from '../reading.ts';

/** Time at temperature: one hold, or a measured curve. */

/** A body may hold 256 kB, and about 40 bytes go to a point. */
export const MOST_CURVE_POINTS = 5000;

export const HeatReading = z
  .strictObject({ atMs: EpochMs, celsius: z.number().describe('°C') })
  .meta({ id: 'HeatReading' });

export const HeatReadings = z
  .array(HeatReading)
  .min(2)
  .max(MOST_CURVE_POINTS)
  .describe('A measured curve of the piece, in order of time');

/** Fields of a question about time at temperature; finish with `.superRefine(holdsOrFollows)`. */
export const heatShape = {
  celsius: z.number().optional().describe('Temperature of a hold, °C'),
  hours: z.number().optional().describe('Length of the hold, hours, more than 0'),
  curve: HeatReadings.optional().describe('A measured curve instead of a hold, in order of time'),
};

interface HeatAsked {
  readonly celsius?: number | undefined;
  readonly hours?: number | undefined;
  readonly curve?: readonly unknown[] | undefined;
}

export function holdsOrFollows(question: HeatAsked, ctx: z.RefinementCtx): void {
  const { celsius, hours, curve } = question;
  const hold = celsius !== undefined && hours !== undefined;
  const partly = celsius !== undefined || hours !== undefined;
  if (curve === undefined ? hold : !partly) return;
  const path = curve === undefined && celsius !== undefined ? ['hours'] : ['celsius'];
  const message = 'give either a hold (celsius and hours) or a measured curve';
  ctx.addIssue({ code: 'custom', path, message });
}
