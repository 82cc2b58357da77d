/**
 * How long a piece takes to arrive, and how long it must stay: the answers a
 * furnace thermometer alone cannot give.
 */
import { PhysicsError, requireRange } from '../errors.ts';
import type { Film } from './exposure.ts';
import { type Surroundings, surroundingsAt } from './heat-curve.ts';
import { accurateSeconds, type PieceState, stepPiece } from './piece.ts';

export interface ArrivalQuestion {
  /** The piece as it is now. */
  readonly from: PieceState;
  /** Chamber from now on, °C, fixed or a function of seconds from now. */
  readonly surroundings: Surroundings;
  readonly emissivity: number;
  readonly film: Film;
  /** What the piece shall reach, °C. */
  readonly targetCelsius: number;
  /** The core has arrived when it is within this of the target, K. More than 0. */
  readonly toleranceCelsius: number;
  /** Give up after this, s. Default 48 h. */
  readonly limitSeconds?: number;
}

export interface Arrival {
  /** From now until the core is within tolerance, s. */
  readonly seconds: number;
  /** The piece at the end of the last computed step, just after arrival. */
  readonly state: PieceState;
  /** The skin is hotter than target + tolerance when the core arrives (a heating piece). */
  readonly surfaceBeyondBand: boolean;
}

const FORTY_EIGHT_HOURS = 48 * 3600;

/**
 * Time until the core comes within tolerance of the target, from below or from above.
 *
 * @throws PhysicsError `no-solution` when it does not within `limitSeconds`,
 *   `out-of-range` when the tolerance is not 0.1 to 200 K or the limit not 1 s to 30 days
 */
export function timeToTolerance(question: ArrivalQuestion): Arrival {
  const { targetCelsius } = question;
  const tolerance = requireRange('tolerance', question.toleranceCelsius, 0.1, 200, 'K');
  const limit = requireRange('limit', question.limitSeconds ?? FORTY_EIGHT_HOURS, 1, 30 * 86_400, 's');
  let state = question.from;
  // Distance to the near edge of the band, so that a long step cannot leap over a narrow one.
  const side = Math.sign(targetCelsius - state.coreCelsius);
  const missing = (s: PieceState): number => side * (targetCelsius - s.coreCelsius) - tolerance;
  let seconds = 0;
  while (missing(state) > 0) {
    if (seconds >= limit) throw neverArrives(question, limit, state);
    const before = state;
    const step = nextStep(question, state, seconds, limit);
    state = stepPiece(state, step);
    const left = missing(state);
    if (left <= 0) {
      const share = missing(before) / (missing(before) - left);
      return arrived(question, seconds + share * step.seconds, state);
    }
    seconds += step.seconds;
  }
  return arrived(question, seconds, state);
}

function nextStep(question: ArrivalQuestion, state: PieceState, seconds: number, limit: number) {
  const { surroundings, emissivity, film } = question;
  const surroundingsWereCelsius = surroundingsAt(surroundings, seconds);
  const exposure = { surroundingsCelsius: surroundingsWereCelsius, emissivity, film };
  // A ramping chamber must be looked at often enough to be followed: once a minute.
  const most = typeof surroundings === 'number' ? 600 : 60;
  const pace = accurateSeconds(state, exposure, surroundingsWereCelsius);
  const step = Math.min(most, Math.max(0.05, pace), Math.max(1e-3, limit - seconds));
  const surroundingsCelsius = surroundingsAt(surroundings, seconds + step);
  return { seconds: step, surroundingsCelsius, surroundingsWereCelsius, emissivity, film };
}

function arrived(question: ArrivalQuestion, seconds: number, state: PieceState): Arrival {
  const top = question.targetCelsius + question.toleranceCelsius;
  return { seconds, state, surfaceBeyondBand: state.surfaceCelsius > top };
}

function neverArrives(question: ArrivalQuestion, limit: number, state: PieceState): PhysicsError {
  const { targetCelsius, toleranceCelsius } = question;
  const core = Math.round(state.coreCelsius);
  const message = `the core does not come within ${toleranceCelsius} K of ${targetCelsius} °C in ${limit} s; it stands at ${core} °C`;
  return new PhysicsError('no-solution', message, { targetCelsius, toleranceCelsius, limit, core });
}

export interface Soak {
  /** From now until the core is within tolerance, s. */
  readonly arrivalSeconds: number;
  /** Required time at heat, s, as asked. */
  readonly holdSeconds: number;
  /** From now until the piece may come out, s. */
  readonly totalSeconds: number;
  /** Surface minus core at the moment of arrival, K: what the furnace thermometer hides. */
  readonly lagCelsius: number;
  readonly surfaceBeyondBand: boolean;
}

/**
 * Soak needed in a furnace at this temperature: the time the core takes to
 * arrive, plus the time it must then stay. The hold itself is a rule of the
 * trade and comes from the caller, e.g. 20 to 30 min an inch for tool steel.
 *
 * @param holdSeconds required time at heat, 0 to 7 days
 * @throws PhysicsError as {@link timeToTolerance}
 */
export function soakNeeded(question: ArrivalQuestion, holdSeconds: number): Soak {
  requireRange('hold', holdSeconds, 0, 7 * 86_400, 's');
  const { seconds, state, surfaceBeyondBand } = timeToTolerance(question);
  return {
    arrivalSeconds: seconds,
    holdSeconds,
    totalSeconds: seconds + holdSeconds,
    lagCelsius: state.surfaceCelsius - state.coreCelsius,
    surfaceBeyondBand,
  };
}
