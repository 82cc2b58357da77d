import type { Params } from '../contract/alarm.ts';
import { secondsAhead } from './forecast/ahead.ts';
import { bandOf } from './limits.ts';
import { SECONDS_PER_HOUR, shortRate } from './rates.ts';
import type { ConditionName, FiringCase, FiringState } from './types.ts';
import { measure } from './view.ts';

/** The numbers of a finding. While blind they are the last good ones; null where none was ever seen. */

function common(c: FiringCase): Params {
  return {
    firingId: c.firingId,
    furnaceId: c.furnaceId,
    furnaceName: c.furnaceName,
    furnaceKind: c.furnaceKind,
  };
}

/** What a finding about heat always tells: the plan, and how fast it goes. */
function shared(c: FiringCase, state: FiringState): Params {
  const segment = c.schedule.segments[state.index];
  const band = bandOf(segment);
  const rate = shortRate(state.coldestWindow);
  return {
    ...common(c),
    segment: state.index,
    targetCelsius: segment?.targetCelsius ?? null,
    lowCelsius: band?.low ?? null,
    highCelsius: band?.high ?? null,
    rateCelsiusPerHour: rate === null ? null : rate * SECONDS_PER_HOUR,
  };
}

function hotParams(c: FiringCase, state: FiringState, ahead: boolean): Params {
  const segment = c.schedule.segments[state.index];
  const band = bandOf(segment);
  const last = measure(c, state.channels, segment, null);
  return {
    ...shared(c, state),
    measuredCelsius: last?.hottest ?? null,
    limitCelsius: band?.high ?? null,
    channel: (ahead ? state.ahead.channel : null) ?? last?.hottestChannel ?? null,
    ...(ahead ? { secondsAhead: secondsAhead(state), probability: state.ahead.probability } : {}),
  };
}

function coldParams(c: FiringCase, state: FiringState): Params {
  const segment = c.schedule.segments[state.index];
  const last = measure(c, state.channels, segment, null);
  return {
    ...shared(c, state),
    measuredCelsius: last?.coldest ?? null,
    limitCelsius: bandOf(segment)?.low ?? null,
    channel: last?.coldestChannel ?? null,
  };
}

/** Numbers of `name` at the instant the state stands at. Temperatures °C, rates °C/h, times s. */
export function paramsOf(c: FiringCase, state: FiringState, name: ConditionName): Params {
  const track = state.segments[state.index];
  if (name === 'overshoot' || name === 'overshoot-ahead') {
    return hotParams(c, state, name === 'overshoot-ahead');
  }
  const cold = coldParams(c, state);
  if (name === 'ramp-stalled') return { ...cold, stalledSeconds: (track?.sinceMarkMs ?? 0) / 1000 };
  const since = state.conditions[name].signalSince;
  return {
    ...cold,
    soakSeconds: (track?.soakMs ?? 0) / 1000,
    stalledSeconds: since === null ? null : (state.at - since) / 1000,
  };
}
