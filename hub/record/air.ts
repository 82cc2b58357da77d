import type { RecordAir } from '../contract/firing-record.ts';
import type { Reading } from '../contract/reading.ts';
import {
  afterNews,
  type CurveRules,
  type Stretch,
  startCurve,
  stretchesUntil,
} from '../physics/carbon-monoxide/curve.ts';
import {
  addToRolling,
  addToTally,
  EMPTY_TALLY,
  type RollingWindow,
  rollingTally,
  startRolling,
} from '../physics/carbon-monoxide/rolling-mean.ts';

/** Carbon monoxide while a firing ran, as it was measured at one place. A gap is never zero and never filled. */

export interface AirQuestion {
  readonly channel: string;
  readonly label: string;
  readonly from: number;
  readonly to: number;
  /** Good readings count. */
  readonly readings: readonly Reading[];
  /** A reading is believed for this long, s. */
  readonly staleAfterSeconds: number;
}

/** Fifteen minutes, as short-term limits have it. */
const QUARTER_HOUR: RollingWindow = { windowMs: 900_000, bucketMs: 10_000 };
/** A quarter of an hour of which less was measured says nothing. */
const LEAST_MEASURED = 0.75;

export function recordAir({ channel, label, from, to, readings, staleAfterSeconds }: AirQuestion): RecordAir {
  const seen = readings.filter(({ at, quality }) => quality === 'good' && at >= from && at <= to);
  const top = seen.reduce<Reading | null>((a, b) => (a === null || b.value > a.value ? b : a), null);
  const stretches = stretchesOf(seen, from, to, staleAfterSeconds * 1000);
  const tally = stretches.reduce(addToTally, EMPTY_TALLY);
  return {
    channel,
    label,
    peakPpm: top?.value ?? null,
    peakAt: top?.at ?? null,
    worstQuarterHourPpm: worst(stretches, from),
    meanPpm: tally.measuredMs === 0 ? null : tally.measuredPpmMs / tally.measuredMs,
    measuredSeconds: tally.measuredMs / 1000,
    notMeasuredSeconds: Math.max(0, (to - from - tally.measuredMs) / 1000),
  };
}

function stretchesOf(readings: readonly Reading[], from: number, to: number, holdMs: number): Stretch[] {
  const rules: CurveRules = { longestHoldMs: holdMs, gap: { kind: 'unknown' } };
  let state = startCurve(from);
  const found: Stretch[] = [];
  for (const { at, value } of readings) {
    const news = { atMs: at, ppm: Math.max(0, value) };
    found.push(...stretchesUntil(state, news, rules));
    state = afterNews(state, news);
  }
  return [...found, ...stretchesUntil(state, { atMs: to, ppm: null }, rules)];
}

/** Looked at where a stretch ends: between, the mean lies between its values there. */
function worst(stretches: readonly Stretch[], from: number): number | null {
  let state = startRolling(from);
  let most: number | null = null;
  for (const stretch of stretches) {
    state = addToRolling(state, stretch, QUARTER_HOUR);
    const { measuredMs, measuredPpmMs } = rollingTally(state, QUARTER_HOUR);
    if (measuredMs < LEAST_MEASURED * QUARTER_HOUR.windowMs) continue;
    most = Math.max(most ?? 0, measuredPpmMs / measuredMs);
  }
  return most;
}
