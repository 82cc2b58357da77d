/** When the temperature reaches its tolerance, and when the soak that starts there will end. */
import { PhysicsError, requireRange } from '../errors.ts';
import { crossingCourse, type Times, timesOf } from './crossing.ts';
import type { Forecaster } from './forecaster.ts';
import { FARTHEST_SECONDS, type OutlookPoint, outlook, type Quantity, shareBelow } from './outlook.ts';

/** A tolerance, °C, both ends inside. */
export interface ToleranceBand {
  readonly low: number;
  readonly high: number;
}

export interface SoakOutlook {
  /** When it is inside the tolerance; now, when it is so already. */
  readonly start: Times;
  /** When the soak clock will have run its time, if it never stands again after the start. */
  readonly end: Times;
  /**
   * Probability of being inside at the worst instant after the likely start, until the end or as far as anything is
   * foretold: the chance that the clock never stands is not more than this. Null when the start is not in sight.
   */
  readonly holds: number | null;
}

/**
 * Looks for the start and the end of a soak.
 *
 * @param remainingSeconds what the soak clock still has to run, 0 to 7 days
 * @param quantity the soak clock goes by what probes show; the default is the temperature around the probe
 * @throws PhysicsError `bad-input` for a band that is upside down; `out-of-range`
 */
export function soakOutlook(
  forecaster: Forecaster,
  band: ToleranceBand,
  remainingSeconds: number,
  quantity: Quantity = 'body',
): SoakOutlook {
  if (!(band.low < band.high)) {
    throw new PhysicsError('bad-input', `A tolerance from ${band.low} to ${band.high} °C is upside down`);
  }
  requireRange('What is left of the soak', remainingSeconds, 0, 7 * 86_400, 's');
  const points = outlook(forecaster, FARTHEST_SECONDS, { quantity });
  const start = startOf(points, band);
  const later = (instant: number | null) =>
    instant === null ? null : Math.round(instant + remainingSeconds * 1000);
  const end = {
    earliestMs: later(start.earliestMs),
    likelyMs: later(start.likelyMs),
    latestMs: later(start.latestMs),
  };
  return { start, end, holds: holdsOf(points, band, start.likelyMs, end.likelyMs) };
}

function startOf(points: readonly OutlookPoint[], band: ToleranceBand): Times {
  const now = points[0]?.celsius ?? band.low;
  if (now < band.low) return timesOf(crossingCourse(points, band.low, 'rising'));
  if (now > band.high) return timesOf(crossingCourse(points, band.high, 'falling'));
  const atMs = points[0]?.atMs ?? null;
  return { earliestMs: atMs, likelyMs: atMs, latestMs: atMs };
}

function holdsOf(
  points: readonly OutlookPoint[],
  band: ToleranceBand,
  fromMs: number | null,
  untilMs: number | null,
): number | null {
  if (fromMs === null || untilMs === null) return null;
  // At the start itself half of the chances are still outside: look from where it is surely in, a minute on.
  const first = fromMs === points[0]?.atMs ? fromMs : fromMs + 60_000;
  const during = points.filter(({ atMs }) => atMs >= first && atMs <= untilMs);
  if (during.length === 0) return null;
  return Math.min(
    ...during.map(({ mixture }) => shareBelow(mixture, band.high) - shareBelow(mixture, band.low)),
  );
}
