import { lineTrend, type Sample, type Trend } from '../../judging/slope.ts';

/**
 * A rise that is plainly coming to its end. The estimator knows furnaces whose rise dies away over minutes; one that
 * dies away in seconds (a controller that cuts off, a chamber that recovers behind a door that was shut) it follows
 * too slowly. There the slopes of both ends of the last minute tell more: in a first-order approach they fall in a
 * fixed ratio, and what is still to come follows from it.
 */

/** The newest part of the window: fast changes show in fewer seconds, and have to. */
const RECENT_MS = [25_000, 12_000] as const;
const FAST_PER_SECOND = 0.3;
/** A change of slope below this many of its standard errors is noise. */
const SURE = 3;
/** At rest: what rises no more than this rises no more. */
const REST_PER_SECOND = 0.005;

interface Part {
  readonly trend: Trend;
  /** Middle of the part, s. */
  readonly middle: number;
}

function partOf(samples: readonly Sample[]): Part | null {
  const first = samples[0];
  const last = samples.at(-1);
  const trend = lineTrend(samples);
  if (first === undefined || last === undefined || trend === null) return null;
  return { trend, middle: (first.at + last.at) / 2000 };
}

/** Deeper than a wobble: a door was open, or cold steel went in. Ours. */
const DIP_CELSIUS = 15;
/** A probe comes back from a dip faster than the walls about it; its slope tells of the heat only after this. Ours. */
const RECOVERY_MS = 25_000;

function placeOfLowest(window: readonly Sample[]): number {
  let lowest = 0;
  for (const [i, sample] of window.entries()) {
    if (sample.value < (window[lowest]?.value ?? sample.value)) lowest = i;
  }
  return lowest;
}

/** From the lowest point on: before that lies a door that was opened, or a dip. */
function sinceLowest(window: readonly Sample[]): readonly Sample[] {
  return window.slice(placeOfLowest(window));
}

/** True while the probe comes back from a dip: how fast it rises says nothing yet of where it will end. */
export function isRecovering(window: readonly Sample[]): boolean {
  const place = placeOfLowest(window);
  const lowest = window[place];
  const last = window.at(-1);
  if (lowest === undefined || last === undefined) return false;
  let before = lowest.value;
  for (let i = 0; i < place; i++) before = Math.max(before, window[i]?.value ?? before);
  return before - lowest.value > DIP_CELSIUS && last.at - lowest.at < RECOVERY_MS;
}

/** True when the slopes say for sure that the rise ends before another `distance` (°C). */
export function endsWithin(window: readonly Sample[], distance: number): boolean {
  const rise = sinceLowest(window);
  const end = rise.at(-1)?.at ?? 0;
  return RECENT_MS.some((recentMs) => {
    const recent = partOf(rise.filter(({ at }) => at > end - recentMs));
    const before = partOf(rise.filter(({ at }) => at <= end - recentMs));
    if (recent === null || before === null) return false;
    if (recentMs < RECENT_MS[0] && before.trend.perSecond < FAST_PER_SECOND) return false;
    return isEnding(before, recent, end / 1000, distance);
  });
}

function isEnding(before: Part, recent: Part, end: number, distance: number): boolean {
  const was = before.trend.perSecond;
  const is = recent.trend.perSecond;
  const error = Math.hypot(before.trend.error, recent.trend.error);
  if (was - is < SURE * error || was <= 0) return false;
  if (is <= REST_PER_SECOND) return true;
  const perSecond = Math.log(was / is) / (recent.middle - before.middle);
  const now = is * Math.exp(-perSecond * (end - recent.middle));
  return now / perSecond < distance;
}
