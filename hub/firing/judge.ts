import type { Finding } from '../contract/alarm.ts';
import type { FiringJudgement, NextMove } from '../contract/firing.ts';
import { QUIET } from '../judging/condition.ts';
import { requireForward } from '../judging/errors.ts';
import { holdReading, NEVER_SEEN } from '../judging/held.ts';
import { advanceTo, sampleTrend, settle, settleBlindness } from './advance.ts';
import { startArrests, watchArrests } from './arrests.ts';
import { stepConditions } from './conditions.ts';
import { estimate } from './estimate.ts';
import { FINDING_CONDITIONS } from './finding-events.ts';
import { paramsOf } from './finding-params.ts';
import { NOT_AHEAD } from './forecast/ahead.ts';
import { foresee } from './forecast/channels.ts';
import { NO_SNAPSHOT } from './forecast/snapshot.ts';
import { buildJudgement } from './judgement.ts';
import { nextMove } from './next-move.ts';
import { confirmSegment, finishFiring, observe } from './segments.ts';
import { WAITING } from './track.ts';
import { type FiringCase, type FiringInput, type FiringState, instantOf } from './types.ts';

/**
 * The judge of a firing: a pure function from a state and an input to the next state. It reads no clock, no
 * archive and no network, so a restart is a replay, and so is a late reading.
 */

/** Changes with every change of judgement, so that a kept verdict says by which rules it was made. */
export const JUDGE_VERSION = 'firing-3';

/**
 * The state before the first input. It stands as far before `startedAt` as a reading can be and still be
 * fresh at the start: readings from there on make the firing begin with eyes open.
 */
export function startFiring(c: FiringCase): FiringState {
  const lead = Math.max(0, ...c.watched.map((channel) => Math.round(channel.staleAfterSeconds * 1000)));
  return {
    at: Math.max(0, c.startedAt - lead),
    finishedAt: null,
    channels: c.watched.map(() => NEVER_SEEN),
    index: -1,
    segments: c.schedule.segments.map(() => WAITING),
    coldestWindow: [],
    hottestWindow: [],
    longWindow: [],
    blindSince: null,
    gaps: [],
    events: [],
    conditions: {
      overshoot: QUIET,
      'overshoot-ahead': QUIET,
      'soak-stalled': QUIET,
      'ramp-stalled': QUIET,
      'soak-outside': QUIET,
      'too-fast': QUIET,
      'too-slow': QUIET,
    },
    forecasters: c.watched.map(() => null),
    ahead: NOT_AHEAD,
    snapshot: NO_SNAPSHOT,
    load: null,
    arrests: startArrests(c),
  };
}

/**
 * The next state. Pure. After `finish` nothing changes any more.
 * @throws JudgeError `time-runs-back` when the input is older than the state
 */
export function stepFiring(c: FiringCase, state: FiringState, input: FiringInput): FiringState {
  if (state.finishedAt !== null) return state;
  const at = instantOf(input);
  requireForward(state.at, at, 'firing');
  const moved = advanceTo(c, state, at);
  const taken = settle(c, take(c, moved, input));
  if (taken.at < c.startedAt) return taken;
  return stepConditions(c, taken);
}

function take(c: FiringCase, state: FiringState, input: FiringInput): FiringState {
  switch (input.kind) {
    case 'tick':
      return state;
    case 'confirm':
      return confirmSegment(c, state, input.segment);
    case 'finish':
      return settleBlindness(c, finishFiring(c, state));
    case 'reading':
      return takeReading(c, state, input);
    default:
      throw input satisfies never;
  }
}

function takeReading(
  c: FiringCase,
  state: FiringState,
  input: Extract<FiringInput, { kind: 'reading' }>,
): FiringState {
  const { reading } = input;
  const place = c.watched.findIndex((channel) => channel.id === reading.channel);
  const held = state.channels[place];
  if (held === undefined || reading.quality !== 'good') return state;
  const channels = state.channels.map((old, i) => (i === place ? holdReading(old, reading) : old));
  const forecasters = foresee(c, state, place, reading);
  const seen = settleBlindness(c, { ...state, channels, forecasters });
  return watchArrests(c, sampleTrend(c, observe(c, seen)), place, reading);
}

/** What the judge notices at the instant the state stands at, loudest first. */
export function findingsOf(c: FiringCase, state: FiringState): Finding[] {
  const found: Finding[] = [];
  for (const kind of FINDING_CONDITIONS) {
    const { raised, since } = state.conditions[kind];
    if (!raised || since === null) continue;
    found.push({ kind, subject: c.firingId, since, params: paramsOf(c, state, kind) });
  }
  return found;
}

/** The next move alone: what is asked at every step costs no forecast. */
export function nextMoveOf(c: FiringCase, state: FiringState): NextMove {
  return nextMove(c, state, estimate(c, state));
}

/** Everything that people and programs are told about the firing at the instant the state stands at. */
export function judgementOf(c: FiringCase, state: FiringState): FiringJudgement {
  return buildJudgement(c, state, JUDGE_VERSION);
}
