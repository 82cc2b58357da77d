/** From a process in continuous time to a step of any length, exactly. */
import { requireRange } from '../errors.ts';
import type { Motion } from './kalman.ts';
import { identity, type Matrix, matrixOf, plus, scaled, symmetric, times, transposed } from './matrix.ts';

/** dx/dt = drift x + white noise of density diffusion. Time in seconds. */
export interface Process {
  readonly drift: Matrix;
  readonly diffusion: Matrix;
}

/** A part of the step in which no rate turns by more than this is short enough for a Taylor row. */
const SHORT = 0.5;
const TERMS = 14;
const LONGEST_SECONDS = 86_400;

/**
 * The step of a process over some seconds.
 *
 * A short part by the exponential of one block matrix, then doubled: F(2t) = F F and Q(2t) = F Q F' + Q. The block
 * over the whole step would hold growing exponentials of the fastest rate (a quick probe, a long step) and lose every
 * digit of Q; doubling only ever adds what is positive.
 *
 * Source: C. F. Van Loan, IEEE Transactions on Automatic Control 23(3), 1978.
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

/** exp([[-A, Q], [0, A']] t) = [[.., F^-1 Q(t)], [0, F']]. */
function shortMotion({ drift, diffusion }: Process, seconds: number): Motion {
  const n = drift.length;
  const block = matrixOf(2 * n, 2 * n, (i, j) => {
    if (i < n && j < n) return -(drift[i]?.[j] ?? 0) * seconds;
    if (i < n) return (diffusion[i]?.[j - n] ?? 0) * seconds;
    return j < n ? 0 : (drift[j - n]?.[i - n] ?? 0) * seconds;
  });
  const power = shortExponential(block);
  const transition = transposed(power.slice(n).map((row) => row.slice(n)));
  const upper = power.slice(0, n).map((row) => row.slice(n));
  return { transition, noise: symmetric(times(transition, upper)) };
}

/** e to the power of a matrix of small entries, by its Taylor row. */
function shortExponential(a: Matrix): Matrix {
  let result = identity(a.length);
  let term = result;
  for (let k = 1; k <= TERMS; k++) {
    term = scaled(times(term, a), 1 / k);
    result = plus(result, term);
  }
  return result;
}
