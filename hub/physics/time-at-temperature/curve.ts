/**
 * A measured curve, and integrals over it.
 *
 * Between two readings temperature is taken as straight. That is fair for
 * readings minutes apart and a guess for longer gaps, so every integral
 * reports the longest gap it bridged.
 */
import { PhysicsError, requireRange } from '../errors.ts';

/** One reading: moment in epoch milliseconds UTC, temperature in °C. */
export interface CurvePoint {
  readonly atMs: number;
  readonly celsius: number;
}

export interface CurveIntegral {
  /** Integral of the rate over the time in range; unit of the rate times s. */
  readonly value: number;
  /** Time within the range, s. */
  readonly secondsInRange: number;
  /** Time below and above it, s: nothing is claimed for it. */
  readonly secondsBelow: number;
  readonly secondsAbove: number;
  /** Longest distance between two readings, s. */
  readonly longestGapSeconds: number;
}

/** Temperatures in °C between which a rate is known, both included. */
export interface CelsiusRange {
  readonly low: number;
  readonly high: number;
}

/** A straight piece of curve is cut so that no slice spans more than this. */
const SLICE_CELSIUS = 2;

/**
 * Refuses a curve that cannot be integrated.
 *
 * @throws PhysicsError `bad-input` for fewer than two points or time that does
 *   not rise, `out-of-range` for a temperature outside -273 to 2000 °C
 */
export function requireCurve(points: readonly CurvePoint[]): readonly CurvePoint[] {
  if (points.length < 2) throw new PhysicsError('bad-input', 'a curve needs two points or more');
  let before = Number.NEGATIVE_INFINITY;
  for (const [index, { atMs, celsius }] of points.entries()) {
    requireRange(`temperature of point ${index}`, celsius, -273, 2000, '°C');
    if (!(atMs > before)) {
      throw new PhysicsError('bad-input', `time does not rise at point ${index}`, { index });
    }
    before = atMs;
  }
  return points;
}

/**
 * Integral of a temperature-dependent rate over the time in which the curve is
 * within a range. Midpoint rule on slices of at most 2 K.
 *
 * @param rate per second, of °C; asked only within `range`
 * @throws PhysicsError as {@link requireCurve}
 */
export function integrate(
  points: readonly CurvePoint[],
  range: CelsiusRange,
  rate: (celsius: number) => number,
): CurveIntegral {
  requireCurve(points);
  const sum = { value: 0, secondsInRange: 0, secondsBelow: 0, secondsAbove: 0, longestGapSeconds: 0 };
  for (const [index, to] of points.entries()) {
    const from = points[index - 1];
    if (from === undefined) continue;
    sum.longestGapSeconds = Math.max(sum.longestGapSeconds, (to.atMs - from.atMs) / 1000);
    for (const slice of slicesBetween(from, to)) {
      if (slice.celsius < range.low) sum.secondsBelow += slice.seconds;
      else if (slice.celsius > range.high) sum.secondsAbove += slice.seconds;
      else {
        sum.secondsInRange += slice.seconds;
        sum.value += rate(slice.celsius) * slice.seconds;
      }
    }
  }
  return sum;
}

interface Slice {
  readonly celsius: number;
  readonly seconds: number;
}

function slicesBetween(from: CurvePoint, to: CurvePoint): Slice[] {
  const rise = to.celsius - from.celsius;
  const count = Math.max(1, Math.ceil(Math.abs(rise) / SLICE_CELSIUS));
  const seconds = (to.atMs - from.atMs) / 1000 / count;
  return Array.from({ length: count }, (_, i) => ({
    celsius: from.celsius + (rise * (i + 0.5)) / count,
    seconds,
  }));
}

/** A curve held at one temperature: for asking "what would an hour at 850 do". */
export function heldAt(celsius: number, seconds: number): CurvePoint[] {
  return [
    { atMs: 0, celsius },
    { atMs: seconds * 1000, celsius },
  ];
}
