import type { SegmentResult } from '../contract/firing.ts';
import type { Segment, SoakSegment } from '../contract/schedule.ts';
import { type CurvePoint, integrate } from '../physics/time-at-temperature/curve.ts';
import { mainSoak } from '../planning/course.ts';
import { clipped, curveOf, type PieceHeat } from './heat.ts';
import type { Band } from './types.ts';

/** What a piece went through, in the numbers that a heat is for. */
export interface Achieved {
  /** The hottest soak of the schedule; null when it has none, or when it was never begun. */
  readonly main: { readonly index: number; readonly soak: SoakSegment; readonly endedAtMs: number } | null;
  /** Mean while inside tolerance; the highest of the soak when it never was. */
  readonly heldCelsius: number | null;
  readonly soakSeconds: number | null;
  /** By the assumption that leaves it coldest. */
  readonly lowSoakSeconds: number | null;
  readonly peakCelsius: Band | null;
  readonly surfacePeakCelsius: number | null;
}

const NOTHING: Achieved = {
  main: null,
  heldCelsius: null,
  soakSeconds: null,
  lowSoakSeconds: null,
  peakCelsius: null,
  surfacePeakCelsius: null,
};

export function achievedBy(
  heat: PieceHeat,
  segments: readonly Segment[],
  results: readonly SegmentResult[],
): Achieved {
  if (heat.points.length < 2) return NOTHING;
  const peaks: Achieved = {
    ...NOTHING,
    peakCelsius: {
      low: highest(curveOf(heat.points, 'core', 'low')),
      value: highest(curveOf(heat.points, 'core', 'value')),
      high: highest(curveOf(heat.points, 'core', 'high')),
    },
    surfacePeakCelsius: highest(curveOf(heat.points, 'surface', 'value')),
  };
  const found = mainSoak(segments);
  const result = results.find(({ index }) => index === found?.index);
  const fromMs = result?.startedAt ?? null;
  if (found === null || fromMs === null) return peaks;
  const toMs = result?.endedAt ?? heat.points.at(-1)?.atMs ?? fromMs;
  const { soak } = found;
  const value = inside(clipped(curveOf(heat.points, 'core', 'value'), fromMs, toMs), soak);
  const low = inside(clipped(curveOf(heat.points, 'core', 'low'), fromMs, toMs), soak);
  return {
    ...peaks,
    main: { ...found, endedAtMs: toMs },
    heldCelsius: value?.celsius ?? null,
    soakSeconds: value?.seconds ?? null,
    lowSoakSeconds: low?.seconds ?? null,
  };
}

function inside(
  curve: readonly CurvePoint[],
  { targetCelsius, toleranceCelsius }: SoakSegment,
): { seconds: number; celsius: number } | null {
  if (curve.length < 2) return null;
  const range = { low: targetCelsius - toleranceCelsius, high: targetCelsius + toleranceCelsius };
  const sum = integrate(curve, range, (celsius) => celsius);
  const seconds = sum.secondsInRange;
  return { seconds, celsius: seconds > 0 ? sum.value / seconds : highest(curve) };
}

/** Highest temperature of a curve, °C. */
export function highest(curve: readonly CurvePoint[]): number {
  let most = Number.NEGATIVE_INFINITY;
  for (const { celsius } of curve) most = Math.max(most, celsius);
  return most;
}

/** Highest between two instants; null when nothing is known of it. */
export function highestBetween(curve: readonly CurvePoint[], fromMs: number, toMs: number): number | null {
  const part = clipped(curve, fromMs, toMs);
  return part.length === 0 ? null : highest(part);
}
