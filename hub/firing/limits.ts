import type { Segment } from '../contract/schedule.ts';

/** The tolerance band of a segment, °C. A cooling has a target and no band. */
export interface Band {
  readonly target: number;
  readonly low: number;
  readonly high: number;
}

export function bandOf(segment: Segment | undefined): Band | null {
  if (segment === undefined || segment.kind === 'cool') return null;
  const { targetCelsius: target, toleranceCelsius: tolerance } = segment;
  return { target, low: target - tolerance, high: target + tolerance };
}

/** Both ends of the band belong to it. */
export function inside(band: Band, celsius: number): boolean {
  return celsius >= band.low && celsius <= band.high;
}
