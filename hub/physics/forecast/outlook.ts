/** Where the temperature will be: mean and band at any instant up to 15 minutes after the newest reading. */
import { requireRange } from '../errors.ts';
import { normalQuantile, normalShareBelow } from '../statistics/distributions.ts';
import type { Forecaster } from './forecaster.ts';
import { BODY, PROBE } from './furnace-model.ts';
import { type Bank, carried } from './manners.ts';

/** What is foretold: the temperature around the probe, or what the lagging probe will show of it. */
export type Quantity = 'body' | 'probe';

/** A mixture of normal distributions, °C. */
export interface Mixture {
  readonly weights: readonly number[];
  readonly means: readonly number[];
  readonly deviations: readonly number[];
}

/** What is foretold for one instant. */
export interface OutlookPoint {
  /** Epoch ms. */
  readonly atMs: number;
  /** Mean, °C. */
  readonly celsius: number;
  /** The band that holds the truth with the probability asked for, °C. */
  readonly low: number;
  readonly high: number;
  readonly mixture: Mixture;
}

export interface OutlookQuestion {
  /** Default: the temperature around the probe. */
  readonly quantity?: Quantity;
  /** Probability that the band holds the truth. Default 0.8. */
  readonly share?: number;
}

/** Farthest that anything is foretold, s after the newest reading. */
export const FARTHEST_SECONDS = 900;

/** Fine where it matters now, coarse far away: 5 s to a minute, 10 s to five, 30 s to fifteen. */
const GRID: readonly { readonly until: number; readonly step: number }[] = [
  { until: 60, step: 5 },
  { until: 300, step: 10 },
  { until: FARTHEST_SECONDS, step: 30 },
];

/**
 * The outlook at one instant.
 *
 * @param atMs from the newest reading to 15 minutes after it, epoch ms
 * @throws PhysicsError `out-of-range`
 */
export function outlookAt(
  forecaster: Forecaster,
  atMs: number,
  question: OutlookQuestion = {},
): OutlookPoint {
  const wanted = (atMs - forecaster.atMs) / 1000;
  requireRange('An outlook', wanted, 0, FARTHEST_SECONDS, 's after the newest reading');
  let bank = forecaster.bank;
  let seconds = 0;
  while (seconds < wanted) {
    const step = Math.min(stepAt(seconds), wanted - seconds);
    bank = carried(bank, forecaster.traits.lagSeconds, step);
    seconds += step;
  }
  return pointOf(forecaster, bank, atMs, question);
}

/**
 * The outlook from the newest reading on, on a grid that grows coarser.
 *
 * @param seconds how far, 5 to 900
 * @throws PhysicsError `out-of-range`
 */
export function outlook(
  forecaster: Forecaster,
  seconds: number,
  question: OutlookQuestion = {},
): readonly OutlookPoint[] {
  requireRange('An outlook', seconds, 5, FARTHEST_SECONDS, 's');
  let bank = forecaster.bank;
  const points = [pointOf(forecaster, bank, forecaster.atMs, question)];
  for (let t = stepAt(0); t <= seconds; t += stepAt(t)) {
    const step = t - ((points.at(-1)?.atMs ?? 0) - forecaster.atMs) / 1000;
    bank = carried(bank, forecaster.traits.lagSeconds, step);
    points.push(pointOf(forecaster, bank, forecaster.atMs + t * 1000, question));
  }
  return points;
}

/** Probability that the temperature lies below a limit, °C. */
export function shareBelow({ weights, means, deviations }: Mixture, celsius: number): number {
  let share = 0;
  for (const [j, weight] of weights.entries()) {
    share += weight * normalShareBelow((celsius - (means[j] ?? 0)) / (deviations[j] ?? 1));
  }
  return share;
}

function stepAt(seconds: number): number {
  return GRID.find((part) => seconds < part.until)?.step ?? 30;
}

function pointOf(
  forecaster: Forecaster,
  bank: Bank,
  atMs: number,
  { quantity = 'body', share = 0.8 }: OutlookQuestion,
): OutlookPoint {
  const place = quantity === 'body' ? BODY : PROBE;
  const flicker = quantity === 'body' ? forecaster.traits.flickerCelsius : 0;
  const mixture: Mixture = {
    weights: bank.weights,
    means: bank.beliefs.map((belief) => belief.mean[place] ?? 0),
    deviations: bank.beliefs.map(({ covariance }) =>
      Math.sqrt((covariance[place]?.[place] ?? 0) + flicker ** 2),
    ),
  };
  const celsius = mixture.weights.reduce((sum, weight, j) => sum + weight * (mixture.means[j] ?? 0), 0);
  const [low, high] = [(1 - share) / 2, (1 + share) / 2].map((part) => quantileOf(mixture, part));
  return { atMs, celsius, low: low ?? celsius, high: high ?? celsius, mixture };
}

const MOST_HALVINGS = 60;
const FINE_CELSIUS = 1e-3;

/** The temperature that lies above a share of a mixture: between the quantiles of its parts, by halving. */
function quantileOf(mixture: Mixture, share: number): number {
  const z = normalQuantile(share);
  const ends = mixture.means.map((mean, j) => mean + z * (mixture.deviations[j] ?? 0));
  let low = Math.min(...ends);
  let high = Math.max(...ends);
  for (let k = 0; k < MOST_HALVINGS && high - low > FINE_CELSIUS; k++) {
    const middle = (low + high) / 2;
    if (shareBelow(mixture, middle) < share) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
