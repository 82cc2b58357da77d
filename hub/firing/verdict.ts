import type { Params } from '../contract/alarm.ts';
import type { FiringVerdict, SegmentResult } from '../contract/firing.ts';
import type { CoolSegment, Segment } from '../contract/schedule.ts';
import type { ReasonCode } from '../contract/words/types.ts';
import { bandOf } from './limits.ts';
import { isOnCore, loadOf } from './load/load.ts';
import type { FiringCase, FiringState, SegmentTrack } from './types.ts';
import { isUnwatched } from './view.ts';

/** Did a segment get what the schedule asked for, and if not quite, why. */

export interface Reason {
  readonly code: ReasonCode;
  readonly weight: 'note' | 'doubt' | 'fault';
  readonly params: Params;
}

/** More blind time than this share of a segment leaves doubts. Common practice, no source. */
const BLIND_DOUBT_SHARE = 0.05;
/** An overshoot shorter than this leaves doubts, a longer one is a fault. Common practice, no source. */
const SHORT_OVERSHOOT_MS = 10_000;
/** A soak interrupted for longer than this, or than 5 % of its duration, leaves doubts. */
const INTERRUPTED_DOUBT_MS = 60_000;
const INTERRUPTED_DOUBT_SHARE = 0.05;
/** Less than this is not worth a word: a firing's first second, a flicker at the edge of the band. */
const WORTH_A_WORD_MS = 10_000;
/** Less than this share of the soak by the coldest assumption about the furnace leaves doubts. Ours. */
const UNSURE_SHARE = 0.5;
/** A rate this far from plan is worth a word. */
const RATE_SLACK = 0.25;
/** A cooling rate broken for longer than this is a fault. */
const RATE_FAULT_MS = 60_000;

type Verdict = SegmentResult['verdict'];

/** Verdict and reasons of one segment. Pending until it is over. `meanRate` in °C/h, signed. */
export function reasonsOf(
  c: FiringCase,
  state: FiringState,
  index: number,
  meanRate: number | null,
): { verdict: Verdict; reasons: readonly Reason[] } {
  const segment = c.schedule.segments[index];
  const track = state.segments[index];
  if (segment === undefined || track === undefined) return { verdict: 'pending', reasons: [] };
  if (track.state === 'waiting') {
    if (state.finishedAt === null) return { verdict: 'pending', reasons: [] };
    return { verdict: 'not-met', reasons: [fault('not-begun', {})] };
  }
  const reasons = [
    ...cutShort(c, state, segment, track, index),
    ...overshoot(segment, track),
    ...blindness(c, segment, track),
    ...interruption(segment, track),
    ...coreDoubts(c, segment, track),
    ...rates(c, segment, track, meanRate),
  ];
  return { verdict: track.state === 'running' ? 'pending' : verdictOf(reasons), reasons };
}

function verdictOf(reasons: readonly Reason[]): Verdict {
  if (reasons.some((reason) => reason.weight === 'fault')) return 'not-met';
  return reasons.some((reason) => reason.weight === 'doubt') ? 'met-with-doubts' : 'met';
}

const note = (code: ReasonCode, params: Params): Reason => ({ code, weight: 'note', params });
const doubt = (code: ReasonCode, params: Params): Reason => ({ code, weight: 'doubt', params });
const fault = (code: ReasonCode, params: Params): Reason => ({ code, weight: 'fault', params });

function cutShort(
  c: FiringCase,
  state: FiringState,
  segment: Segment,
  track: SegmentTrack,
  index: number,
): Reason[] {
  if (track.state !== 'skipped') return [];
  const params: Params = {
    soakSeconds: track.soakMs / 1000,
    plannedSeconds: segment.kind === 'soak' ? segment.durationSeconds : null,
    airSeconds: track.airSoakMs / 1000,
    coreCelsius: track.endCoreCelsius,
    piece: loadOf(c)[0]?.piece.mark ?? null,
    targetCelsius: segment.targetCelsius,
    measuredCelsius: track.endCelsius,
  };
  if (stoppedByAir(c, segment, track)) return [fault(track.soakMs > 0 ? 'core-short' : 'core-cold', params)];
  if (track.endedBy === 'confirmed') return [fault('moved-on-early', params)];
  const last = index === state.segments.length - 1;
  if (last && isUnwatched(c, segment)) return [doubt('not-confirmed', params)];
  return [fault('finished-early', params)];
}

/** The air had all the time that was planned and the core had not: whoever stopped here went by the air. */
function stoppedByAir(c: FiringCase, segment: Segment, track: SegmentTrack): boolean {
  return segment.kind === 'soak' && isOnCore(c) && track.airSoakMs >= segment.durationSeconds * 1000;
}

/** A core is computed: when the furnace may heat so much less than is usual that half the soak is lost, say so. */
function coreDoubts(c: FiringCase, segment: Segment, track: SegmentTrack): Reason[] {
  if (segment.kind !== 'soak' || !isOnCore(c) || track.state !== 'done') return [];
  const plannedSeconds = segment.durationSeconds;
  const lowSeconds = track.lowSoakMs / 1000;
  if (lowSeconds >= plannedSeconds * UNSURE_SHARE) return [];
  return [doubt('core-unsure', { lowSeconds, plannedSeconds, piece: loadOf(c)[0]?.piece.mark ?? null })];
}

function overshoot(segment: Segment, track: SegmentTrack): Reason[] {
  const band = bandOf(segment);
  if (band === null || track.aboveMs === 0 || track.overCelsius <= 0) return [];
  const params: Params = {
    overCelsius: track.overCelsius,
    peakCelsius: track.peakCelsius,
    limitCelsius: band.high,
    seconds: track.aboveMs / 1000,
  };
  return [track.aboveMs < SHORT_OVERSHOOT_MS ? doubt('short-overshoot', params) : fault('overshoot', params)];
}

function blindness(c: FiringCase, segment: Segment, track: SegmentTrack): Reason[] {
  if (segment.kind === 'cool' && isUnwatched(c, segment)) {
    const asked = segment.maximumRateCelsiusPerHour ?? segment.minimumRateCelsiusPerHour;
    return asked === null ? [] : [doubt('rate-not-seen', {})];
  }
  const total = track.blindMs + track.seenMs;
  if (track.blindMs < WORTH_A_WORD_MS || total === 0) return [];
  const share = track.blindMs / total;
  const params: Params = { seconds: track.blindMs / 1000, share };
  return [share > BLIND_DOUBT_SHARE ? doubt('blind', params) : note('blind', params)];
}

function interruption(segment: Segment, track: SegmentTrack): Reason[] {
  if (segment.kind !== 'soak' || track.interruptedMs < WORTH_A_WORD_MS) return [];
  const allowed = Math.max(INTERRUPTED_DOUBT_MS, segment.durationSeconds * 1000 * INTERRUPTED_DOUBT_SHARE);
  const params: Params = { seconds: track.interruptedMs / 1000 };
  return [track.interruptedMs > allowed ? doubt('interrupted', params) : note('interrupted', params)];
}

function rates(c: FiringCase, segment: Segment, track: SegmentTrack, meanRate: number | null): Reason[] {
  if (meanRate === null || track.state === 'running' || isUnwatched(c, segment)) return [];
  const measured = Math.abs(meanRate);
  if (segment.kind === 'ramp') return rampRate(segment.rateCelsiusPerHour, measured);
  return segment.kind === 'cool' ? coolRate(segment, track, measured) : [];
}

function rampRate(planned: number | null, measured: number): Reason[] {
  if (planned === null) return [];
  const params: Params = { measuredCelsiusPerHour: measured, limitCelsiusPerHour: planned };
  if (measured > planned * (1 + RATE_SLACK)) return [doubt('heated-too-fast', params)];
  return measured < planned * (1 - RATE_SLACK) ? [note('heated-slowly', params)] : [];
}

function coolRate(segment: CoolSegment, track: SegmentTrack, measured: number): Reason[] {
  const { maximumRateCelsiusPerHour: most, minimumRateCelsiusPerHour: least } = segment;
  const seconds = track.rateViolationMs / 1000;
  const params = (limit: number): Params => ({
    measuredCelsiusPerHour: measured,
    limitCelsiusPerHour: limit,
    seconds,
  });
  if (least !== null && measured < least) return [fault('cooled-too-slowly', params(least))];
  if (most === null) return [];
  if (measured > most || track.rateViolationMs > RATE_FAULT_MS)
    return [fault('cooled-too-fast', params(most))];
  return track.rateViolationMs > 0 ? [doubt('cooled-too-fast-briefly', params(most))] : [];
}

/** The verdict of the firing: the worst of its segments; pending while one is still open. */
export function overallVerdict(results: readonly SegmentResult[]): FiringVerdict {
  const order: readonly FiringVerdict[] = ['pending', 'not-met', 'met-with-doubts'];
  return order.find((verdict) => results.some((result) => result.verdict === verdict)) ?? 'met';
}
