/**
 * Tells faults of a temperature probe from its readings: open, reversed,
 * shorted, stuck, an implausible step, an implausible rate.
 *
 * A pure step over samples; time comes with the sample. Standing: common
 * practice. What it cannot tell, it leaves unsaid: a short inside the hot zone
 * reads a plausible temperature; a pair that was reversed when the furnace was
 * already hot goes straight to the rail and looks open; a probe that lies on the
 * bench while the furnace heats looks shorted.
 */

import { PhysicsError } from './errors.ts';
import {
  type AmbientMark,
  beginTrend,
  excessChange,
  type FastMark,
  isAtAmbient,
  markAmbient,
  markFast,
  markRun,
  markTrend,
  type RunMark,
  type TrendMark,
  type UsableSample,
  verdictOf,
} from './probe-fault-marks.ts';
import { longestOrdinaryRun, type ProbeFaultRules } from './probe-fault-rules.ts';
import { largest, type OtherProbes } from './probe-fault-spans.ts';

export interface ProbeSample {
  /** Epoch milliseconds UTC, later than the sample before. */
  readonly atMs: number;
  /** Temperature as the channel gives it; null or NaN when it gave no number. */
  readonly celsius: number | null;
  /** Temperature of the terminals, when the channel knows it, °C. */
  readonly coldJunctionCelsius?: number;
  /** The furnace is known to be heating, e.g. its burner is on. */
  readonly heating?: boolean;
  /** Newest usable values of the other probes in the same furnace, by name, °C. */
  readonly others?: OtherProbes;
}

export type ProbeFault = 'open' | 'reversed' | 'shorted' | 'stuck' | 'step' | 'rate';

export interface ProbeFinding {
  readonly fault: ProbeFault;
  /** When what was recognised began, ms. */
  readonly sinceMs: number;
  /** The facts it rests on, for the record. */
  readonly evidence: Readonly<Record<string, number | string>>;
}

/** Everything remembered between samples; of constant size. */
export interface ProbeFaultState {
  readonly atMs: number | undefined;
  /** Newest usable reading, when it is recent enough to compare with. */
  readonly previous: { readonly atMs: number; readonly celsius: number } | undefined;
  readonly ambient: AmbientMark | undefined;
  readonly trend: TrendMark | undefined;
  readonly run: RunMark | undefined;
  readonly fast: FastMark | undefined;
  readonly finding: ProbeFinding | null;
}

/** The state before the first sample. */
export const untouchedProbe: ProbeFaultState = {
  atMs: undefined,
  previous: undefined,
  ambient: undefined,
  trend: undefined,
  run: undefined,
  fast: undefined,
  finding: null,
};

/**
 * Takes one sample and says which fault, if any, stands now (`state.finding`).
 *
 * One fault at a time, the most telling: open, reversed, stuck, shorted, step,
 * rate. A step stands for the one sample that jumped; the others stand until the
 * readings disprove them.
 *
 * @throws PhysicsError `bad-input` when the sample is not later than the one before
 */
export function stepProbeFaults(
  rules: ProbeFaultRules,
  state: ProbeFaultState,
  sample: ProbeSample,
): ProbeFaultState {
  if (state.atMs !== undefined && !(sample.atMs > state.atMs)) {
    const message = `sample at ${sample.atMs} ms does not come after the one at ${state.atMs} ms`;
    throw new PhysicsError('bad-input', message, { atMs: sample.atMs, previousMs: state.atMs });
  }
  const rail = railOf(rules, sample.celsius);
  if (rail !== undefined || sample.celsius === null)
    return withoutReading(state, sample, rail ?? 'no-number');
  return withReading(rules, state, {
    atMs: sample.atMs,
    celsius: sample.celsius,
    coldJunctionCelsius: sample.coldJunctionCelsius,
    heating: sample.heating ?? false,
    others: sample.others ?? {},
  });
}

type Rail = 'upscale' | 'downscale' | 'no-number';

function railOf(rules: ProbeFaultRules, celsius: number | null): Rail | undefined {
  if (celsius === null || Number.isNaN(celsius)) return 'no-number';
  if (celsius >= rules.rails.highCelsius) return 'upscale';
  if (celsius <= rules.rails.lowCelsius) return 'downscale';
  return undefined;
}

/** No usable reading: open, unless it is a reversed pair that has run off the low end. */
function withoutReading(state: ProbeFaultState, sample: ProbeSample, rail: Rail): ProbeFaultState {
  const reversedRanOff = state.finding?.fault === 'reversed' && rail !== 'upscale';
  if (reversedRanOff) return { ...state, atMs: sample.atMs, previous: undefined, fast: undefined };
  const sinceMs = state.finding?.fault === 'open' ? state.finding.sinceMs : sample.atMs;
  return { ...untouchedProbe, atMs: sample.atMs, finding: { fault: 'open', sinceMs, evidence: { rail } } };
}

function withReading(rules: ProbeFaultRules, state: ProbeFaultState, sample: UsableSample): ProbeFaultState {
  const { previous } = state;
  const joined = previous !== undefined && sample.atMs - previous.atMs <= rules.maximumGapMs;
  const base = joined ? state : forgotten(state, sample);
  const next = {
    atMs: sample.atMs,
    previous: { atMs: sample.atMs, celsius: sample.celsius },
    ambient: markAmbient(rules, base.ambient, sample),
    trend: markTrend(rules, base.trend, sample),
    run: markRun(base.run, sample),
    fast: base.previous && markFast(rules, base.fast, base.previous, sample),
  };
  const finding =
    reversedFinding(next.trend, sample) ??
    stuckFinding(rules, next.run, sample) ??
    shortedFinding(next.ambient) ??
    (base.previous && (stepFinding(rules, base.previous, sample) ?? rateFinding(rules, next.fast))) ??
    null;
  return { ...next, finding };
}

/** After a gap nothing before it is compared with, but a pair once known as reversed stays so. */
function forgotten(state: ProbeFaultState, sample: UsableSample): ProbeFaultState {
  const { trend } = state;
  const kept = trend?.reversed === true ? beginTrend(sample, verdictOf(trend, true)) : undefined;
  return { ...untouchedProbe, trend: kept };
}

function reversedFinding(trend: TrendMark, sample: UsableSample): ProbeFinding | undefined {
  if (!trend.reversed) return undefined;
  const sinceMs = trend.opposedSinceMs ?? trend.startMs;
  return { fault: 'reversed', sinceMs, evidence: { readsCelsius: sample.celsius } };
}

function shortedFinding(ambient: AmbientMark | undefined): ProbeFinding | undefined {
  if (ambient?.shorted !== true) return undefined;
  const othersRoseCelsius = largest(ambient.others, (span) => span.high - span.low);
  const wanderCelsius = ambient.high - ambient.low;
  return { fault: 'shorted', sinceMs: ambient.sinceMs, evidence: { othersRoseCelsius, wanderCelsius } };
}

function stuckFinding(rules: ProbeFaultRules, run: RunMark, sample: UsableSample): ProbeFinding | undefined {
  const { stepCelsius, noiseCelsius, conversionMs, holdMs, othersMoveCelsius } = rules.stuck;
  const ordinary = longestOrdinaryRun(stepCelsius, noiseCelsius);
  const heldMs = sample.atMs - run.sinceMs;
  if (run.count <= ordinary || heldMs < Math.max(holdMs, ordinary * conversionMs)) return undefined;
  const othersMovedCelsius = largest(run.others, (span) => span.high - span.low);
  if (othersMovedCelsius < othersMoveCelsius) return undefined;
  if (isAtAmbient(rules, sample) && !junctionMovedAway(rules, run)) return undefined;
  return { fault: 'stuck', sinceMs: run.sinceMs, evidence: { equalReadings: run.count, othersMovedCelsius } };
}

/** At ambient a short also repeats itself; only a cold junction that moved away tells a stuck value from it. */
function junctionMovedAway(rules: ProbeFaultRules, run: RunMark): boolean {
  return largest(run.junction, (span) => span.high - span.low) > rules.shorted.flatCelsius;
}

function stepFinding(
  rules: ProbeFaultRules,
  previous: { readonly atMs: number; readonly celsius: number },
  sample: UsableSample,
): ProbeFinding | undefined {
  if (excessChange(rules, previous, sample) <= rules.change.stepCelsius) return undefined;
  const evidence = { fromCelsius: previous.celsius, toCelsius: sample.celsius };
  return { fault: 'step', sinceMs: sample.atMs, evidence };
}

function rateFinding(rules: ProbeFaultRules, fast: FastMark | undefined): ProbeFinding | undefined {
  if (fast === undefined || fast.intervals < rules.change.rateIntervals) return undefined;
  return { fault: 'rate', sinceMs: fast.sinceMs, evidence: { intervals: fast.intervals } };
}
