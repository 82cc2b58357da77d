/** Several manners of moving side by side, weighed by how well each foretells (interacting multiple models). */
import { MANNER_SECONDS, MANNERS, motionsOver, PROBE, type ProbeTraits, STATES } from './furnace-model.ts';
import { type Belief, predicted, updated } from './kalman.ts';
import { matrixOf, type Vector } from './matrix.ts';

/** One belief for each manner, and the probability of each manner. */
export interface Bank {
  readonly weights: readonly number[];
  readonly beliefs: readonly Belief[];
}

const SEEN: Vector = Array.from({ length: STATES }, (_, i) => (i === PROBE ? 1 : 0));
/** No manner is ever ruled out for good: it could not come back. */
const LEAST_WEIGHT = 1e-12;

/** Every manner at its usual share, all believing the same. */
export function bankOf(belief: Belief): Bank {
  return { weights: MANNERS.map((manner) => manner.share), beliefs: MANNERS.map(() => belief) };
}

/** The bank some seconds on, with nothing measured. Seconds above 0. */
export function carried(bank: Bank, lagSeconds: number, seconds: number): Bank {
  const mixed = interacted(bank, seconds);
  const motions = motionsOver(lagSeconds, seconds);
  return {
    weights: mixed.weights,
    beliefs: mixed.beliefs.map((belief, j) => {
      const motion = motions[j];
      return motion === undefined ? belief : predicted(belief, motion);
    }),
  };
}

/** The bank after a reading. */
export function weighed(bank: Bank, celsius: number, traits: ProbeTraits): Bank {
  const updates = bank.beliefs.map((belief) => updated(belief, SEEN, celsius, traits.noiseCelsius ** 2));
  const logs = updates.map((update, j) => Math.log(bank.weights[j] ?? 0) + update.logLikelihood);
  const most = Math.max(...logs);
  const weights = logs.map((log) => Math.max(LEAST_WEIGHT, Math.exp(log - most)));
  return { weights: shares(weights), beliefs: updates.map((update) => update.belief) };
}

/**
 * What each manner starts the next step from: itself, and a part of the others in the measure in which one turns
 * into the other. A manner is kept over t with probability exp(-t / MANNER_SECONDS), or drawn anew by its share.
 */
function interacted(bank: Bank, seconds: number): Bank {
  const kept = Math.exp(-seconds / MANNER_SECONDS);
  const parts = MANNERS.map((manner, j) =>
    bank.weights.map((weight, i) => weight * ((i === j ? kept : 0) + (1 - kept) * manner.share)),
  );
  const weights = parts.map((part) => part.reduce((sum, weight) => sum + weight, 0));
  return {
    weights: shares(weights),
    beliefs: parts.map((part, j) => merged(bank.beliefs, part, weights[j] ?? 1)),
  };
}

/** One normal belief with the mean and covariance of a mixture. */
export function merged(beliefs: readonly Belief[], parts: readonly number[], total: number): Belief {
  const mean = new Array<number>(STATES).fill(0);
  for (const [i, belief] of beliefs.entries()) {
    const part = (parts[i] ?? 0) / total;
    for (let k = 0; k < STATES; k++) mean[k] = (mean[k] ?? 0) + part * (belief.mean[k] ?? 0);
  }
  const off = beliefs.map((belief) => mean.map((entry, k) => (belief.mean[k] ?? 0) - entry));
  const covariance = matrixOf(STATES, STATES, (row, column) => {
    let sum = 0;
    for (let i = 0; i < beliefs.length; i++) {
      const spread = beliefs[i]?.covariance[row]?.[column] ?? 0;
      sum += ((parts[i] ?? 0) / total) * (spread + (off[i]?.[row] ?? 0) * (off[i]?.[column] ?? 0));
    }
    return sum;
  });
  return { mean, covariance };
}

function shares(weights: readonly number[]): readonly number[] {
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  return weights.map((weight) => weight / total);
}
