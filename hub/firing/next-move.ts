import type { Params } from '../contract/alarm.ts';
import type { NextMove, NextMoveCode } from '../contract/firing.ts';
import type { CoolSegment } from '../contract/schedule.ts';
import { words } from '../contract/words/words.ts';
import { isCounting } from './advance.ts';
import type { Estimates } from './estimate.ts';
import { secondsAhead } from './forecast/ahead.ts';
import { bandOf } from './limits.ts';
import { isOnCore } from './load/load.ts';
import { rateLimits } from './pace.ts';
import { SECONDS_PER_HOUR } from './rates.ts';
import { waitsForSmith } from './segments.ts';
import type { FiringCase, FiringState } from './types.ts';
import { isAway, viewOf } from './view.ts';

/** The one sentence for the smith, now. */
export function nextMove(c: FiringCase, state: FiringState, estimates: Estimates): NextMove {
  const code = moveCode(c, state);
  const params = moveParams(c, state, { ...estimates, code });
  return { code, params, text: words(c.settings.language).nextMove(code, params, c.schedule.displayUnit) };
}

/** Order matters: what the hand must do comes before what the eye should know. */
function moveCode(c: FiringCase, state: FiringState): NextMoveCode {
  const segment = c.schedule.segments[state.index];
  if (state.finishedAt !== null) return 'done';
  if (segment === undefined && state.index >= 0) return afterwards(c);
  if (segment?.kind === 'cool' && waitsForSmith(c, state)) return awayMove(segment.medium);
  if (state.blindSince !== null || segment === undefined) return 'no-reading';
  const { conditions } = state;
  if (segment.kind === 'cool') {
    if (conditions['too-fast'].raised) return 'cool-slower';
    if (conditions['too-slow'].raised) return 'cool-faster';
    return isAway(segment) ? 'wait-cooling' : 'cool-furnace';
  }
  if (conditions.overshoot.raised) return 'turn-down';
  if (conditions['overshoot-ahead'].raised) return 'ease-off';
  return segment.kind === 'ramp' ? rampMove(state) : soakMove(c, state);
}

/** The schedule is over: what the piece wants now. */
function afterwards(c: FiringCase): NextMoveCode {
  const last = c.schedule.segments.at(-1);
  if (last?.kind !== 'cool') return 'done';
  if (isBuried(last)) return 'leave-buried';
  return last.medium === 'quench' ? 'temper-soon' : 'done';
}

function isBuried({ medium }: CoolSegment): boolean {
  return medium === 'ash' || medium === 'vermiculite';
}

function awayMove(medium: CoolSegment['medium']): NextMoveCode {
  if (medium === 'quench') return 'quench-now';
  return medium === 'still-air' ? 'cool-still-air' : 'cool-bury';
}

function rampMove(state: FiringState): NextMoveCode {
  const { conditions } = state;
  if (conditions['ramp-stalled'].raised || conditions['too-slow'].raised) return 'heat-up-faster';
  return conditions['too-fast'].raised ? 'heat-up-slower' : 'heat-up';
}

/** Until the clock has really stopped (not by a flicker of the probe), the word is hold. */
function soakMove(c: FiringCase, state: FiringState): NextMoveCode {
  const { conditions } = state;
  if (conditions['soak-stalled'].raised) return 'hold-raise';
  if (isOnItsWay(c, state)) return 'heat-up';
  if (conditions['soak-outside'].raised) return 'hold-raise';
  if (isOnCore(c) && !isCounting(c, state)) return 'wait-core';
  return isTurn(c, state) ? 'turn-piece' : 'hold';
}

/** A soak shorter than this needs no turning. Common practice, no source. */
const TURN_FROM_SECONDS = 600;
/** How long the wall says it, on the soak clock. */
const TURN_FOR_MS = 45_000;

/** Halfway through a long soak in a forge, where a flame heats from one side and somebody stands by. */
function isTurn(c: FiringCase, state: FiringState): boolean {
  const segment = c.schedule.segments[state.index];
  const soakMs = state.segments[state.index]?.soakMs ?? 0;
  if (c.furnaceKind !== 'gas-forge' || segment?.kind !== 'soak') return false;
  if (segment.durationSeconds < TURN_FROM_SECONDS) return false;
  const half = segment.durationSeconds * 500;
  return soakMs >= half && soakMs < half + TURN_FOR_MS;
}

/** A soak whose clock never ran, below its band: it is still being heated. */
function isOnItsWay(c: FiringCase, state: FiringState): boolean {
  const band = bandOf(c.schedule.segments[state.index]);
  const view = viewOf(c, state);
  if (band === null || view.kind !== 'seen' || state.segments[state.index]?.soakMs !== 0) return false;
  return view.coldest < band.low;
}

/** The segment before the running one was a soak, and it got all its time. */
function wasSoaked(c: FiringCase, state: FiringState): boolean {
  const before = state.index - 1;
  return c.schedule.segments[before]?.kind === 'soak' && state.segments[before]?.state === 'done';
}

/** Of a soak what its clock still lacks; of anything else the time until it gets there. Seconds, or null. */
function secondsLeft(
  c: FiringCase,
  state: FiringState,
  { code, arrivalAt, endsAt }: Estimates & { readonly code: NextMoveCode },
): number | null {
  const segment = c.schedule.segments[state.index];
  const track = state.segments[state.index];
  if (segment?.kind === 'soak' && track !== undefined && code !== 'heat-up') {
    if (code === 'wait-core') return endsAt === null ? null : Math.max(0, endsAt - state.at) / 1000;
    return Math.max(0, segment.durationSeconds - track.soakMs / 1000);
  }
  const until = segment?.kind === 'soak' ? arrivalAt : endsAt;
  return until === null ? null : Math.max(0, until - state.at) / 1000;
}

function moveParams(
  c: FiringCase,
  state: FiringState,
  told: Estimates & { readonly code: NextMoveCode },
): Params {
  const segment = c.schedule.segments[state.index];
  const track = state.segments[state.index];
  const limits = rateLimits(c, state.index);
  const perHour = (rate: number | null) => (rate === null ? null : rate * SECONDS_PER_HOUR);
  return {
    targetCelsius: segment?.targetCelsius ?? null,
    secondsLeft: secondsLeft(c, state, told),
    furnaceKind: c.furnaceKind,
    medium: segment?.kind === 'cool' ? segment.medium : null,
    direction: track?.direction ?? null,
    leastCelsiusPerHour: perHour(limits.least),
    mostCelsiusPerHour: perHour(limits.most),
    finished: state.finishedAt === null ? 0 : 1,
    stalled: state.conditions['ramp-stalled'].raised ? 1 : 0,
    limitCelsius: bandOf(segment)?.high ?? null,
    secondsAhead: told.code === 'ease-off' ? secondsAhead(state) : null,
    counting: isCounting(c, state) ? 1 : 0,
    soaked: wasSoaked(c, state) ? 1 : 0,
  };
}
