/** The Kalman filter, one step at a time, over plain immutable data. */
import {
  applied,
  dot,
  type Matrix,
  matrixOf,
  plus,
  symmetric,
  times,
  transposed,
  type Vector,
} from './matrix.ts';

/** What is believed of a state: normal, with this mean and covariance. */
export interface Belief {
  readonly mean: Vector;
  readonly covariance: Matrix;
}

/** How a state moves over one step: x becomes F x, plus noise of covariance Q. */
export interface Motion {
  readonly transition: Matrix;
  readonly noise: Matrix;
}

/** A belief after a measurement, and how likely the measurement was. */
export interface Update {
  readonly belief: Belief;
  /** Measured less expected, and the variance that this was expected to have. */
  readonly innovation: number;
  readonly variance: number;
  readonly gain: Vector;
  /** Natural logarithm of the density of the measurement. */
  readonly logLikelihood: number;
}

/** The belief one step on. */
export function predicted(belief: Belief, motion: Motion): Belief {
  const { transition, noise } = motion;
  const spread = times(times(transition, belief.covariance), transposed(transition));
  return { mean: applied(transition, belief.mean), covariance: symmetric(plus(spread, noise)) };
}

/**
 * The belief after one measured number y = h x + noise of the given variance.
 *
 * The covariance is updated in Joseph's form, (I - k h) P (I - k h)' + k r k', which stays positive under rounding
 * where the short form (I - k h) P does not.
 *
 * Source: R. E. Kalman, J. Basic Engineering 82, 1960; P. D. Joseph's form as in Bucy and Joseph, 1968.
 */
export function updated(belief: Belief, h: Vector, measured: number, noiseVariance: number): Update {
  const seen = applied(belief.covariance, h);
  const variance = dot(h, seen) + noiseVariance;
  const innovation = measured - dot(h, belief.mean);
  const gain = seen.map((entry) => entry / variance);
  const keep = matrixOf(h.length, h.length, (i, j) => (i === j ? 1 : 0) - (gain[i] ?? 0) * (h[j] ?? 0));
  const kept = times(times(keep, belief.covariance), transposed(keep));
  const brought = matrixOf(h.length, h.length, (i, j) => (gain[i] ?? 0) * noiseVariance * (gain[j] ?? 0));
  return {
    belief: {
      mean: belief.mean.map((entry, i) => entry + (gain[i] ?? 0) * innovation),
      covariance: symmetric(plus(kept, brought)),
    },
    innovation,
    variance,
    gain,
    logLikelihood: -0.5 * (Math.log(2 * Math.PI * variance) + (innovation * innovation) / variance),
  };
}
