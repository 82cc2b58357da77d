/** The state estimator of one probe: stepped by readings, small and immutable. */
import { PhysicsError, requireRange } from '../errors.ts';
import { BODY, type ProbeTraits, requireTraits, SLOPE } from './furnace-model.ts';
import { type Bank, bankOf, carried, merged, weighed } from './manners.ts';

/** One reading of the probe. */
export interface ProbeReading {
  /** Epoch ms. */
  readonly atMs: number;
  readonly celsius: number;
}

/** What is believed after the newest reading. Plain data: may be kept, sent and stepped again from. */
export interface Forecaster {
  readonly traits: ProbeTraits;
  /** Instant of the newest reading, epoch ms, and of the first since the last start. */
  readonly atMs: number;
  readonly sinceMs: number;
  readonly bank: Bank;
}

/** Where the temperature stands now, and how fast it moves. */
export interface Standing {
  readonly celsius: number;
  readonly deviationCelsius: number;
  readonly perSecond: number;
  readonly perSecondDeviation: number;
}

/** Longest step without a look at whether the manner has changed, and the gap after which the past says nothing. */
const LONGEST_STEP_SECONDS = 30;
const LONGEST_GAP_SECONDS = 900;

/** At the first reading: the probe may lag far behind, and may be in any heat-up or cooling. Invented, wide. */
const FIRST = { bodyDeviation: 15, slopeDeviation: 0.3, bendDeviation: 1e-3 };

/**
 * Starts from the first reading of a probe.
 *
 * @throws PhysicsError `out-of-range` for the traits or a temperature outside -273.15 to 2500 °C; `bad-input` for an
 *   instant that is no number
 */
export function startForecaster(traits: ProbeTraits, first: ProbeReading): Forecaster {
  requireTraits(traits);
  requireReading(first);
  const variances = [
    traits.noiseCelsius ** 2,
    FIRST.bodyDeviation ** 2,
    FIRST.slopeDeviation ** 2,
    FIRST.bendDeviation ** 2,
  ];
  const bank = bankOf({
    mean: [first.celsius, first.celsius, 0, 0],
    covariance: variances.map((variance, i) => variances.map((_, j) => (i === j ? variance : 0))),
  });
  return { traits, atMs: first.atMs, sinceMs: first.atMs, bank };
}

/**
 * Takes a reading in. Intervals may be uneven. A reading that is not newer than the last changes nothing: late ones
 * are for a replay. After more than 15 minutes without any it starts anew.
 *
 * @throws PhysicsError as `startForecaster`
 */
export function observe(forecaster: Forecaster, reading: ProbeReading): Forecaster {
  requireReading(reading);
  const seconds = (reading.atMs - forecaster.atMs) / 1000;
  if (seconds <= 0) return forecaster;
  if (seconds > LONGEST_GAP_SECONDS) return startForecaster(forecaster.traits, reading);
  const { traits, sinceMs } = forecaster;
  const bank = weighed(carriedFar(forecaster.bank, traits.lagSeconds, seconds), reading.celsius, traits);
  return { traits, atMs: reading.atMs, sinceMs, bank };
}

/** Where the temperature around the probe stands at the newest reading: ahead of what a lagging probe shows. */
export function standing(forecaster: Forecaster): Standing {
  const { mean, covariance } = merged(forecaster.bank.beliefs, forecaster.bank.weights, 1);
  const deviation = (place: number) => Math.sqrt(covariance[place]?.[place] ?? 0);
  return {
    celsius: mean[BODY] ?? Number.NaN,
    deviationCelsius: deviation(BODY),
    perSecond: mean[SLOPE] ?? Number.NaN,
    perSecondDeviation: deviation(SLOPE),
  };
}

/** How fast it moves, °C per second: the mean of `standing` alone, for those who ask at every reading. */
export function meanPerSecond({ bank }: Forecaster): number {
  let mean = 0;
  for (const [i, belief] of bank.beliefs.entries())
    mean += (bank.weights[i] ?? 0) * (belief.mean[SLOPE] ?? 0);
  return mean;
}

function carriedFar(bank: Bank, lagSeconds: number, seconds: number): Bank {
  const parts = Math.ceil(seconds / LONGEST_STEP_SECONDS);
  let next = bank;
  for (let part = 0; part < parts; part++) next = carried(next, lagSeconds, seconds / parts);
  return next;
}

function requireReading({ atMs, celsius }: ProbeReading): void {
  if (!Number.isFinite(atMs)) throw new PhysicsError('bad-input', `The instant of a reading is ${atMs}`);
  requireRange('A temperature', celsius, -273.15, 2500, '°C');
}
