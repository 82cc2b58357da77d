import type { Params } from '../contract/alarm.ts';
import { bandOf } from './limits.ts';
import { overshootAheadSeconds } from './look-ahead.ts';
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

/** Numbers of `name` at the instant the state stands at. Temperatures °C, rates °C/h, times s. */
export function paramsOf(c: FiringCase, state: FiringState, name: ConditionName): Params {
  const segment = c.schedule.segments[state.index];
  const band = bandOf(segment);
  const last = measure(c, state.channels, segment, null);
  const track = state.segments[state.index];
  const rate = shortRate(state.coldestWindow);
  const rateCelsiusPerHour = rate === null ? null : rate * SECONDS_PER_HOUR;
  const shared = {
    ...common(c),
    segment: state.index,
    targetCelsius: segment?.targetCelsius ?? null,
    lowCelsius: band?.low ?? null,
    highCelsius: band?.high ?? null,
    rateCelsiusPerHour,
  };
  if (name === 'overshoot' || name === 'overshoot-ahead') {
    const seconds =
      name === 'overshoot-ahead' && last !== null && band !== null
        ? overshootAheadSeconds(c, state, last, band)
        : null;
    return {
      ...shared,
      measuredCelsius: last?.hottest ?? null,
      limitCelsius: band?.high ?? null,
      channel: last?.hottestChannel ?? null,
      ...(name === 'overshoot-ahead' ? { secondsAhead: seconds } : {}),
    };
  }
  const coldest = {
    ...shared,
    measuredCelsius: last?.coldest ?? null,
    limitCelsius: band?.low ?? null,
    channel: last?.coldestChannel ?? null,
  };
  if (name === 'ramp-stalled') return { ...coldest, stalledSeconds: (track?.sinceMarkMs ?? 0) / 1000 };
  const since = state.conditions[name].signalSince;
  return {
    ...coldest,
    soakSeconds: (track?.soakMs ?? 0) / 1000,
    stalledSeconds: since === null ? null : (state.at - since) / 1000,
  };
}
