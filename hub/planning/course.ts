import type { Segment, SoakSegment } from '../contract/schedule.ts';
import type { PlanFurnace } from './types.ts';

/** What a schedule comes to as a whole. */

/** The hottest soak, which is what a heat is for; null when the schedule has none. */
export function mainSoak(segments: readonly Segment[]): { index: number; soak: SoakSegment } | null {
  let found: { index: number; soak: SoakSegment } | null = null;
  for (const [index, segment] of segments.entries()) {
    if (segment.kind !== 'soak') continue;
    if (found === null || segment.targetCelsius > found.soak.targetCelsius) found = { index, soak: segment };
  }
  return found;
}

/** The hottest that any segment aims at, its tolerance not counted. */
export function hottest(segments: readonly Segment[]): { index: number; celsius: number } {
  return segments.reduce(
    (best, { kind, targetCelsius }, index) =>
      kind !== 'cool' && targetCelsius > best.celsius ? { index, celsius: targetCelsius } : best,
    { index: 0, celsius: Number.NEGATIVE_INFINITY },
  );
}

/** °C/h from cold where the schedule gives no rate. Common practice, no source. */
const USUAL_RAMP: Readonly<Record<PlanFurnace['kind'], number>> = {
  'gas-forge': 1800,
  'electric-oven': 600,
  'salt-bath': 300,
};
/** A furnace that nobody has lit. */
export const COLD_CELSIUS = 20;

export function rampRateOf(segment: Segment | undefined, furnace: PlanFurnace): number {
  const asked = segment?.kind === 'ramp' ? segment.rateCelsiusPerHour : null;
  return asked ?? USUAL_RAMP[furnace.kind];
}

/** While the furnace burns: until the last segment that heats is over, s. */
export function heatedSeconds(segments: readonly Segment[], furnace: PlanFurnace): number {
  let celsius = COLD_CELSIUS;
  let total = 0;
  let heated = 0;
  for (const segment of segments) {
    total += secondsOf(segment, celsius, furnace);
    celsius = segment.targetCelsius;
    if (segment.kind !== 'cool') heated = total;
  }
  return heated;
}

function secondsOf(segment: Segment, fromCelsius: number, furnace: PlanFurnace): number {
  switch (segment.kind) {
    case 'ramp':
      return (Math.abs(segment.targetCelsius - fromCelsius) / rampRateOf(segment, furnace)) * 3600;
    case 'soak':
      return segment.durationSeconds;
    case 'cool': {
      const rate = segment.maximumRateCelsiusPerHour ?? segment.minimumRateCelsiusPerHour;
      return rate === null ? 0 : ((fromCelsius - segment.targetCelsius) / rate) * 3600;
    }
    default:
      return segment satisfies never;
  }
}
