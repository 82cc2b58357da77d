import { ALARM_DEFINITIONS, deadbandOf } from '../alarms/definitions.ts';
import { aboveLimit, type Delays, stepCondition } from '../judging/condition.ts';
import { isCounting } from './advance.ts';
import { setCondition } from './finding-events.ts';
import { isWarned, lookAhead } from './forecast/ahead.ts';
import { endsWithin, isRecovering } from './forecast/slowing.ts';
import { takeSnapshot } from './forecast/snapshot.ts';
import { type Band, bandOf } from './limits.ts';
import { isOnCore } from './load/load.ts';
import { paceSignal } from './pace.ts';
import { SECONDS_PER_HOUR } from './rates.ts';
import { withSegment } from './track.ts';
import { CONDITION_NAMES, type ConditionName, type FiringCase, type FiringState } from './types.ts';
import { type Measured, type View, viewOf } from './view.ts';

/** The conditions of a firing, stepped once an input. Four of them are findings, three guide the next move. */

/** A temperature that counts as nearer: above the noise of a thermocouple at hand. Common practice, no source. */
const PROGRESS_CELSIUS = 2;

/** A soak on its way up that has come no nearer for this long is not on its way. Common practice, no source. */
const APPROACH_GRACE_MS = 60_000;

const GUIDES: Readonly<Record<'soak-outside' | 'too-fast' | 'too-slow', Delays>> = {
  'soak-outside': { onDelayMs: 10_000, offDelayMs: 5000 },
  'too-fast': { onDelayMs: 30_000, offDelayMs: 15_000 },
  'too-slow': { onDelayMs: 30_000, offDelayMs: 15_000 },
};

function delaysOf(c: FiringCase, name: ConditionName): Delays {
  if (name === 'soak-outside' || name === 'too-fast' || name === 'too-slow') return GUIDES[name];
  const { onDelayMs, offDelayMs } = ALARM_DEFINITIONS[name];
  if (name === 'soak-stalled') return { onDelayMs: c.settings.soakStalledSeconds * 1000, offDelayMs };
  return { onDelayMs, offDelayMs };
}

/** What every condition looks at, read once a step. */
interface Instant {
  readonly view: View;
  readonly counting: boolean;
}

/** Steps every condition at the instant the state stands at, and tells what was raised and cleared. */
export function stepConditions(c: FiringCase, state: FiringState): FiringState {
  let next = takeSnapshot(c, lookAhead(c, noteProgress(c, state)));
  const now: Instant = { view: viewOf(c, next), counting: isCounting(c, next) };
  for (const name of CONDITION_NAMES) {
    const signal = { active: signalOf(c, next, name, now), at: next.at };
    next = setCondition(c, next, name, stepCondition(next.conditions[name], signal, delaysOf(c, name)));
  }
  return next;
}

/** True, false, or null while nobody can tell. */
function signalOf(c: FiringCase, state: FiringState, name: ConditionName, now: Instant): boolean | null {
  const { view, counting } = now;
  const segment = c.schedule.segments[state.index];
  if (state.finishedAt !== null || segment === undefined) return false;
  if (view.kind === 'unwatched') return false;
  if (view.kind === 'blind') return null;
  const band = bandOf(segment);
  switch (name) {
    case 'overshoot':
      return band !== null && isOvershoot(state, view, band);
    case 'overshoot-ahead':
      return band !== null && isOvershootAhead(state, view, band);
    case 'soak-stalled':
      return band !== null && isSoakStalled(c, state, now, band);
    case 'soak-outside':
      return segment.kind === 'soak' && isOutside(c, view, counting, band);
    case 'ramp-stalled':
      return isRampStalled(c, state);
    case 'too-fast':
      return paceSignal(c, state, view, 'too-fast');
    case 'too-slow':
      return paceSignal(c, state, view, 'too-slow');
    default:
      throw name satisfies never;
  }
}

function isGoingDown(state: FiringState): boolean {
  return state.segments[state.index]?.direction === 'down';
}

function isOvershoot(state: FiringState, view: Measured, band: Band): boolean {
  if (isGoingDown(state)) return false;
  const deadband = deadbandOf('overshoot', band.high, band.high - band.target);
  return aboveLimit(state.conditions.overshoot.raised, view.hottest, band.high, deadband);
}

function isOvershootAhead(state: FiringState, view: Measured, band: Band): boolean {
  if (isGoingDown(state) || state.conditions.overshoot.raised || view.hottest > band.high) return false;
  const { raised, signal } = state.conditions['overshoot-ahead'];
  if (!isWarned(raised || signal, state.ahead)) return false;
  if (isRecovering(state.hottestWindow)) return false;
  return !endsWithin(state.hottestWindow, band.high - view.hottest);
}

/**
 * With a clock on the core it is the furnace that a hand can do something about: a core that still comes up in a
 * furnace that is right is on its way.
 */
function isOutside(c: FiringCase, view: Measured, counting: boolean, band: Band | null): boolean {
  if (!isOnCore(c) || band === null) return !counting;
  return view.coldest < band.low || view.coldest > band.high;
}

/** How much nearer the target counts as progress in this ramp, °C. */
function progressStep(c: FiringCase, state: FiringState): number {
  const segment = c.schedule.segments[state.index];
  if (segment?.kind !== 'ramp' || segment.rateCelsiusPerHour === null) return PROGRESS_CELSIUS;
  const planned = (segment.rateCelsiusPerHour / SECONDS_PER_HOUR) * c.settings.rampStalledSeconds;
  return Math.min(PROGRESS_CELSIUS, planned / 2);
}

/** True while the running segment still has to come near its target: a ramp, or a soak that never counted. */
function isApproach(c: FiringCase, state: FiringState): boolean {
  const kind = c.schedule.segments[state.index]?.kind;
  return kind === 'ramp' || (kind === 'soak' && state.segments[state.index]?.soakMs === 0);
}

/** Remembers the nearest approach to the target, and forgets the time since when it comes nearer. */
function noteProgress(c: FiringCase, state: FiringState): FiringState {
  const track = state.segments[state.index];
  const view = viewOf(c, state);
  if (track === undefined || view.kind !== 'seen' || !isApproach(c, state)) return state;
  const down = track.direction === 'down';
  const value = down ? view.hottest : view.coldest;
  const gained = track.markCelsius === null ? null : (value - track.markCelsius) * (down ? -1 : 1);
  if (gained !== null && gained < progressStep(c, state)) return state;
  return withSegment(state, state.index, { markCelsius: value, sinceMarkMs: 0 });
}

/**
 * The clock stands while it should count. Above the band too, but that is the overshoot's to say: one trouble,
 * one alarm. A soak that never counted and still comes nearer is heating up, not stalled.
 */
function isSoakStalled(c: FiringCase, state: FiringState, { view, counting }: Instant, band: Band): boolean {
  const track = state.segments[state.index];
  if (c.schedule.segments[state.index]?.kind !== 'soak' || track === undefined) return false;
  if (counting || view.kind !== 'seen' || view.coldest > band.high) return false;
  if (isOnCore(c) && view.coldest >= band.low) return false;
  return track.soakMs > 0 || track.sinceMarkMs >= APPROACH_GRACE_MS;
}

function isRampStalled(c: FiringCase, state: FiringState): boolean {
  const track = state.segments[state.index];
  if (track === undefined || c.schedule.segments[state.index]?.kind !== 'ramp') return false;
  return track.sinceMarkMs >= c.settings.rampStalledSeconds * 1000;
}
