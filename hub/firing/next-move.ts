import type { Params } from '../contract/alarm.ts';
import type { NextMove, NextMoveCode } from '../contract/firing.ts';
import type { CoolSegment } from '../contract/schedule.ts';
import { words } from '../contract/words/words.ts';
import type { Estimates } from './estimate.ts';
import { rateLimits } from './pace.ts';
import { SECONDS_PER_HOUR } from './rates.ts';
import { waitsForSmith } from './segments.ts';
import type { FiringCase, FiringState } from './types.ts';
import { isAway } from './view.ts';

/** The one sentence for the smith, now. */
export function nextMove(c: FiringCase, state: FiringState, estimates: Estimates): NextMove {
  const code = moveCode(c, state);
  const params = moveParams(c, state, estimates);
  return { code, params, text: words('en').nextMove(code, params, c.schedule.displayUnit) };
}

/** Order matters: what the hand must do comes before what the eye should know. */
function moveCode(c: FiringCase, state: FiringState): NextMoveCode {
  const segment = c.schedule.segments[state.index];
  if (state.finishedAt !== null || (segment === undefined && state.index >= 0)) return 'done';
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
  return segment.kind === 'ramp' ? rampMove(state) : soakMove(state);
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
function soakMove(state: FiringState): NextMoveCode {
  return state.conditions['soak-outside'].raised || state.conditions['soak-stalled'].raised
    ? 'hold-raise'
    : 'hold';
}

function moveParams(c: FiringCase, state: FiringState, estimates: Estimates): Params {
  const segment = c.schedule.segments[state.index];
  const track = state.segments[state.index];
  const limits = rateLimits(c, state.index);
  const perHour = (rate: number | null) => (rate === null ? null : rate * SECONDS_PER_HOUR);
  const soakLeft =
    segment?.kind === 'soak' && track !== undefined
      ? Math.max(0, segment.durationSeconds - track.soakMs / 1000)
      : null;
  const until = estimates.endsAt === null ? null : Math.max(0, estimates.endsAt - state.at) / 1000;
  return {
    targetCelsius: segment?.targetCelsius ?? null,
    secondsLeft: soakLeft ?? until,
    furnaceKind: c.furnaceKind,
    medium: segment?.kind === 'cool' ? segment.medium : null,
    direction: track?.direction ?? null,
    leastCelsiusPerHour: perHour(limits.least),
    mostCelsiusPerHour: perHour(limits.most),
    finished: state.finishedAt === null ? 0 : 1,
    stalled: state.conditions['ramp-stalled'].raised ? 1 : 0,
  };
}
