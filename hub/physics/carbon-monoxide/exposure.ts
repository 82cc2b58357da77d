/**
 * Exposure to carbon monoxide as it runs: means over the day and over a quarter
 * of an hour, the peak, the time above each limit, and how much of it was measured.
 *
 * Measured levels against limits come first. Nothing here says that air is good:
 * what is not above a limit may still be unknown, and says so.
 */
import {
  afterNews,
  type CurveNews,
  type CurveRules,
  type CurveState,
  type PpmSample,
  requireNews,
  type Stretch,
  startCurve,
  stretchesUntil,
} from './curve.ts';
import { LIMIT_KINDS, type LimitKind, type LimitProfile } from './limits.ts';
import {
  addToRolling,
  addToTally,
  EMPTY_TALLY,
  type RollingState,
  type RollingWindow,
  rollingTally,
  startRolling,
  type Tally,
} from './rolling-mean.ts';

/** A quarter of an hour in steps of 10 s. */
export const SHORT_WINDOW: RollingWindow = { windowMs: 900_000, bucketMs: 10_000 };
/** Eight hours in steps of a minute. */
export const DAY_WINDOW: RollingWindow = { windowMs: 28_800_000, bucketMs: 60_000 };

export interface ExposureConfig {
  readonly profile: LimitProfile;
  readonly rules: CurveRules;
}

/** A mean at its highest, and when. */
export interface Highest {
  readonly ppm: number;
  readonly atMs: number;
}

/** Bounded: about 600 buckets, whatever the length of the watch. */
export interface ExposureState {
  readonly curve: CurveState;
  readonly shiftStartMs: number;
  readonly shift: Tally;
  readonly short: RollingState;
  readonly day: RollingState;
  readonly peak: PpmSample | null;
  readonly highestShort: Highest | null;
  readonly highestDay: Highest | null;
  /** Time with the level above each limit of the profile, ms, filled gaps included. */
  readonly aboveMs: Readonly<Record<LimitKind, number>>;
}

const NOWHERE_ABOVE = { twa: 0, stel: 0, excursion: 0, ceiling: 0, idlh: 0 };

/** The state before the first reading. `startMs` is when the day's work begins. */
export function startExposure(startMs: number): ExposureState {
  return {
    curve: startCurve(startMs),
    shiftStartMs: startMs,
    shift: EMPTY_TALLY,
    short: startRolling(startMs),
    day: startRolling(startMs),
    peak: null,
    highestShort: null,
    highestDay: null,
    aboveMs: NOWHERE_ABOVE,
  };
}

/**
 * The next state: a reading, or (`ppm` null) time that passed without one. Pure.
 *
 * @throws PhysicsError `bad-input` when time runs back, `out-of-range` for a level outside -1000 to 1e6 ppm
 */
export function stepExposure(config: ExposureConfig, state: ExposureState, news: CurveNews): ExposureState {
  requireNews(state.curve, news);
  let next = state;
  for (const stretch of stretchesUntil(state.curve, news, config.rules)) {
    next = addStretch(config, next, stretch);
  }
  const curve = afterNews(state.curve, news);
  return { ...next, curve, peak: news.ppm === null ? next.peak : higherPeak(next.peak, curve.last) };
}

/**
 * A new working day: the sum over the day begins again, and so do peak, highest means and the times above.
 * The rolling windows run on, since lungs know no shifts.
 *
 * @throws PhysicsError `bad-input` when time runs back
 */
export function nextShift(config: ExposureConfig, state: ExposureState, atMs: number): ExposureState {
  const until = stepExposure(config, state, { atMs, ppm: null });
  const { curve, short, day } = until;
  return { ...startExposure(atMs), curve, short, day };
}

function higherPeak(old: PpmSample | null, sample: PpmSample | null): PpmSample | null {
  if (sample === null) return old;
  return old === null || sample.ppm > old.ppm ? sample : old;
}

function addStretch(config: ExposureConfig, state: ExposureState, stretch: Stretch): ExposureState {
  const aboveMs = timeAbove(config.profile, state.aboveMs, stretch);
  let next: ExposureState = { ...state, shift: addToTally(state.shift, stretch), aboveMs };
  for (const piece of piecesOf(stretch, state.short.startMs)) {
    const short = addToRolling(next.short, piece, SHORT_WINDOW);
    const day = addToRolling(next.day, piece, DAY_WINDOW);
    const highestShort = higherMean(next.highestShort, short, SHORT_WINDOW);
    const highestDay = higherMean(next.highestDay, day, DAY_WINDOW);
    next = { ...next, short, day, highestShort, highestDay };
  }
  return next;
}

/**
 * A stretch cut on the grid of the windows, so that a mean which rises and falls inside it is caught: finely
 * until the short window is full of it, by the minute until the long one is, and the rest in one piece, since
 * no mean moves any more.
 */
function* piecesOf(stretch: Stretch, gridMs: number): Generator<Stretch> {
  let { fromMs } = stretch;
  while (fromMs < stretch.toMs) {
    const stepMs = gridStepMs(fromMs - stretch.fromMs);
    const edge = gridMs + (Math.floor((fromMs - gridMs) / stepMs) + 1) * stepMs;
    const toMs = Math.min(edge, stretch.toMs);
    yield { ...stretch, fromMs, toMs };
    fromMs = toMs;
  }
}

function gridStepMs(intoStretchMs: number): number {
  if (intoStretchMs <= SHORT_WINDOW.windowMs + SHORT_WINDOW.bucketMs) return SHORT_WINDOW.bucketMs;
  if (intoStretchMs <= DAY_WINDOW.windowMs + DAY_WINDOW.bucketMs) return DAY_WINDOW.bucketMs;
  return Number.MAX_SAFE_INTEGER;
}

function timeAbove(
  profile: LimitProfile,
  old: ExposureState['aboveMs'],
  stretch: Stretch,
): ExposureState['aboveMs'] {
  if (stretch.ppm === null) return old;
  const next = { ...old };
  for (const kind of LIMIT_KINDS) {
    const limit = profile[kind];
    if (limit !== null && stretch.ppm > limit.ppm) next[kind] += stretch.toMs - stretch.fromMs;
  }
  return next;
}

function higherMean(old: Highest | null, state: RollingState, window: RollingWindow): Highest | null {
  const tally = rollingTally(state, window);
  if (tally.measuredMs + tally.filledMs === 0) return old;
  const ppm = (tally.measuredPpmMs + tally.filledPpmMs) / window.windowMs;
  return old === null || ppm > old.ppm ? { ppm, atMs: state.endMs } : old;
}
