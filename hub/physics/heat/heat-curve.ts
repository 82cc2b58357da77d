/** Core, surface and mean of a piece over time, in surroundings that may change. */
import { PhysicsError, requireRange } from '../errors.ts';
import type { Body } from './body.ts';
import type { Film } from './exposure.ts';
import { type PieceState, startPiece, stepPiece } from './piece.ts';

/** Chamber, air or bath temperature, °C: fixed, or a function of seconds since the start. */
export type Surroundings = number | ((seconds: number) => number);

export interface HeatCurvePlan {
  readonly body: Body;
  readonly startCelsius: number;
  readonly surroundings: Surroundings;
  /** Effective emissivity, 0 to 1. */
  readonly emissivity: number;
  readonly film: Film;
  /** Length of the curve, s. */
  readonly seconds: number;
  /** Distance of its points, s. At most 20 000 points. */
  readonly everySeconds: number;
}

export interface HeatPoint {
  readonly atSeconds: number;
  readonly surroundingsCelsius: number;
  readonly coreCelsius: number;
  readonly meanCelsius: number;
  readonly surfaceCelsius: number;
}

const MOST_POINTS = 20_000;

/**
 * Computes the curve, first point at 0 s, last at `seconds`.
 *
 * @throws PhysicsError `out-of-range` for a length or distance that is not
 *   positive or asks for more than 20 000 points, and what `stepPiece` throws
 */
export function heatCurve(plan: HeatCurvePlan): HeatPoint[] {
  const everySeconds = requireRange('distance of points', plan.everySeconds, 1e-3, plan.seconds, 's');
  const count = Math.ceil(plan.seconds / everySeconds - 1e-9);
  requireRange('number of points', count, 1, MOST_POINTS, '');
  let state = startPiece(plan.body, plan.startCelsius);
  let surroundingsCelsius = surroundingsAt(plan.surroundings, 0);
  const points = [pointOf(state, 0, surroundingsCelsius)];
  for (let i = 1; i <= count; i++) {
    const atSeconds = Math.min(plan.seconds, i * everySeconds);
    const surroundingsWereCelsius = surroundingsCelsius;
    surroundingsCelsius = surroundingsAt(plan.surroundings, atSeconds);
    const seconds = atSeconds - (i - 1) * everySeconds;
    const { emissivity, film } = plan;
    state = stepPiece(state, { seconds, surroundingsCelsius, surroundingsWereCelsius, emissivity, film });
    points.push(pointOf(state, atSeconds, surroundingsCelsius));
  }
  return points;
}

/** Temperature of the surroundings at a moment, °C. */
export function surroundingsAt(surroundings: Surroundings, seconds: number): number {
  return typeof surroundings === 'number' ? surroundings : surroundings(seconds);
}

/**
 * Chamber temperature from a plan or record in straight pieces; its ends are held.
 *
 * @throws PhysicsError `bad-input` when there are no points or time does not rise
 */
export function alongPoints(points: readonly { readonly atSeconds: number; readonly celsius: number }[]) {
  const first = points[0];
  if (first === undefined) throw new PhysicsError('bad-input', 'no points to go along');
  const fault = points.findIndex((p, i) => i > 0 && !(p.atSeconds > (points[i - 1]?.atSeconds ?? 0)));
  if (fault > 0)
    throw new PhysicsError('bad-input', `time does not rise at point ${fault}`, { index: fault });
  return (seconds: number): number => {
    const next = points.findIndex((p) => p.atSeconds >= seconds);
    if (next === 0) return first.celsius;
    const b = points[next] ?? points.at(-1) ?? first;
    const a = points[next - 1] ?? b;
    const share = b.atSeconds > a.atSeconds ? (seconds - a.atSeconds) / (b.atSeconds - a.atSeconds) : 1;
    return a.celsius + (b.celsius - a.celsius) * Math.min(1, Math.max(0, share));
  };
}

function pointOf(state: PieceState, atSeconds: number, surroundingsCelsius: number): HeatPoint {
  const { coreCelsius, meanCelsius, surfaceCelsius } = state;
  return { atSeconds, surroundingsCelsius, coreCelsius, meanCelsius, surfaceCelsius };
}
