/**
 * A furnace's own emissivity and film coefficient, fitted from a recorded run
 * with a thermocouple in the chamber and one in the load.
 *
 * Least squares by the Levenberg-Marquardt package; the model is the stepper.
 */
import { levenbergMarquardt } from 'ml-levenberg-marquardt';
import { PhysicsError, requireRange } from '../errors.ts';
import type { Body } from './body.ts';
import { type PieceState, startPiece, stepPiece } from './piece.ts';

export interface RunPoint {
  readonly atMs: number;
  readonly chamberCelsius: number;
  readonly loadCelsius: number;
}

export interface FitQuestion {
  readonly body: Body;
  readonly run: readonly RunPoint[];
  /** Where the load thermocouple sits. Default `core`. */
  readonly loadAt?: 'core' | 'surface';
}

export interface FurnaceFit {
  /** Effective emissivity, chamber to load. */
  readonly emissivity: number;
  /** Film coefficient, W/(m² K). */
  readonly filmWM2K: number;
  /** What the fit leaves: root mean square and worst difference of the load, K. */
  readonly rmsCelsius: number;
  readonly worstCelsius: number;
  readonly pointsUsed: number;
  /** Standard errors from the residual and the sensitivities, neighbouring points taken as independent. */
  readonly emissivityStandardError: number;
  readonly filmStandardError: number;
  /** Correlation of the two, -1 to 1. */
  readonly correlation: number;
  /**
   * False when the run cannot tell radiation from convection (their effects
   * look alike over a small range): use the pair together, only near the
   * temperatures of this run.
   */
  readonly separated: boolean;
}

const MOST_POINTS_USED = 200;
/** Five settle every run tried, from corner to corner of the bounds; the package has no stop of its own. */
const MOST_ITERATIONS = 10;
const START = [0.7, 15] as const;
const LEAST = [0.02, 0] as const;
const MOST = [1, 200] as const;
/** Beyond this correlation the two parameters stand in for each other. */
const INSEPARABLE = 0.995;

/**
 * Fits emissivity and film coefficient to a run.
 *
 * @throws PhysicsError `bad-input` for fewer than 12 points or time that does
 *   not rise; `not-applicable` when the load moves less than 100 K or is never
 *   15 K or more from the chamber, for then the run says nothing about the furnace
 */
export function fitFurnace(question: FitQuestion): FurnaceFit {
  const run = thinned(checkedRun(question.run));
  const simulate = (parameters: readonly number[]): number[] => simulateLoad(question, run, parameters);
  const x = run.map((_, i) => i);
  const measured = run.map((point) => point.loadCelsius);
  const result = levenbergMarquardt(
    { x, y: measured },
    (parameters) => {
      const load = simulate(parameters);
      return (index) => load[index] ?? Number.NaN;
    },
    {
      initialValues: [...START],
      minValues: [...LEAST],
      maxValues: [...MOST],
      gradientDifference: [0.005, 0.25],
      damping: 0.01,
      maxIterations: MOST_ITERATIONS,
      errorTolerance: 1e-9,
      improvementThreshold: 1e-6,
    },
  );
  return describeFit(result.parameterValues, simulate, measured);
}

function simulateLoad(
  question: FitQuestion,
  run: readonly RunPoint[],
  parameters: readonly number[],
): number[] {
  const [emissivity = START[0], film = START[1]] = parameters;
  const read = (state: PieceState): number =>
    question.loadAt === 'surface' ? state.surfaceCelsius : state.coreCelsius;
  let state = startPiece(question.body, run[0]?.loadCelsius ?? 20);
  return run.map((point, i) => {
    const before = run[i - 1] ?? point;
    state = stepPiece(state, {
      seconds: (point.atMs - before.atMs) / 1000,
      surroundingsCelsius: point.chamberCelsius,
      surroundingsWereCelsius: before.chamberCelsius,
      emissivity: Math.min(1, Math.max(0, emissivity)),
      film: Math.max(0, film),
    });
    return read(state);
  });
}

function describeFit(
  values: readonly number[],
  simulate: (parameters: readonly number[]) => number[],
  measured: readonly number[],
): FurnaceFit {
  const [emissivity = Number.NaN, filmWM2K = Number.NaN] = values;
  const load = simulate(values);
  const residual = load.map((celsius, i) => celsius - (measured[i] ?? celsius));
  const squares = residual.reduce((sum, r) => sum + r * r, 0);
  const byEmissivity = sensitivity(load, simulate([emissivity - 0.005, filmWM2K]), 0.005);
  const byFilm = sensitivity(load, simulate([emissivity, filmWM2K + 0.25]), -0.25);
  const ee = dot(byEmissivity, byEmissivity);
  const ff = dot(byFilm, byFilm);
  const ef = dot(byEmissivity, byFilm);
  const determinant = ee * ff - ef * ef;
  const variance = squares / Math.max(1, measured.length - 2);
  // Covariance is the variance times the inverse of [[ee, ef], [ef, ff]].
  const correlation = -ef / Math.sqrt(ee * ff);
  return {
    emissivity,
    filmWM2K,
    rmsCelsius: Math.sqrt(squares / measured.length),
    worstCelsius: residual.reduce((worst, r) => Math.max(worst, Math.abs(r)), 0),
    pointsUsed: measured.length,
    emissivityStandardError: Math.sqrt((variance * ff) / determinant),
    filmStandardError: Math.sqrt((variance * ee) / determinant),
    correlation,
    separated: Math.abs(correlation) < INSEPARABLE,
  };
}

function sensitivity(here: readonly number[], there: readonly number[], distance: number): number[] {
  return here.map((value, i) => (value - (there[i] ?? value)) / distance);
}

function dot(a: readonly number[], b: readonly number[]): number {
  return a.reduce((sum, value, i) => sum + value * (b[i] ?? 0), 0);
}

function checkedRun(run: readonly RunPoint[]): readonly RunPoint[] {
  if (run.length < 12)
    throw new PhysicsError('bad-input', `a fit wants 12 points or more, got ${run.length}`);
  for (const [i, point] of run.entries()) {
    requireRange('chamber', point.chamberCelsius, -40, 1350, '°C');
    requireRange('load', point.loadCelsius, -40, 1350, '°C');
    if (i === 0 || point.atMs > (run[i - 1]?.atMs ?? 0)) continue;
    throw new PhysicsError('bad-input', `time does not rise at point ${i}`, { index: i });
  }
  const loads = run.map((point) => point.loadCelsius);
  const moved = Math.max(...loads) - Math.min(...loads);
  const apart = Math.max(...run.map((point) => Math.abs(point.chamberCelsius - point.loadCelsius)));
  if (moved >= 100 && apart >= 15) return run;
  throw new PhysicsError('not-applicable', 'the load hardly moves against the chamber', { moved, apart });
}

function thinned(run: readonly RunPoint[]): readonly RunPoint[] {
  const stride = Math.ceil(run.length / MOST_POINTS_USED);
  return run.filter((_, i) => i % stride === 0);
}
