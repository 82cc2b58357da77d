/**
 * The figures by which a probe's readings are called faulty.
 *
 * Standing of every default: common practice, our choice; none is from a
 * standard. They lean towards silence where an ordinary firing could look the same.
 */

import { functionRange } from './thermocouple.ts';
import type { ThermocoupleType } from './thermocouple-direct-table.ts';

export interface ProbeFaultRules {
  /** A reading at or beyond a rail is where a burn-out current drives an open input. */
  readonly rails: { readonly lowCelsius: number; readonly highCelsius: number };
  /** Readings further apart than this are not compared with each other, ms. */
  readonly maximumGapMs: number;
  /** Shop temperatures, for channels that do not know their cold junction, °C. */
  readonly shop: { readonly lowCelsius: number; readonly highCelsius: number };
  readonly shorted: {
    /** How near the cold junction counts as "at ambient", ± °C. */
    readonly bandCelsius: number;
    /** How little the reading may wander against the cold junction, °C. */
    readonly flatCelsius: number;
    /** How far another probe must have risen meanwhile, °C. */
    readonly riseCelsius: number;
    /**
     * Time constant beyond which no piece is believed to lag, seconds. A piece with
     * this one would warm by `flatCelsius` under an exposure (difference of
     * temperature times time) of their product; a short is said only after more.
     */
    readonly slowestSeconds: number;
  };
  readonly reversed: {
    /** Rise of another probe that closes one comparison, °C. */
    readonly riseCelsius: number;
    /** The reading must fall by this share of the other's rise, and by `fallCelsius` at least. */
    readonly fallShare: number;
    readonly fallCelsius: number;
    /** Length of one comparison when only "the furnace is heating" is known, ms. */
    readonly heatingWindowMs: number;
    /** A comparison older than this is begun anew, ms. */
    readonly windowMaximumMs: number;
    /** Opposed comparisons in a row before it is called reversed. */
    readonly comparisons: number;
  };
  readonly stuck: {
    /** Smallest step the digitiser reports, °C. */
    readonly stepCelsius: number;
    /** Ordinary wander of a live reading, standard deviation, °C. */
    readonly noiseCelsius: number;
    /** Time of one conversion: reading faster repeats the old value, ms. */
    readonly conversionMs: number;
    /** Never called stuck sooner than this, ms. */
    readonly holdMs: number;
    /** How far another probe must have moved meanwhile, °C. */
    readonly othersMoveCelsius: number;
  };
  readonly change: {
    /** Fastest change the probe can follow, °C per second. */
    readonly maximumRate: number;
    /** A jump between neighbours is a step when it exceeds the possible change by this, °C. */
    readonly stepCelsius: number;
    /** Intervals in a row, in one direction, that are too fast before it is a rate fault. */
    readonly rateIntervals: number;
  };
}

/**
 * Default rules for a thermocouple type.
 *
 * - Rails are the ends of the reference function.
 * - `maximumRate` 40 °C/s: a 3 mm insulated probe reaches half in 23 s in air
 *   (published by a cable maker), so its time constant is 33 s and a shop-warm
 *   probe put into 1300 °C starts at 39 °C/s (derived).
 * - 0.25 °C step and 100 ms conversion: MAX31855 (Maxim 19-5793; the conversion
 *   time from memory).
 */
export function defaultProbeFaultRules(type: ThermocoupleType): ProbeFaultRules {
  return {
    rails: functionRange(type),
    maximumGapMs: 30_000,
    shop: { lowCelsius: -20, highCelsius: 50 },
    shorted: { bandCelsius: 25, flatCelsius: 5, riseCelsius: 200, slowestSeconds: 6 * 3600 },
    reversed: {
      riseCelsius: 20,
      fallShare: 0.25,
      fallCelsius: 5,
      heatingWindowMs: 60_000,
      windowMaximumMs: 1_800_000,
      comparisons: 2,
    },
    stuck: {
      stepCelsius: 0.25,
      noiseCelsius: 0.2,
      conversionMs: 100,
      holdMs: 120_000,
      othersMoveCelsius: 50,
    },
    change: { maximumRate: 40, stepCelsius: 150, rateIntervals: 3 },
  };
}

/** Chance, per run, that a live reading is called stuck by its repeats alone. */
const acceptedChance = 1e-6;

/**
 * How many equal readings in a row a digitiser of this step still gives by
 * itself, when the live value wanders with this standard deviation.
 *
 * The chance of one more equal reading is bounded from above by the density at
 * the mean times the step, and by one minus a lower bound of the normal tail
 * (2x/(1+x²)·φ(x), x = step/2σ); the run is where that chance to the n-th falls
 * to one in a million. Both bounds err towards a longer run. Infinite for a
 * reading that does not wander: then repeats prove nothing.
 *
 * @param stepCelsius digitiser step, above 0
 * @param noiseCelsius standard deviation of the wander, 0 or above
 */
export function longestOrdinaryRun(stepCelsius: number, noiseCelsius: number): number {
  if (!(noiseCelsius > 0)) return Infinity;
  const x = stepCelsius / (2 * noiseCelsius);
  const density = Math.exp((-x * x) / 2) / Math.sqrt(2 * Math.PI);
  const byDensity = (2 * x) / Math.sqrt(2 * Math.PI);
  const byTail = 1 - ((2 * x) / (1 + x * x)) * density;
  const chance = Math.min(byDensity, byTail);
  if (!(chance < 1)) return Infinity;
  return Math.ceil(Math.log(acceptedChance) / Math.log(chance));
}
