/** From a process in continuous time to a step of any length, exactly. */
import { requireRange } from '../errors.ts';
import type { Motion } from './kalman.ts';
import { identity, type Matrix, matrixOf, plus, scaled, symmetric, times, transposed } from './matrix.ts';

/** dx/dt = drift x + white noise of density diffusion. Time in seconds. */
export interface Process {
  readonly drift: Matrix;
  readonly diffusion: Matrix;
}

/** A part of the step in which no rate turns by more than this is short enough for Taylor rows of so many terms. */
const SHORT = 0.25;
const TERMS = 13;
const LONGEST_SECONDS = 86_400;

/**
 * The step of a process over some seconds.
 *
 * A short part by Taylor rows of dF/dt = A F and of Lyapunov's equation dQ/dt = A Q + Q A' + D, then doubled:
 * F(2t) = F F and Q(2t) = F Q F' + Q. The usual one exponential of a block matrix (C. F. Van Loan, IEEE Trans. Automatic
 * Control 23(3), 1978) holds growing exponentials of the fastest rate (a quick probe, a long step) and loses every
 * digit of Q there; doubling only ever adds what is positive.
 *
 * @param seconds 0 to a day
 * @throws PhysicsError `out-of-range`
 */
export function motionOver(process: Process, seconds: number): Motion {
  requireRange('A step', seconds, 0, LONGEST_SECONDS, 's');
  const n = process.drift.length;
  if (seconds === 0) return { transition: identity(n), noise: matrixOf(n, n, () => 0) };
  const fastest = Math.max(...process.drift.map((row) => row.reduce((sum, rate) => sum + Math.abs(rate), 0)));
  const doublings = Math.max(0, Math.ceil(Math.log2((fastest * seconds) / SHORT)));
  let { transition, noise } = shortMotion(process, seconds * 0.5 ** doublings);
  for (let k = 0; k < doublings; k++) {
    noise = symmetric(plus(times(times(transition, noise), transposed(transition)), noise));
    transition = times(transition, transition);
  }
  return { transition, noise };
}

function shortMotion({ drift, diffusion }: Process, seconds: number): Motion {
  const step = scaled(drift, seconds);
  let transition = identity(drift.length);
  let noise = scaled(diffusion, seconds);
  let [power, part] = [transition, noise];
  for (let k = 1; k <= TERMS; k++) {
    power = scaled(times(step, power), 1 / k);
    transition = plus(transition, power);
    // The part is symmetric, so that part A' is the mirror of A part.
    const half = times(step, part);
    part = scaled(plus(half, transposed(half)), 1 / (k + 1));
    noise = plus(noise, part);
  }
  return { transition, noise };
}
