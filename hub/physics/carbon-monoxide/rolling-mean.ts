/**
 * A mean over the last so many minutes, in bounded memory.
 *
 * Time is kept in buckets on a grid that begins with the watch. Inside the
 * oldest bucket the level is taken as even; a bucket is a small part of the
 * window, so the mean is exact where levels change on the grid and within one
 * bucket's share of the window elsewhere.
 */

import type { Stretch } from './curve.ts';

/** Sums over time: ppm ms of measured time, ppm ms of filled gaps, and how much time each is. */
export interface Tally {
  readonly measuredPpmMs: number;
  readonly measuredMs: number;
  readonly filledPpmMs: number;
  readonly filledMs: number;
  readonly unknownMs: number;
}

export const EMPTY_TALLY: Tally = {
  measuredPpmMs: 0,
  measuredMs: 0,
  filledPpmMs: 0,
  filledMs: 0,
  unknownMs: 0,
};

/** `windowMs` is a whole number of buckets. */
export interface RollingWindow {
  readonly windowMs: number;
  readonly bucketMs: number;
}

interface Bucket {
  readonly index: number;
  readonly tally: Tally;
}

/**
 * `closed` holds at most windowMs / bucketMs buckets, oldest first. The window always ends in the open bucket,
 * so it cuts through one closed bucket at most: `cut`. The others lie in it whole and are summed once a bucket.
 */
export interface RollingState {
  readonly startMs: number;
  /** End of the last span. */
  readonly endMs: number;
  readonly closed: readonly Bucket[];
  readonly cut: Bucket | null;
  readonly whole: Tally;
  readonly open: Bucket;
}

export function startRolling(startMs: number): RollingState {
  const open = { index: 0, tally: EMPTY_TALLY };
  return { startMs, endMs: startMs, closed: [], cut: null, whole: EMPTY_TALLY, open };
}

/** The tally with a stretch of time added. */
export function addToTally(tally: Tally, span: Stretch): Tally {
  const ms = span.toMs - span.fromMs;
  if (span.ppm === null) return { ...tally, unknownMs: tally.unknownMs + ms };
  const ppmMs = span.ppm * ms;
  if (span.measured) {
    return {
      ...tally,
      measuredPpmMs: tally.measuredPpmMs + ppmMs,
      measuredMs: tally.measuredMs + ms,
    };
  }
  return { ...tally, filledPpmMs: tally.filledPpmMs + ppmMs, filledMs: tally.filledMs + ms };
}

/** The state with a span added; spans follow one another without a hole. */
export function addToRolling(state: RollingState, span: Stretch, window: RollingWindow): RollingState {
  const { bucketMs, windowMs } = window;
  let next = state;
  // What is older than the window can never be read again, so a span of days costs no more than one of the window.
  const kept = Math.max(span.fromMs, span.toMs - windowMs - bucketMs);
  for (let fromMs = kept; fromMs < span.toMs; ) {
    const index = Math.floor((fromMs - state.startMs) / bucketMs);
    const toMs = Math.min(span.toMs, state.startMs + (index + 1) * bucketMs);
    next = openBucket(next, index, window);
    const tally = addToTally(next.open.tally, { ...span, fromMs, toMs });
    next = { ...next, endMs: toMs, open: { index, tally } };
    fromMs = toMs;
  }
  return next;
}

function openBucket(state: RollingState, index: number, window: RollingWindow): RollingState {
  if (state.open.index === index) return state;
  const oldest = index - Math.round(window.windowMs / window.bucketMs);
  const closed = [...state.closed, state.open];
  while (closed[0] !== undefined && closed[0].index < oldest) closed.shift();
  const cut = closed[0]?.index === oldest ? closed[0] : null;
  const whole = sumOf(cut === null ? closed : closed.slice(1));
  return { ...state, closed, cut, whole, open: { index, tally: EMPTY_TALLY } };
}

/** What the window that ends with the last span holds. */
export function rollingTally(state: RollingState, window: RollingWindow): Tally {
  const sum = add(state.whole, state.open.tally, 1);
  if (state.cut === null) return sum;
  const firstMs = state.endMs - window.windowMs;
  const cutEndMs = state.startMs + (state.cut.index + 1) * window.bucketMs;
  return add(sum, state.cut.tally, Math.max(0, (cutEndMs - firstMs) / window.bucketMs));
}

/** One pass without intermediate objects: this is most of what an exposure costs. */
function sumOf(buckets: readonly Bucket[]): Tally {
  let [measuredPpmMs, measuredMs, filledPpmMs, filledMs, unknownMs] = [0, 0, 0, 0, 0];
  for (const { tally } of buckets) {
    measuredPpmMs += tally.measuredPpmMs;
    measuredMs += tally.measuredMs;
    filledPpmMs += tally.filledPpmMs;
    filledMs += tally.filledMs;
    unknownMs += tally.unknownMs;
  }
  return { measuredPpmMs, measuredMs, filledPpmMs, filledMs, unknownMs };
}

function add(sum: Tally, part: Tally, share: number): Tally {
  return {
    measuredPpmMs: sum.measuredPpmMs + part.measuredPpmMs * share,
    measuredMs: sum.measuredMs + part.measuredMs * share,
    filledPpmMs: sum.filledPpmMs + part.filledPpmMs * share,
    filledMs: sum.filledMs + part.filledMs * share,
    unknownMs: sum.unknownMs + part.unknownMs * share,
  };
}
