/**
 * The running evidence for each fault of a probe: pure steps over samples.
 *
 * Each mark sees every usable reading and says from when its fault stands.
 */

import type { ProbeFaultRules } from './probe-fault-rules.ts';
import { follow, largest, type OtherProbes, type Spans } from './probe-fault-spans.ts';

/** One usable reading with what is known beside it. */
export interface UsableSample {
  readonly atMs: number;
  readonly celsius: number;
  readonly coldJunctionCelsius: number | undefined;
  readonly heating: boolean;
  readonly others: OtherProbes;
}

/** A reading at ambient, and what others did meanwhile. */
export interface AmbientMark {
  /** When the others began to rise; until then it moves on with every sample. */
  readonly sinceMs: number;
  /** Newest sample in it. */
  readonly untilMs: number;
  /** Reading against the cold junction (or as it is, when that is unknown) since then, °C. */
  readonly low: number;
  readonly high: number;
  readonly others: Spans;
  /** What the hottest other probe was above this one, times time, since then, °C·s. */
  readonly exposure: number;
  /** Called shorted; it stays so until the reading leaves ambient. */
  readonly shorted: boolean;
}

export function isAtAmbient(rules: ProbeFaultRules, sample: UsableSample): boolean {
  const { celsius, coldJunctionCelsius } = sample;
  if (coldJunctionCelsius !== undefined) {
    return Math.abs(celsius - coldJunctionCelsius) <= rules.shorted.bandCelsius;
  }
  return celsius >= rules.shop.lowCelsius && celsius <= rules.shop.highCelsius;
}

/** A rise of this share of the one asked for counts as its beginning. */
const beginningShare = 0.25;

export function markAmbient(
  rules: ProbeFaultRules,
  mark: AmbientMark | undefined,
  sample: UsableSample,
): AmbientMark | undefined {
  if (!isAtAmbient(rules, sample)) return undefined;
  const { riseCelsius, flatCelsius, slowestSeconds } = rules.shorted;
  const others = follow(mark?.others ?? {}, sample.others);
  const rise = largest(others, (span) => span.now - span.low);
  const begun = mark !== undefined && rise >= riseCelsius * beginningShare;
  const held = begun || mark?.shorted === true ? mark : freshAmbient(sample.atMs);
  const offset = sample.celsius - (sample.coldJunctionCelsius ?? 0);
  const low = Math.min(held.low, offset);
  const high = Math.max(held.high, offset);
  const exposure = held.exposure + exposureSince(held.untilMs, others, sample);
  const exposed = rise >= riseCelsius && exposure >= flatCelsius * slowestSeconds;
  const shorted = held.shorted || (exposed && high - low <= flatCelsius);
  return { sinceMs: held.sinceMs, untilMs: sample.atMs, low, high, others, exposure, shorted };
}

function freshAmbient(atMs: number): Omit<AmbientMark, 'others'> {
  return { sinceMs: atMs, untilMs: atMs, low: Infinity, high: -Infinity, exposure: 0, shorted: false };
}

function exposureSince(fromMs: number, others: Spans, sample: UsableSample): number {
  const above = largest(others, (span) => span.now) - sample.celsius;
  return Math.max(0, above) * ((sample.atMs - fromMs) / 1000);
}

/** A comparison of the reading's direction with that of the furnace. */
export interface TrendMark {
  readonly startMs: number;
  readonly startCelsius: number;
  readonly others: Spans;
  readonly heatingThroughout: boolean;
  /** Opposed comparisons in a row so far, and when the first of them began. */
  readonly opposed: number;
  readonly opposedSinceMs: number | undefined;
  /** Called reversed; stays so until the reading rises with the furnace or is plainly hot. */
  readonly reversed: boolean;
}

/** Begins a comparison at this sample, carrying what earlier ones have shown. */
export function beginTrend(sample: UsableSample, carried: Partial<TrendMark>): TrendMark {
  return {
    startMs: sample.atMs,
    startCelsius: sample.celsius,
    others: follow({}, sample.others),
    heatingThroughout: sample.heating,
    opposed: carried.opposed ?? 0,
    opposedSinceMs: carried.opposedSinceMs,
    reversed: carried.reversed ?? false,
  };
}

export function markTrend(
  rules: ProbeFaultRules,
  mark: TrendMark | undefined,
  sample: UsableSample,
): TrendMark {
  if (mark === undefined || isPlainlyHot(rules, sample)) return beginTrend(sample, {});
  const others = follow(mark.others, sample.others);
  const heatingThroughout = mark.heatingThroughout && sample.heating;
  const going = { ...mark, others, heatingThroughout };
  const rise = furnaceRise(rules, going, sample);
  if (rise !== undefined) return closeTrend(rules, going, sample, rise);
  const fellBack = largest(others, (span) => span.first - span.now) >= rules.reversed.riseCelsius;
  const tooOld = sample.atMs - mark.startMs >= rules.reversed.windowMaximumMs;
  return fellBack || tooOld ? beginTrend(sample, verdictOf(mark, mark.reversed)) : going;
}

/** A reversed pair reads below its cold junction while the hot end is above it. */
function isPlainlyHot(rules: ProbeFaultRules, sample: UsableSample): boolean {
  const { celsius, coldJunctionCelsius } = sample;
  if (coldJunctionCelsius === undefined) return celsius > rules.shop.highCelsius;
  return celsius > coldJunctionCelsius + rules.shorted.bandCelsius;
}

/** How far the furnace rose in this comparison; 0 when only heating is known; undefined while undecided. */
function furnaceRise(rules: ProbeFaultRules, mark: TrendMark, sample: UsableSample): number | undefined {
  const rise = largest(mark.others, (span) => span.now - span.first);
  if (rise >= rules.reversed.riseCelsius) return rise;
  const blind = Object.keys(mark.others).length === 0;
  const longEnough = sample.atMs - mark.startMs >= rules.reversed.heatingWindowMs;
  return blind && mark.heatingThroughout && longEnough ? 0 : undefined;
}

function closeTrend(rules: ProbeFaultRules, mark: TrendMark, sample: UsableSample, rise: number): TrendMark {
  const change = sample.celsius - mark.startCelsius;
  const needed = Math.max(rules.reversed.fallCelsius, rules.reversed.fallShare * rise);
  if (change > -needed) {
    return beginTrend(sample, verdictOf(mark, mark.reversed && change < needed));
  }
  const opposed = mark.opposed + 1;
  const opposedSinceMs = mark.opposedSinceMs ?? mark.startMs;
  const reversed = mark.reversed || opposed >= rules.reversed.comparisons;
  return beginTrend(sample, { opposed, opposedSinceMs, reversed });
}

/** What outlives a comparison that opposed nothing: the verdict and since when, nothing else. */
export function verdictOf(mark: TrendMark, reversed: boolean): Partial<TrendMark> {
  return reversed ? { reversed, opposedSinceMs: mark.opposedSinceMs } : {};
}

/** A run of equal readings. */
export interface RunMark {
  readonly sinceMs: number;
  readonly celsius: number;
  readonly count: number;
  readonly others: Spans;
  /** The cold junction during the run, when it is known. */
  readonly junction: Spans;
}

export function markRun(mark: RunMark | undefined, sample: UsableSample): RunMark {
  const { celsius, atMs, coldJunctionCelsius } = sample;
  const same = mark?.celsius === celsius ? mark : { sinceMs: atMs, count: 0, others: {}, junction: {} };
  return {
    sinceMs: same.sinceMs,
    celsius,
    count: same.count + 1,
    others: follow(same.others, sample.others),
    junction: follow(
      same.junction,
      coldJunctionCelsius === undefined ? {} : { junction: coldJunctionCelsius },
    ),
  };
}

/** Intervals in a row that were too fast, in one direction. */
export interface FastMark {
  readonly sinceMs: number;
  readonly direction: 1 | -1;
  readonly intervals: number;
}

export function markFast(
  rules: ProbeFaultRules,
  mark: FastMark | undefined,
  previous: { readonly atMs: number; readonly celsius: number },
  sample: UsableSample,
): FastMark | undefined {
  const excess = excessChange(rules, previous, sample);
  // A step is its own fault and says nothing of the rate beside it.
  if (excess <= 0 || excess > rules.change.stepCelsius) return undefined;
  const direction = sample.celsius > previous.celsius ? 1 : -1;
  if (mark === undefined || mark.direction !== direction) {
    return { sinceMs: previous.atMs, direction, intervals: 1 };
  }
  return { ...mark, intervals: mark.intervals + 1 };
}

/** How far a change exceeds what the probe can follow in the time, °C. */
export function excessChange(
  rules: ProbeFaultRules,
  previous: { readonly atMs: number; readonly celsius: number },
  sample: UsableSample,
): number {
  const seconds = (sample.atMs - previous.atMs) / 1000;
  return Math.abs(sample.celsius - previous.celsius) - rules.change.maximumRate * seconds;
}
