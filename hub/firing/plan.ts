import type { PlanPoint } from '../contract/firing.ts';
import type { CoolSegment, RampSegment, Segment } from '../contract/schedule.ts';
import { bandOf } from './limits.ts';
import { SECONDS_PER_HOUR } from './rates.ts';
import type { FiringCase, FiringState, SegmentTrack } from './types.ts';
import { isAway, isUnwatched } from './view.ts';

/**
 * The plan as a curve, a few points a segment. What has happened pins it: a segment's plan starts when the
 * segment really started, from the temperature that there really was.
 */

/** Cold start when nothing was measured yet, °C. */
const AMBIENT_CELSIUS = 20;
/** Rate of a ramp "as fast as possible" before there is a measured one, °C/h. Common practice, no source. */
const FREE_RAMP: Readonly<Record<FiringCase['furnaceKind'], number>> = {
  'gas-forge': 1800,
  'electric-oven': 600,
  'salt-bath': 300,
};
/** Cooling rates to draw where the schedule names none, °C/h. Common practice, no source. */
const COOLING: Readonly<Record<CoolSegment['medium'], number>> = {
  'still-air': 2400,
  furnace: 100,
  ash: 300,
  vermiculite: 200,
  quench: 100_000,
};
/** A measured mean rate is believed after this long, ms. */
const BELIEVE_AFTER_MS = 60_000;

interface Leg {
  readonly startAt: number;
  readonly startCelsius: number;
  readonly endAt: number;
  readonly endCelsius: number;
}

/** Planned rate of a ramp, °C per second: the schedule's, else the measured one, else a usual one. */
function rampRate(c: FiringCase, segment: RampSegment, track: SegmentTrack, state: FiringState): number {
  if (segment.rateCelsiusPerHour !== null) return segment.rateCelsiusPerHour / SECONDS_PER_HOUR;
  const usual = FREE_RAMP[c.furnaceKind] / SECONDS_PER_HOUR;
  const end = track.endedAt ?? state.at;
  if (track.startedAt === null || track.startCelsius === null || end - track.startedAt < BELIEVE_AFTER_MS) {
    return usual;
  }
  const nearest = track.endCelsius ?? track.markCelsius;
  if (nearest === null) return usual;
  const measured = (Math.abs(nearest - track.startCelsius) * 1000) / (end - track.startedAt);
  return measured > usual / 20 ? measured : usual;
}

function coolRate(segment: CoolSegment): number {
  const { maximumRateCelsiusPerHour: most, minimumRateCelsiusPerHour: least } = segment;
  return (most ?? least ?? COOLING[segment.medium]) / SECONDS_PER_HOUR;
}

/** How long a segment is planned to take from `fromCelsius`, ms. */
export function plannedMs(c: FiringCase, state: FiringState, index: number, fromCelsius: number): number {
  const segment = c.schedule.segments[index];
  const track = state.segments[index];
  if (segment === undefined || track === undefined) return 0;
  const distance = Math.abs(segment.targetCelsius - fromCelsius);
  switch (segment.kind) {
    case 'soak':
      return segment.durationSeconds * 1000;
    case 'ramp':
      return (distance / rampRate(c, segment, track, state)) * 1000;
    case 'cool':
      return isUnwatched(c, segment) && track.startedAt === null ? 0 : (distance / coolRate(segment)) * 1000;
    default:
      throw segment satisfies never;
  }
}

/** Points of one segment between its start and its end. */
function drawSegment(segment: Segment, leg: Leg, plannedEnd: number): PlanPoint[] {
  const start = segment.kind === 'soak' ? segment.targetCelsius : leg.startCelsius;
  const points: PlanPoint[] = [at(segment, leg.startAt, start)];
  if (segment.kind === 'soak') return [...points, at(segment, leg.endAt, segment.targetCelsius)];
  if (plannedEnd < leg.endAt) points.push(at(segment, plannedEnd, segment.targetCelsius));
  points.push(at(segment, leg.endAt, leg.endCelsius));
  return points;
}

function at(segment: Segment, instant: number, celsius: number): PlanPoint {
  const tolerance = bandOf(segment) === null || segment.kind === 'cool' ? 0 : segment.toleranceCelsius;
  const shown = Math.round(celsius * 100) / 100;
  return { at: Math.round(instant), celsius: shown, low: shown - tolerance, high: shown + tolerance };
}

function legOf(segment: Segment, track: SegmentTrack, now: number, from: Leg, plannedEnd: number): Leg {
  const target = segment.targetCelsius;
  const startAt = from.endAt;
  const startCelsius = from.endCelsius;
  if (track.endedAt === null) {
    const endAt = track.state === 'running' ? Math.max(plannedEnd, now) : plannedEnd;
    return { startAt, startCelsius, endAt, endCelsius: target };
  }
  const share = plannedEnd > startAt ? Math.min(1, (track.endedAt - startAt) / (plannedEnd - startAt)) : 1;
  const reachedCelsius = startCelsius + (target - startCelsius) * share;
  return { startAt, startCelsius, endAt: track.endedAt, endCelsius: reachedCelsius };
}

/** The soak's end moves with its clock: what is still missing is counted from now. */
function plannedEndOf(c: FiringCase, state: FiringState, index: number, from: Leg): number {
  const segment = c.schedule.segments[index];
  const track = state.segments[index];
  if (segment?.kind === 'soak' && track?.state === 'running') {
    return Math.max(state.at, from.endAt) + Math.max(0, segment.durationSeconds * 1000 - track.soakMs);
  }
  return from.endAt + plannedMs(c, state, index, from.endCelsius);
}

/** The plan from the start to the end of the schedule. */
export function planOf(c: FiringCase, state: FiringState): PlanPoint[] {
  const points: PlanPoint[] = [];
  const first = state.segments[0]?.startCelsius ?? AMBIENT_CELSIUS;
  let last: Leg = { startAt: c.startedAt, startCelsius: first, endAt: c.startedAt, endCelsius: first };
  for (const [index, segment] of c.schedule.segments.entries()) {
    const track = state.segments[index];
    if (track === undefined || (track.state === 'waiting' && state.finishedAt !== null)) break;
    const anchored = {
      ...last,
      endAt: track.startedAt ?? last.endAt,
      endCelsius: isAway(segment) ? last.endCelsius : (track.startCelsius ?? last.endCelsius),
    };
    const plannedEnd = plannedEndOf(c, state, index, anchored);
    last = legOf(segment, track, state.at, anchored, plannedEnd);
    points.push(...drawSegment(segment, last, plannedEnd));
  }
  return points;
}

/** Where the plan is at an instant (epoch ms), °C; null outside it. */
export function plannedAt(plan: readonly PlanPoint[], instant: number): number | null {
  for (let i = plan.length - 1; i > 0; i--) {
    const left = plan[i - 1];
    const right = plan[i];
    if (left === undefined || right === undefined || instant < left.at || instant > right.at) continue;
    const share = right.at > left.at ? (instant - left.at) / (right.at - left.at) : 1;
    return left.celsius + (right.celsius - left.celsius) * share;
  }
  return null;
}
