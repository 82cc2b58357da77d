import type { PlanPoint } from '../../hub/contract/firing.ts';
import type { CoolSegment, Segment } from '../../hub/contract/schedule.ts';

/**
 * A schedule as a curve before there is a firing. Where it names no rate, a usual one is drawn: common
 * practice, no source. It is a sketch of the plan, never a promise of how long a furnace takes.
 */

export const COLD_CELSIUS = 20;
/** Drawn for a ramp "as fast as possible", °C/h. */
const FREE_RAMP_CELSIUS_PER_HOUR = 900;
/** Drawn for a cooling without a rate, °C/h. */
const COOLING_CELSIUS_PER_HOUR: Readonly<Record<CoolSegment['medium'], number>> = {
  'still-air': 2400,
  furnace: 100,
  ash: 300,
  vermiculite: 200,
  quench: 100_000,
};
const MS_PER_HOUR = 3_600_000;

export interface PlanStart {
  /** Instant of the first point, ms. */
  readonly at: number;
  readonly celsius: number;
}

/** The points of a schedule from `start`: two a segment, with its tolerance. Low and high of a cooling meet. */
export function planCurve(segments: readonly Segment[], start: PlanStart): PlanPoint[] {
  const points: PlanPoint[] = [];
  let at = start.at;
  let celsius = start.celsius;
  for (const segment of segments) {
    const tolerance = segment.kind === 'cool' ? 0 : segment.toleranceCelsius;
    const from = segment.kind === 'soak' ? segment.targetCelsius : celsius;
    points.push(point(at, from, tolerance));
    at += drawnMs(segment, celsius);
    celsius = segment.targetCelsius;
    points.push(point(at, celsius, tolerance));
  }
  return points;
}

/** How long a segment is drawn from `fromCelsius`, ms. */
export function drawnMs(segment: Segment, fromCelsius: number): number {
  const distance = Math.abs(segment.targetCelsius - fromCelsius);
  switch (segment.kind) {
    case 'soak':
      return segment.durationSeconds * 1000;
    case 'ramp':
      return Math.round(
        (distance / (segment.rateCelsiusPerHour ?? FREE_RAMP_CELSIUS_PER_HOUR)) * MS_PER_HOUR,
      );
    case 'cool':
      return Math.round((distance / coolingRate(segment)) * MS_PER_HOUR);
    default:
      return segment satisfies never;
  }
}

/** True when the length of the curve rests on a rate that the schedule does not name. */
export function isSketch(segments: readonly Segment[]): boolean {
  return segments.some((segment) => {
    if (segment.kind === 'soak') return false;
    if (segment.kind === 'ramp') return segment.rateCelsiusPerHour === null;
    return segment.maximumRateCelsiusPerHour === null && segment.minimumRateCelsiusPerHour === null;
  });
}

function coolingRate(segment: CoolSegment): number {
  return (
    segment.maximumRateCelsiusPerHour ??
    segment.minimumRateCelsiusPerHour ??
    COOLING_CELSIUS_PER_HOUR[segment.medium]
  );
}

function point(at: number, celsius: number, tolerance: number): PlanPoint {
  return { at: Math.round(at), celsius, low: celsius - tolerance, high: celsius + tolerance };
}
