/** What an exposure says at an instant: means, how far they are known, and which limits they are above. */
import { DAY_WINDOW, type ExposureConfig, type ExposureState, SHORT_WINDOW } from './exposure.ts';
import { LIMIT_KINDS, type LimitKind, type PpmLimit } from './limits.ts';
import { rollingTally, type Tally } from './rolling-mean.ts';
import { twaDivisorMs } from './time-weighted.ts';

/** A mean of ppm over time with what is known of it. */
export interface KnownMean {
  /** Filled as the rules state; null where nothing stands in too large a gap. */
  readonly ppm: number | null;
  /** What the measured time alone adds up to: the true mean is not below this. */
  readonly atLeastPpm: number;
  /** Share of the time so far that was measured, 0 to 1. */
  readonly coverage: number;
  readonly measuredSeconds: number;
  readonly gapSeconds: number;
}

/**
 * - `above`: the level or mean is above the limit, by measurement or with the gaps filled
 * - `not-above`: enough was measured and it is not above; no claim that the air is good
 * - `unknown`: too little was measured to tell
 */
export type LimitStanding = 'above' | 'not-above' | 'unknown';

export interface LimitReading {
  readonly kind: LimitKind;
  readonly limit: PpmLimit;
  /** What is compared with the limit, ppm: the mean, or the level of the instant. */
  readonly ppm: number | null;
  readonly standing: LimitStanding;
  readonly minutesAbove: number;
}

export interface ExposureReading {
  readonly atMs: number;
  /** The day by the convention of the profile, so far. */
  readonly twa: KnownMean;
  /** The eight hours that end now, whatever shift they lie in. */
  readonly lastEightHours: KnownMean;
  /** The 15 minutes that end now. */
  readonly stel: KnownMean;
  readonly highestStel: ExposureState['highestShort'];
  readonly highestEightHours: ExposureState['highestDay'];
  readonly peak: ExposureState['peak'];
  /** Share of the shift that was measured, 0 to 1. */
  readonly coverage: number;
  readonly limits: readonly LimitReading[];
}

/** 7 of 8 h stand for the day. Source: OSHA Industrial Hygiene Manual, chapter IX, 1977, via a public archive. */
export const COVERAGE_THAT_STANDS = 7 / 8;

/** Reads the state off at the instant it stands at. */
export function readExposure(config: ExposureConfig, state: ExposureState): ExposureReading {
  const atMs = state.curve.atMs;
  const elapsedMs = atMs - state.shiftStartMs;
  const shift = known(state.shift, twaDivisorMs(config.profile.convention, elapsedMs), elapsedMs);
  const short = rollingTally(state.short, SHORT_WINDOW);
  const day = rollingTally(state.day, DAY_WINDOW);
  const stel = known(short, SHORT_WINDOW.windowMs, SHORT_WINDOW.windowMs);
  const means = { twa: shift, stel };
  return {
    atMs,
    twa: shift,
    lastEightHours: known(day, DAY_WINDOW.windowMs, DAY_WINDOW.windowMs),
    stel,
    highestStel: state.highestShort,
    highestEightHours: state.highestDay,
    peak: state.peak,
    coverage: shift.coverage,
    limits: LIMIT_KINDS.flatMap((kind) => limitReading(config, state, means, kind)),
  };
}

function known(tally: Tally, divisorMs: number, wholeMs: number): KnownMean {
  const { measuredPpmMs, measuredMs, filledPpmMs, filledMs, unknownMs } = tally;
  const coverage = wholeMs === 0 ? 0 : Math.min(1, measuredMs / wholeMs);
  // A small unknown rest takes the measured mean; a large one leaves the whole unknown.
  const seenMs = measuredMs + filledMs;
  const tooLittle = unknownMs > (1 - COVERAGE_THAT_STANDS) * (seenMs + unknownMs);
  const restPpmMs = measuredMs === 0 ? 0 : (measuredPpmMs / measuredMs) * unknownMs;
  return {
    ppm: seenMs === 0 || tooLittle ? null : (measuredPpmMs + filledPpmMs + restPpmMs) / divisorMs,
    atLeastPpm: measuredPpmMs / divisorMs,
    coverage,
    measuredSeconds: measuredMs / 1000,
    gapSeconds: (filledMs + unknownMs) / 1000,
  };
}

function limitReading(
  config: ExposureConfig,
  state: ExposureState,
  means: { readonly twa: KnownMean; readonly stel: KnownMean },
  kind: LimitKind,
): LimitReading[] {
  const limit = config.profile[kind];
  if (limit === null) return [];
  const minutesAbove = state.aboveMs[kind] / 60_000;
  if (kind === 'twa' || kind === 'stel') {
    const mean = means[kind];
    return [{ kind, limit, ppm: mean.ppm, standing: meanStanding(mean, limit.ppm), minutesAbove }];
  }
  const ppm = believedLevel(config, state);
  return [{ kind, limit, ppm: ppm.level, standing: levelStanding(ppm, limit.ppm), minutesAbove }];
}

function meanStanding(mean: KnownMean, limitPpm: number): LimitStanding {
  if (mean.atLeastPpm > limitPpm || (mean.ppm ?? 0) > limitPpm) return 'above';
  return mean.ppm === null || mean.coverage < COVERAGE_THAT_STANDS ? 'unknown' : 'not-above';
}

interface Level {
  readonly level: number | null;
  readonly fresh: boolean;
}

function believedLevel({ rules }: ExposureConfig, { curve }: ExposureState): Level {
  const { last, atMs } = curve;
  const fresh = last !== null && atMs - last.atMs <= rules.longestHoldMs;
  return { level: last?.ppm ?? null, fresh };
}

/** An old level may still say "above"; that it is not above, only a fresh one may say. */
function levelStanding({ level, fresh }: Level, limitPpm: number): LimitStanding {
  if (level !== null && level > limitPpm) return 'above';
  return fresh ? 'not-above' : 'unknown';
}
