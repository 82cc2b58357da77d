import type { SegmentResult } from '../contract/firing.ts';
import { words } from '../contract/words/words.ts';
import { isOnCore } from './load/load.ts';
import { SECONDS_PER_HOUR } from './rates.ts';
import type { FiringCase, FiringState, SegmentTrack } from './types.ts';
import { reasonsOf } from './verdict.ts';
import { viewOf } from './view.ts';

/** What each segment achieved, beside what was planned. */

/** The results of all segments at the instant the state stands at. */
export function resultsOf(c: FiringCase, state: FiringState): SegmentResult[] {
  return state.segments.map((track, index) => resultOf(c, state, track, index));
}

function resultOf(c: FiringCase, state: FiringState, track: SegmentTrack, index: number): SegmentResult {
  const skipped = track.state === 'waiting' && state.finishedAt !== null;
  const elapsedMs = track.startedAt === null ? 0 : (track.endedAt ?? state.at) - track.startedAt;
  const rate = meanRate(c, state, track, index, elapsedMs);
  const { verdict, reasons } = reasonsOf(c, state, index, rate);
  const say = words(c.settings.language).reason;
  return {
    index,
    state: skipped ? 'skipped' : track.state,
    startedAt: track.startedAt,
    endedAt: track.endedAt,
    startCelsius: track.startCelsius,
    endCelsius: track.endCelsius,
    soakSeconds: track.soakMs / 1000,
    soakSecondsCore: isOnCore(c) ? track.soakMs / 1000 : null,
    soakSecondsAir: track.airSoakMs / 1000,
    elapsedSeconds: elapsedMs / 1000,
    blindSeconds: track.blindMs / 1000,
    peakCelsius: track.peakCelsius,
    lowestCelsius: track.lowestCelsius,
    meanCelsius: track.seenMs > 0 ? track.coldestIntegral / track.seenMs : null,
    overshootCelsius:
      c.schedule.segments[index]?.kind === 'cool' || track.startedAt === null ? null : track.overCelsius,
    secondsAboveTolerance: track.aboveMs / 1000,
    meanRateCelsiusPerHour: rate,
    steepestRateCelsiusPerHour:
      track.steepestPerSecond === null ? null : track.steepestPerSecond * SECONDS_PER_HOUR,
    verdict,
    reasons: reasons.map(({ code, params }) => ({
      code,
      params,
      text: say(code, params, c.schedule.displayUnit),
    })),
  };
}

/** Mean rate of a ramp or a cooling from its first measured value to its last, °C/h, signed. */
function meanRate(
  c: FiringCase,
  state: FiringState,
  track: SegmentTrack,
  index: number,
  elapsedMs: number,
): number | null {
  const segment = c.schedule.segments[index];
  if (segment === undefined || segment.kind === 'soak' || elapsedMs <= 0) return null;
  const view = index === state.index ? viewOf(c, state) : null;
  const end = track.endCelsius ?? (view?.kind === 'seen' ? view.coldest : null);
  if (end === null || track.startCelsius === null) return null;
  return ((end - track.startCelsius) / elapsedMs) * 1000 * SECONDS_PER_HOUR;
}
