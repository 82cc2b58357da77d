import { crossing, OVERSHOOT_WARNING } from '../../physics/forecast/crossing.ts';
import { type Forecaster, meanPerSecond, standing } from '../../physics/forecast/forecaster.ts';
import { FARTHEST_SECONDS } from '../../physics/forecast/outlook.ts';
import { bandOf } from '../limits.ts';
import type { FiringCase, FiringState } from '../types.ts';
import { counts, viewOf } from '../view.ts';
import { isFollowingPlan } from './trust.ts';

/** Overshoot ahead: how probable it is that a watched channel crosses the upper limit within the time looked at. */

export interface Ahead {
  /** When it was asked last, epoch ms, and how fast the fastest watched channel rose then, °C per second. */
  readonly askedAt: number;
  readonly askedAtPerSecond: number;
  readonly probability: number;
  /** As likely crossed as not at this instant, epoch ms; null: not within the time looked at. */
  readonly likelyMs: number | null;
  /** The channel that it is told of. */
  readonly channel: string | null;
}

export const NOT_AHEAD: Ahead = {
  askedAt: Number.NEGATIVE_INFINITY,
  askedAtPerSecond: 0,
  probability: 0,
  likelyMs: null,
  channel: null,
};

/** The answer is good for this long: two minutes are looked at. A doubtful one is asked again sooner. */
const ASK_EVERY_MS = 5000;
const DOUBTFUL = { from: 0.05, everyMs: 2000 } as const;
/** Once told it stands until the odds are clearly against it. Ours. */
const LET_GO = 0.35;
/** A controller that cuts off at its target shows it in the readings only some seconds later. Ours. */
const CUT_OFF_SECONDS = 20;
const CUT_OFF_SHARE = 0.2;
/** Standard deviations of level and slope within which a limit is not worth the question. */
const FAR = { level: 3, slope: 3 } as const;

/** An answer is no good any more once the temperature rises this much faster, °C per second. Ours. */
const FASTER_PER_SECOND = 0.02;
/** A rise that dies away is foretold a little too steep, and nobody is to be told sooner than is set. Ours. */
const LOOKED_AT_SHARE = 0.9;
/** A forecaster that has just begun knows nothing yet. Ours. */
const WARM_UP_MS = 30_000;
/** No outlook is shorter. */
const LEAST_SECONDS = 5;

/** Asks again when the answer is old, or when the temperature has begun to rise faster since. */
export function lookAhead(c: FiringCase, state: FiringState): FiringState {
  const every = state.ahead.probability < DOUBTFUL.from ? ASK_EVERY_MS : DOUBTFUL.everyMs;
  const perSecond = fastestPerSecond(state);
  const isFaster = perSecond > state.ahead.askedAtPerSecond + FASTER_PER_SECOND;
  if (state.at - state.ahead.askedAt < every && !isFaster) return state;
  return { ...state, ahead: { ...ahead(c, state), askedAt: state.at, askedAtPerSecond: perSecond } };
}

function fastestPerSecond({ forecasters }: FiringState): number {
  let fastest = Number.NEGATIVE_INFINITY;
  for (const forecaster of forecasters) {
    if (forecaster !== null) fastest = Math.max(fastest, meanPerSecond(forecaster));
  }
  return fastest;
}

function ahead(c: FiringCase, state: FiringState): Ahead {
  const segment = c.schedule.segments[state.index];
  const band = bandOf(segment);
  if (band === null || state.segments[state.index]?.direction === 'down') return NOT_AHEAD;
  if (viewOf(c, state).kind !== 'seen') return NOT_AHEAD;
  let most = NOT_AHEAD;
  for (const [i, channel] of c.watched.entries()) {
    const forecaster = state.forecasters[i];
    if (forecaster == null || !counts(channel, segment)) continue;
    if (forecaster.atMs - forecaster.sinceMs < WARM_UP_MS) continue;
    const found = askOne(c, state, forecaster, band);
    if (found.probability > most.probability) most = { ...found, channel: channel.id };
  }
  return most;
}

function askOne(
  c: FiringCase,
  state: FiringState,
  forecaster: Forecaster,
  band: { readonly target: number; readonly high: number },
): Ahead {
  const withinSeconds = Math.max(LEAST_SECONDS, c.settings.overshootAheadSeconds * LOOKED_AT_SHARE);
  const now = standing(forecaster);
  const rise = Math.max(0, now.perSecond + FAR.slope * now.perSecondDeviation) * withinSeconds;
  if (now.celsius + FAR.level * now.deviationCelsius + rise < band.high) return NOT_AHEAD;
  const past = Math.max(now.perSecond * CUT_OFF_SECONDS, (band.high - band.target) * CUT_OFF_SHARE);
  // Trust that is lost does not come back with the next segment: what was told is let go by its own odds.
  const isTold = state.conditions['overshoot-ahead'].raised;
  if (!isTold && now.celsius < band.target + past && isFollowingPlan(c, state, forecaster)) return NOT_AHEAD;
  const question = { limitCelsius: band.high, direction: 'rising', withinSeconds } as const;
  const { probability, likelyMs } = crossing(forecaster, question);
  if (likelyMs !== null || probability < LET_GO) return { ...NOT_AHEAD, probability, likelyMs };
  // Told, and as likely as not only a little later than was looked at: whoever is warned wants the seconds.
  const farther = crossing(forecaster, {
    ...question,
    withinSeconds: Math.min(FARTHEST_SECONDS, 2 * withinSeconds),
  });
  return { ...NOT_AHEAD, probability, likelyMs: farther.likelyMs };
}

/** True when the smith is to be warned; `raised`: already is. */
export function isWarned(raised: boolean, { probability }: Ahead): boolean {
  return probability >= (raised ? LET_GO : OVERSHOOT_WARNING.probability);
}

/** Seconds until the limit is as likely crossed as not, from the instant of the state; null when it is not. */
export function secondsAhead(state: FiringState): number | null {
  const { likelyMs } = state.ahead;
  return likelyMs === null ? null : Math.max(0, (likelyMs - state.at) / 1000);
}
