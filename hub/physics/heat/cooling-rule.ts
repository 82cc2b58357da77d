/**
 * Whether an anneal's cooling rule was met: "no faster than 28 °C an hour from
 * 830 to 650 °C" (28 for 10xx, 22 for O1 and W1, 14 for S7, 11 for 5160).
 */
import { PhysicsError, requireRange } from '../errors.ts';
import { type CoolingPoint, fallBetween, secondsBetween, secondsWithin } from './cooling.ts';

export interface CoolingRule {
  readonly fromCelsius: number;
  readonly toCelsius: number;
  /** Fastest cooling allowed, °C/h. More than 0. */
  readonly mostCelsiusPerHour: number;
}

export interface CoolingVerdict {
  readonly met: boolean;
  /** From upper to lower temperature as a whole. */
  readonly hours: number;
  readonly meanCelsiusPerHour: number;
  /** Fastest 10 °C on the way, and where it began. */
  readonly worstCelsiusPerHour: number;
  readonly worstAtCelsius: number;
  /** How long the rule asks for at least, h. */
  readonly ruleHours: number;
}

/** Rates are taken over 10 °C, so that the steps of a digital thermometer do not count as rates. */
const STRETCH_CELSIUS = 10;
const NOISE_CELSIUS = 3;
/** A record cannot show a rate better than this: 5 % more than allowed still counts as met. */
const LENIENCE = 1.05;

/**
 * Judges a falling curve against a rule. `met` wants every 10 °C stretch within
 * the rule, with 5 % for the reading of the thermometer.
 *
 * @throws PhysicsError `not-applicable` when the curve does not pass the whole
 *   range, `out-of-range` when the range is under 10 °C or the rate not positive
 */
export function judgeCooling(curve: readonly CoolingPoint[], rule: CoolingRule): CoolingVerdict {
  const most = requireRange('allowed rate', rule.mostCelsiusPerHour, 0.1, 10_000, '°C/h');
  const span = requireRange(
    'range of the rule',
    rule.fromCelsius - rule.toCelsius,
    STRETCH_CELSIUS,
    1200,
    'K',
  );
  const hours = secondsBetween(curve, rule.fromCelsius, rule.toCelsius) / 3600;
  const fall = noisyFall(curve, rule.fromCelsius, rule.toCelsius);
  const worst = stretches(rule)
    .map((at) => ({ at: at.upper, rate: rateWithin(fall, at.upper, at.lower) }))
    .reduce((a, b) => (b.rate > a.rate ? b : a));
  return {
    met: worst.rate <= most * LENIENCE,
    hours,
    meanCelsiusPerHour: span / hours,
    worstCelsiusPerHour: worst.rate,
    worstAtCelsius: worst.at,
    ruleHours: span / most,
  };
}

/**
 * A fall with a little more at either end, where the curve has it: noise makes
 * the last reading above a limit late and the first one below it early.
 */
function noisyFall(curve: readonly CoolingPoint[], upper: number, lower: number): readonly CoolingPoint[] {
  const start = curve.some((p) => p.celsius >= upper + NOISE_CELSIUS) ? upper + NOISE_CELSIUS : upper;
  const onward = curve.slice(
    Math.max(
      0,
      curve.findLastIndex((p) => p.celsius >= start),
    ),
  );
  const goesOn = onward.some((p) => p.celsius <= lower - NOISE_CELSIUS);
  return fallBetween(curve, start, goesOn ? lower - NOISE_CELSIUS : lower);
}

function rateWithin(fall: readonly CoolingPoint[], upper: number, lower: number): number {
  const seconds = secondsWithin(fall, upper, lower);
  return seconds > 0 ? ((upper - lower) * 3600) / seconds : Number.POSITIVE_INFINITY;
}

function stretches(rule: CoolingRule): { upper: number; lower: number }[] {
  const count = Math.floor((rule.fromCelsius - rule.toCelsius) / STRETCH_CELSIUS);
  return Array.from({ length: count }, (_, i) => {
    const upper = rule.fromCelsius - i * STRETCH_CELSIUS;
    return { upper, lower: i === count - 1 ? rule.toCelsius : upper - STRETCH_CELSIUS };
  });
}

/**
 * Rate of cooling at a temperature, °C/h, over the 20 °C around it.
 *
 * @throws PhysicsError `not-applicable` when the curve does not pass them
 */
export function coolingRateAt(curve: readonly CoolingPoint[], celsius: number): number {
  const [upper, lower] = [celsius + STRETCH_CELSIUS, celsius - STRETCH_CELSIUS];
  return rateWithin(noisyFall(curve, upper, lower), upper, lower);
}

/**
 * Chamber of a small closed electric furnace left to cool, °C after `seconds`.
 * Common practice, no source: about 150 °C/h at 800 (100 to 200 seen) falling
 * to 50 at 500. No claim below 450 °C. Measure your own.
 *
 * @returns a function of seconds; it throws PhysicsError `not-applicable` once below 450 °C
 * @throws PhysicsError `out-of-range` when the start is not 500 to 900 °C
 */
export function closedFurnaceCooling(startCelsius: number): (seconds: number) => number {
  requireRange('furnace start', startCelsius, 500, 900, '°C');
  // The straight line through 150 °C/h at 800 and 50 °C/h at 500: towards 350 °C over 3 h.
  return (seconds) => {
    const celsius = 350 + (startCelsius - 350) * Math.exp(-seconds / (3 * 3600));
    if (celsius >= 450) return celsius;
    throw new PhysicsError('not-applicable', 'nothing is known of a closed furnace below 450 °C', {
      seconds,
    });
  };
}
