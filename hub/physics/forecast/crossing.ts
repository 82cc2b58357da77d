/** Will a limit be crossed, when, and with what probability. */
import { requireRange } from '../errors.ts';
import type { Forecaster } from './forecaster.ts';
import { type OutlookPoint, outlook, type Quantity, shareBelow } from './outlook.ts';

export interface CrossingQuestion {
  readonly limitCelsius: number;
  readonly direction: 'rising' | 'falling';
  /** How far to look, s after the newest reading: 5 to 900. */
  readonly withinSeconds: number;
  /** Default: the temperature around the probe. */
  readonly quantity?: Quantity;
}

/** Instants (epoch ms) by which something has happened with 10, 50 and 90 %; null: not within the time looked at. */
export interface Times {
  readonly earliestMs: number | null;
  readonly likelyMs: number | null;
  readonly latestMs: number | null;
}

export interface Crossing extends Times {
  /**
   * Probability that it is beyond the limit at some instant of the time looked at: the greatest of the single
   * instants. A little low, for it may cross and come back between: never by more than half (a walk of pure chance,
   * by the reflection principle), hardly at all where a trend decides.
   */
  readonly probability: number;
}

/**
 * When to warn of an overshoot: as soon as it is about as likely as not within two minutes. Chosen on the seeds that
 * the manners were fitted on: at 0.5 one firing in twenty less was told a minute ahead, and neither gave a false alarm.
 */
export const OVERSHOOT_WARNING = { withinSeconds: 120, probability: 0.45 } as const;

/** How probable it is, instant by instant, that something has happened. */
export interface ProbabilityPoint {
  readonly atMs: number;
  readonly probability: number;
}

/**
 * Tells about a limit. One that is passed already is crossed now.
 *
 * @throws PhysicsError `out-of-range` for the limit (-273.15 to 2500 °C) or the time
 */
export function crossing(forecaster: Forecaster, question: CrossingQuestion): Crossing {
  const { limitCelsius, direction, withinSeconds, quantity = 'body' } = question;
  requireRange('A limit', limitCelsius, -273.15, 2500, '°C');
  const points = outlook(forecaster, withinSeconds, { quantity });
  const course = crossingCourse(points, limitCelsius, direction);
  return { probability: course.at(-1)?.probability ?? 0, ...timesOf(course) };
}

/** The probability of having been beyond a limit, instant by instant; it never falls. */
export function crossingCourse(
  points: readonly OutlookPoint[],
  limitCelsius: number,
  direction: CrossingQuestion['direction'],
): readonly ProbabilityPoint[] {
  let most = 0;
  return points.map(({ atMs, mixture }) => {
    const below = shareBelow(mixture, limitCelsius);
    most = Math.max(most, direction === 'rising' ? 1 - below : below);
    return { atMs, probability: most };
  });
}

/** When a course passes 10, 50 and 90 %. */
export function timesOf(course: readonly ProbabilityPoint[]): Times {
  return {
    earliestMs: instantOf(course, 0.1),
    likelyMs: instantOf(course, 0.5),
    latestMs: instantOf(course, 0.9),
  };
}

/** The instant at which a rising course passes a probability, on the straight line between two of its points. */
function instantOf(course: readonly ProbabilityPoint[], probability: number): number | null {
  const index = course.findIndex((point) => point.probability >= probability);
  const after = course[index];
  if (after === undefined) return null;
  const before = course[index - 1];
  if (before === undefined) return after.atMs;
  const share = (probability - before.probability) / (after.probability - before.probability);
  return Math.round(before.atMs + share * (after.atMs - before.atMs));
}
