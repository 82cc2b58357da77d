/**
 * A decay, and what follows from it for the room: what the route
 * `ventilation/decay` answers.
 */
import { highestSourceCubicMetresPerHour, secondsUntilBelow } from './air-changes.ts';
import { type DecayFit, type DecayQuestion, fitDecay } from './decay.ts';

export interface DecayReportQuestion extends DecayQuestion {
  readonly room?: {
    readonly volumeCubicMetres: number;
    readonly limitPpm: number;
    /** 1 to 10; 3, the low end of the common habit, where left out. */
    readonly mixingFactor?: number;
  };
}

/** A figure with its range, from the ends of the confidence interval. */
export interface FromDecay {
  readonly low: number;
  readonly value: number;
  /** null where the slow end of the interval is no air change at all. */
  readonly high: number | null;
}

export interface DecayReport extends DecayFit {
  /** m³/h of fresh air; null without a room or a fall. */
  readonly airCubicMetresPerHour: FromDecay | null;
  /** From the last sample used until the limit is reached, s: a time to wait, then read the sensor. */
  readonly secondsUntilBelow: FromDecay | null;
  /** m³/h of pure gas that the room carries at the limit; plan with `low`. */
  readonly highestSourceCubicMetresPerHour: FromDecay | null;
}

const USUAL_MIXING = 3;

/**
 * Fits the decay and looks ahead.
 *
 * @throws PhysicsError as {@link fitDecay}; `no-solution` when the limit is not above the background
 */
export function decayReport(question: DecayReportQuestion): DecayReport {
  const fit = fitDecay(question);
  const { room, backgroundPpm } = question;
  if (room === undefined || fit.airChangesPerHour <= 0) {
    return {
      ...fit,
      airCubicMetresPerHour: null,
      secondsUntilBelow: null,
      highestSourceCubicMetresPerHour: null,
    };
  }
  const { volumeCubicMetres, limitPpm, mixingFactor = USUAL_MIXING } = room;
  const ppmNow = Math.max(0, question.samples[fit.count - 1]?.ppm ?? 0);
  const flow = (perHour: number) => perHour * volumeCubicMetres;
  const wait = (airChangesPerHour: number) =>
    secondsUntilBelow({ ppmNow, limitPpm, backgroundPpm, airChangesPerHour, mixingFactor });
  const source = (airChangesPerHour: number) =>
    highestSourceCubicMetresPerHour({
      volumeCubicMetres,
      airChangesPerHour,
      limitPpm,
      backgroundPpm,
      mixingFactor,
    });
  const slow = Math.max(0, fit.low);
  const { airChangesPerHour: value, high } = fit;
  return {
    ...fit,
    airCubicMetresPerHour: { low: flow(slow), value: flow(value), high: flow(high) },
    secondsUntilBelow: { low: wait(high), value: wait(value), high: slow > 1e-6 ? wait(slow) : null },
    highestSourceCubicMetresPerHour: { low: source(slow), value: source(value), high: source(high) },
  };
}
