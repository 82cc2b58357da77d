/**
 * Air changes an hour from the way a gas falls when its source has gone out.
 *
 *     ln(C - Cb) = y0 - A t, fitted by least squares
 *
 * The answer holds for the weather and the openings of that hour and no other
 * (ASTM E741). Nobody should ever raise carbon monoxide for the sake of a test:
 * take the tail after normal work with the people out, or CO2. A good figure is
 * a measurement of air flow, never a statement that the air is good.
 */
import { PhysicsError, requireRange } from '../errors.ts';
import { studentHalfWidth } from '../statistics/distributions.ts';
import { leastSquares } from '../statistics/least-squares.ts';
import { allHeld, type DecayCondition, decayConditions, LEAST_EXCESS_STEPS } from './decay-conditions.ts';

/** Epoch ms UTC and ppm of the gas that falls. */
export interface GasSample {
  readonly atMs: number;
  readonly ppm: number;
}

export interface DecayQuestion {
  /** Level of the incoming air, 0 or more. */
  readonly backgroundPpm: number;
  /** The same measured again at the end; unknown where left out. */
  readonly backgroundAfterPpm?: number;
  /** In order of time; three or more above the background. */
  readonly samples: readonly GasSample[];
  /** The same fall at other points of the room. */
  readonly otherPoints?: readonly (readonly GasSample[])[];
  readonly sourceOff?: boolean;
  readonly openingsUnchanged?: boolean;
  /** Step of the sensor, ppm, above 0; 1 where left out. */
  readonly resolutionPpm?: number;
  /** Share of the confidence interval, 0.95 where left out. */
  readonly confidence?: number;
}

export interface DecayFit {
  /** Per hour. Below 0 where the gas did not fall; the conditions then say so. */
  readonly airChangesPerHour: number;
  /** Of the regression alone; an error of the background comes on top. */
  readonly standardError: number;
  readonly low: number;
  readonly high: number;
  readonly confidence: number;
  /** Samples used, and samples left out once the fall had reached the background. */
  readonly count: number;
  readonly leftOut: number;
  readonly seconds: number;
  readonly conditions: readonly DecayCondition[];
  /** true: all kept; false: one broken; null: none broken, but not all known. */
  readonly conditionsHeld: boolean | null;
}

const HOUR_MS = 3_600_000;
const LEAST_FOR_ERROR = 3;
/** Fewer points than this bend any way they like. */
const LEAST_FOR_BEND = 5;

/**
 * Fits a decay. Source: standard least squares; conditions after ASTM E741, see decay-conditions.ts.
 *
 * Leading samples are used until the first that is within five sensor steps of the background.
 *
 * @throws PhysicsError `bad-input` for fewer than three samples above the background or time that does not
 *   rise; `out-of-range` for a background below 0, a step or confidence that means nothing
 */
export function fitDecay(question: DecayQuestion): DecayFit {
  const { backgroundPpm, confidence = 0.95 } = question;
  requireRange('Background', backgroundPpm, 0, 1e6, 'ppm');
  requireRange('Confidence', confidence, 0.5, 0.999, '');
  const used = usedOf(question, question.samples);
  const line = fitLine(used);
  const half = studentHalfWidth(confidence, used.count - 2) * line.error;
  const { fall, seconds } = line;
  const spread = spreadOf(question, line.rate);
  const conditions = decayConditions({
    sourceOff: question.sourceOff ?? null,
    openingsUnchanged: question.openingsUnchanged ?? null,
    backgroundMovedPpm:
      question.backgroundAfterPpm === undefined ? null : question.backgroundAfterPpm - backgroundPpm,
    lastExcessPpm: used.lastExcessPpm,
    roseAgain: used.roseAgain,
    count: used.count,
    fall,
    bend: bendOf(used, confidence),
    spread,
  });
  return {
    airChangesPerHour: line.rate,
    standardError: line.error,
    low: line.rate - half,
    high: line.rate + half,
    confidence,
    count: used.count,
    leftOut: question.samples.length - used.count,
    seconds,
    conditions,
    conditionsHeld: allHeld(conditions),
  };
}

/** Hours since the first sample and logarithms of the excess. */
interface UsedSamples {
  readonly hours: readonly number[];
  readonly logs: readonly number[];
  readonly count: number;
  readonly lastExcessPpm: number;
  readonly roseAgain: number;
}

function usedOf(question: DecayQuestion, samples: readonly GasSample[]): UsedSamples {
  requireRising(samples);
  const step = requireRange('Step of the sensor', question.resolutionPpm ?? 1, 1e-6, 1e5, 'ppm');
  const excesses = samples.map((sample) => sample.ppm - question.backgroundPpm);
  const reached = excesses.findIndex((excess) => !(excess >= LEAST_EXCESS_STEPS * step));
  const count = reached === -1 ? samples.length : reached;
  if (count < LEAST_FOR_ERROR) {
    const message = `A decay needs ${LEAST_FOR_ERROR} samples well above the background, got ${count}`;
    throw new PhysicsError('bad-input', message, { count, leastExcessPpm: LEAST_EXCESS_STEPS * step });
  }
  const startMs = samples[0]?.atMs ?? 0;
  const leading = excesses.slice(0, count);
  return {
    hours: samples.slice(0, count).map((sample) => (sample.atMs - startMs) / HOUR_MS),
    logs: leading.map((excess) => Math.log(excess)),
    count,
    lastExcessPpm: leading.at(-1) ?? Number.NaN,
    roseAgain: excesses.slice(count).filter((excess) => excess >= 2 * LEAST_EXCESS_STEPS * step).length,
  };
}

function requireRising(samples: readonly GasSample[]): void {
  let beforeMs = Number.NEGATIVE_INFINITY;
  for (const [index, { atMs, ppm }] of samples.entries()) {
    requireRange(`Level of sample ${index}`, ppm, -1000, 1e6, 'ppm');
    if (!(atMs > beforeMs)) {
      throw new PhysicsError('bad-input', `time does not rise at sample ${index}`, { index });
    }
    beforeMs = atMs;
  }
}

function fitLine({ hours, logs }: UsedSamples) {
  const fit = leastSquares({ rows: hours.map((hour) => [hour]), y: logs });
  const rate = -(fit.coefficients[1] ?? Number.NaN);
  const span = hours.at(-1) ?? 0;
  return { rate, error: fit.standardErrors[1] ?? Number.NaN, fall: rate * span, seconds: span * 3600 };
}

/** Change of the slope over the window as a share of it; 0 where it is no larger than the scatter explains. */
function bendOf({ hours, logs, count }: UsedSamples, confidence: number): number | null {
  if (count < LEAST_FOR_BEND) return null;
  const fit = leastSquares({ rows: hours.map((hour) => [hour, hour * hour]), y: logs });
  const [, slope = 0, bend = 0] = fit.coefficients;
  const error = fit.standardErrors[2] ?? 0;
  if (Math.abs(bend) <= studentHalfWidth(confidence, fit.freedom) * error) return 0;
  const span = hours.at(-1) ?? 0;
  return Math.abs((2 * bend * span) / (slope + bend * span));
}

function spreadOf(question: DecayQuestion, rate: number): number | null {
  const others = question.otherPoints ?? [];
  if (others.length === 0) return null;
  const rates = others.map((samples) => fitLine(usedOf(question, samples)).rate);
  return Math.max(...rates.map((other) => Math.abs(other - rate) / Math.abs(rate)));
}
