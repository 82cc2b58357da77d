/**
 * The stepper: a piece of steel carried from one reading to the next.
 *
 * Pure: the same state and step give the same state. Stable at any interval;
 * long intervals are cut into at most 200 sub-steps, so a call is bounded, and
 * beyond that accuracy is lost but never stability or energy.
 */
import { requireRange } from '../errors.ts';
import type { Body } from './body.ts';
import { type ChainState, type ChainStep, implicitStep } from './chain.ts';
import { checkExposure, type Exposure, fluxInto, requireTemperature } from './exposure.ts';
import { requireShare } from './material.ts';

export interface PieceState extends ChainState {
  readonly body: Body;
  readonly elapsedSeconds: number;
  /** Heat taken in through the surface since the start, J a kg of piece. Negative when it cooled. */
  readonly heatInJKg: number;
  readonly coreCelsius: number;
  readonly surfaceCelsius: number;
  /** Mean over the mass. */
  readonly meanCelsius: number;
}

export interface PieceStep extends Exposure {
  /** Length of the step, 0 to 7 days. 0 changes nothing. */
  readonly seconds: number;
}

/** The mean may move this much in one sub-step, K … */
const FINEST_MOVE_K = 4;
/** … and no more than this share of what still separates it from its surroundings. */
const MOVE_SHARE = 0.03;
const SMALLEST_MOVE_K = 0.05;
const MOST_SUBSTEPS = 200;
const MOST_HALVINGS = 6;
const SEVEN_DAYS = 7 * 86_400;

/**
 * A piece that is equally hot throughout.
 *
 * @param austenite share already turned, 0 to 1. Default: what rest at this
 *   temperature after heating gives
 * @throws PhysicsError `out-of-range` outside -40 to 1350 °C, `bad-input` for a share outside 0 to 1
 */
export function startPiece(body: Body, celsius: number, austenite?: number): PieceState {
  requireTemperature('start', celsius);
  const share = requireShare('austenite', austenite ?? body.piece.material.austeniteAtRest(celsius));
  const everywhere = (value: number): number[] => body.chain.massKg.map(() => value);
  const chain = {
    celsius: everywhere(celsius),
    enthalpyJKg: everywhere(body.piece.material.enthalpy(celsius, share)),
    austenite: everywhere(share),
  };
  return describe(body, chain, 0, 0);
}

/**
 * Carries the piece through `seconds` in these surroundings.
 *
 * @throws PhysicsError `out-of-range` or `bad-input` when the step makes no sense
 */
export function stepPiece(state: PieceState, step: PieceStep): PieceState {
  checkExposure(step);
  const seconds = requireRange('step', step.seconds, 0, SEVEN_DAYS, 's');
  if (seconds === 0) return state;
  const count = substeps(state, step);
  const were = step.surroundingsWereCelsius ?? step.surroundingsCelsius;
  let chain: ChainState = state;
  let heat = 0;
  for (let i = 1; i <= count; i++) {
    const surroundings = were + ((step.surroundingsCelsius - were) * i) / count;
    const done = settledStep(state.body, chain, seconds / count, step, surroundings);
    chain = done.state;
    heat += done.heatInJoules;
  }
  const heatInJKg = state.heatInJKg + heat / state.body.massKg;
  return describe(state.body, chain, state.elapsedSeconds + seconds, heatInJKg);
}

/**
 * How long a step may be, s, so that the piece changes by a small part of its
 * way in it. Never 0; Infinity when the piece is where its surroundings are.
 */
export function accurateSeconds(state: PieceState, exposure: Exposure, surroundingsCelsius: number): number {
  const flux = Math.abs(fluxInto(exposure, surroundingsCelsius, state.surfaceCelsius));
  const apart = Math.abs(surroundingsCelsius - state.meanCelsius);
  const move = Math.max(SMALLEST_MOVE_K, Math.min(FINEST_MOVE_K, MOVE_SHARE * apart));
  const capacity = 600;
  return (move * capacity) / (flux * state.body.surfacePerMassM2Kg);
}

function substeps(state: PieceState, step: PieceStep): number {
  const were = step.surroundingsWereCelsius ?? step.surroundingsCelsius;
  const atStart = accurateSeconds(state, step, were);
  const atEnd = accurateSeconds(state, step, step.surroundingsCelsius);
  return Math.max(1, Math.min(MOST_SUBSTEPS, Math.ceil(step.seconds / Math.min(atStart, atEnd))));
}

/** A step whose iteration does not settle is cut in two, a bounded number of times. */
function settledStep(
  body: Body,
  from: ChainState,
  seconds: number,
  exposure: Exposure,
  surroundingsCelsius: number,
  halvings = MOST_HALVINGS,
): ChainStep {
  const whole = implicitStep(body.chain, from, seconds, exposure, surroundingsCelsius);
  if (whole.converged || halvings === 0) return whole;
  const half = (start: ChainState): ChainStep =>
    settledStep(body, start, seconds / 2, exposure, surroundingsCelsius, halvings - 1);
  const first = half(from);
  const second = half(first.state);
  return { ...second, heatInJoules: first.heatInJoules + second.heatInJoules };
}

/** Heat held by the piece, J/kg above 20 °C, mean over its mass. */
export function heatContentJKg(state: PieceState): number {
  return overMass(state.body, state.enthalpyJKg);
}

/** Share of the piece that is austenite, 0 to 1. */
export function austeniteShare(state: PieceState): number {
  return overMass(state.body, state.austenite);
}

function describe(body: Body, chain: ChainState, elapsedSeconds: number, heatInJKg: number): PieceState {
  return {
    ...chain,
    body,
    elapsedSeconds,
    heatInJKg,
    coreCelsius: chain.celsius[0] ?? Number.NaN,
    surfaceCelsius: chain.celsius.at(-1) ?? Number.NaN,
    meanCelsius: overMass(body, chain.celsius),
  };
}

function overMass(body: Body, values: readonly number[]): number {
  let sum = 0;
  for (const [i, mass] of body.chain.massKg.entries()) sum += mass * (values[i] ?? 0);
  return sum / body.massKg;
}
