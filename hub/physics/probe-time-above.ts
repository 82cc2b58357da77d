/**
 * How long a measured curve spent above a limit.
 */

import { PhysicsError } from './errors.ts';

/** A measured value at an instant. NaN stands for "no usable value". */
export interface CurvePoint {
  /** Epoch milliseconds UTC. */
  readonly atMs: number;
  readonly celsius: number;
}

export interface TimeAbove {
  readonly hoursAbove: number;
  /** Time for which the curve does not say, because readings were missing. */
  readonly hoursUnknown: number;
  /** Highest usable value, °C; undefined when there is none. */
  readonly peakCelsius: number | undefined;
}

const msPerHour = 3_600_000;

/**
 * Hours above a limit, integrated over a curve taken as straight between readings.
 *
 * A stretch longer than `maximumGapMs`, or with an unusable value at either end,
 * is counted as unknown and never as below: nobody saw it.
 *
 * @param curve readings in order of time, at least two for any time to be counted
 * @param limitCelsius a stretch counts while strictly above it
 * @param maximumGapMs longest stretch between two readings that may be joined
 * @throws PhysicsError `bad-input` when time does not rise or the limit is NaN
 */
export function timeAbove(
  curve: readonly CurvePoint[],
  limitCelsius: number,
  maximumGapMs: number,
): TimeAbove {
  if (Number.isNaN(limitCelsius)) throw new PhysicsError('bad-input', 'the limit is not a number');
  let msAbove = 0;
  let msUnknown = 0;
  let peakCelsius: number | undefined;
  let previous: CurvePoint | undefined;
  for (const point of curve) {
    if (previous !== undefined) {
      const width = stretchMs(previous, point);
      if (isJoined(previous, point, maximumGapMs))
        msAbove += width * shareAbove(previous, point, limitCelsius);
      else msUnknown += width;
    }
    if (Number.isFinite(point.celsius)) peakCelsius = Math.max(peakCelsius ?? point.celsius, point.celsius);
    previous = point;
  }
  return { hoursAbove: msAbove / msPerHour, hoursUnknown: msUnknown / msPerHour, peakCelsius };
}

function stretchMs(from: CurvePoint, to: CurvePoint): number {
  const width = to.atMs - from.atMs;
  if (width > 0) return width;
  const message = `reading at ${to.atMs} ms does not come after the one at ${from.atMs} ms`;
  throw new PhysicsError('bad-input', message, { fromMs: from.atMs, toMs: to.atMs });
}

function isJoined(from: CurvePoint, to: CurvePoint, maximumGapMs: number): boolean {
  const usable = Number.isFinite(from.celsius) && Number.isFinite(to.celsius);
  return usable && to.atMs - from.atMs <= maximumGapMs;
}

/** Share of a straight stretch that lies above the limit, 0 to 1. */
function shareAbove(from: CurvePoint, to: CurvePoint, limitCelsius: number): number {
  const first = from.celsius - limitCelsius;
  const last = to.celsius - limitCelsius;
  if (first <= 0 && last <= 0) return 0;
  if (first >= 0 && last >= 0) return 1;
  return Math.max(first, last) / Math.abs(last - first);
}
