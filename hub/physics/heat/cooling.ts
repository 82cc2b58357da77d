/** Cooling curves in a medium, and what is read off them. */
import { PhysicsError, requireRange } from '../errors.ts';
import type { Body } from './body.ts';
import type { HeatPoint } from './heat-curve.ts';
import { type Medium, mediumOf } from './media.ts';
import { accurateSeconds, type PieceState, startPiece, stepPiece } from './piece.ts';
import type { Band, Standing } from './standing.ts';

export interface CoolingPlan {
  readonly body: Body;
  readonly startCelsius: number;
  /** One of MEDIUM_IDS. */
  readonly medium: string;
  /** Temperature of the medium, °C. Default: its usual one. */
  readonly mediumCelsius?: number;
  /** The curve ends when the core is below this, °C. At least 5 K above the medium. */
  readonly untilCelsius: number;
}

export interface CoolingCurves {
  readonly typical: readonly HeatPoint[];
  /** With the lowest film coefficient and emissivity that the medium may have. */
  readonly slowest: readonly HeatPoint[];
  /** With the highest. */
  readonly fastest: readonly HeatPoint[];
  readonly standing: Standing;
  readonly source: string;
}

const MOST_POINTS = 20_000;

/**
 * Cooling of a piece in a medium, as a typical curve and the two ends of its band.
 *
 * @throws PhysicsError `bad-input` for an unknown medium, `out-of-range` when
 *   `untilCelsius` is not between the medium (+5 K) and the start
 */
export function coolingCurves(plan: CoolingPlan): CoolingCurves {
  const medium = mediumOf(plan.medium);
  const ends = (pick: (band: Band) => number): HeatPoint[] => coolOnce(plan, medium, pick);
  return {
    typical: ends((band) => band.value),
    slowest: ends((band) => band.low),
    fastest: ends((band) => band.high),
    standing: medium.standing,
    source: medium.source,
  };
}

function coolOnce(plan: CoolingPlan, medium: Medium, pick: (band: Band) => number): HeatPoint[] {
  const surroundingsCelsius = plan.mediumCelsius ?? medium.usualCelsius;
  requireRange('end of cooling', plan.untilCelsius, surroundingsCelsius + 5, plan.startCelsius, '°C');
  const exposure = { surroundingsCelsius, film: pick(medium.filmWM2K), emissivity: pick(medium.emissivity) };
  let state = startPiece(plan.body, plan.startCelsius);
  const points = [pointOf(state, surroundingsCelsius)];
  while (state.coreCelsius > plan.untilCelsius && points.length < MOST_POINTS) {
    const seconds = Math.max(1e-3, accurateSeconds(state, exposure, surroundingsCelsius));
    state = stepPiece(state, { ...exposure, seconds: Math.min(600, seconds) });
    points.push(pointOf(state, surroundingsCelsius));
  }
  return points;
}

function pointOf(state: PieceState, surroundingsCelsius: number): HeatPoint {
  const { elapsedSeconds, coreCelsius, meanCelsius, surfaceCelsius } = state;
  return { atSeconds: elapsedSeconds, surroundingsCelsius, coreCelsius, meanCelsius, surfaceCelsius };
}

/** One point of a curve that falls. */
export interface CoolingPoint {
  readonly atSeconds: number;
  readonly celsius: number;
}

/**
 * Time between two temperatures on a falling curve, s: from the last moment at
 * or above the upper one to the first moment at or below the lower one after it.
 *
 * @throws PhysicsError `not-applicable` when the curve does not pass both,
 *   `bad-input` when the lower is not below the upper
 */
export function secondsBetween(curve: readonly CoolingPoint[], upper: number, lower: number): number {
  if (!(lower < upper)) throw new PhysicsError('bad-input', `${lower} °C is not below ${upper} °C`);
  const fall = fallBetween(curve, upper, lower);
  return crossing(fall, fall.length - 1, lower) - crossing(fall, 1, upper);
}

/**
 * t8/5, s: time from 800 to 500 °C (welding convention, from memory: EN 1011-2).
 *
 * @throws PhysicsError `not-applicable` when the curve does not pass both
 */
export function coolingTime85(curve: readonly CoolingPoint[]): number {
  return secondsBetween(curve, 800, 500);
}

/**
 * Time that a curve spends between two temperatures, s. Unlike a difference of
 * crossings it is not shortened by noise, which crosses early and late alike.
 */
export function secondsWithin(curve: readonly CoolingPoint[], upper: number, lower: number): number {
  let seconds = 0;
  for (const [i, b] of curve.entries()) {
    const a = curve[i - 1];
    if (a === undefined) continue;
    const [low, high] = a.celsius < b.celsius ? [a.celsius, b.celsius] : [b.celsius, a.celsius];
    const inside = Math.min(upper, high) - Math.max(lower, low);
    const share = high > low ? Math.max(0, inside) / (high - low) : Number(inside >= 0);
    seconds += share * (b.atSeconds - a.atSeconds);
  }
  return seconds;
}

/** The part of a curve from its last moment at or above `upper` to its first at or below `lower`. */
export function fallBetween(
  curve: readonly CoolingPoint[],
  upper: number,
  lower: number,
): readonly CoolingPoint[] {
  const left = curve.findLastIndex((point) => point.celsius >= upper);
  const arrived = curve.findIndex((point, i) => i > left && point.celsius <= lower);
  if (left >= 0 && arrived >= 0) return curve.slice(left, arrived + 1);
  const message = `the curve does not fall from ${upper} to ${lower} °C`;
  throw new PhysicsError('not-applicable', message, { upper, lower });
}

/** Moment at which the piece of curve that ends at `index` passes a temperature. */
function crossing(curve: readonly CoolingPoint[], index: number, celsius: number): number {
  const b = curve[index];
  const a = curve[index - 1] ?? b;
  if (a === undefined || b === undefined) return Number.NaN;
  const fall = a.celsius - b.celsius;
  return fall > 0 ? a.atSeconds + ((b.atSeconds - a.atSeconds) * (a.celsius - celsius)) / fall : b.atSeconds;
}
