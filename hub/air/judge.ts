import { ALARM_DEFINITIONS, deadbandOf } from '../alarms/definitions.ts';
import type { Finding } from '../contract/alarm.ts';
import type { ChannelReading } from '../contract/reading.ts';
import { aboveLimit, belowLimit, QUIET, stepCondition } from '../judging/condition.ts';
import { requireForward } from '../judging/errors.ts';
import { freshness, holdReading, NEVER_SEEN } from '../judging/held.ts';
import { type LevelLimit, levelLimits } from './level-limits.ts';
import {
  type AirChannel,
  type AirChannelState,
  type AirConfig,
  type AirInput,
  type AirState,
  LEVEL_KINDS,
  type LevelKind,
  type LimitState,
} from './types.ts';

/**
 * The judge of the shop's air at the instant: measured gas against limits, on every channel; the worst speaks.
 * What adds up over time is `day.ts`. It never says that the air is good. Channels that say nothing are the
 * blindness judge's business.
 */

const LIMIT_QUIET: LimitState = { condition: QUIET, samples: 0 };
/** This many readings in a row above the limit are as good as the on-delay. Common practice. */
const SAMPLES_TO_RAISE = 2;

/** The state before the first reading. */
export function startAir(config: AirConfig): AirState {
  const channels = config.channels.map(() => ({ held: NEVER_SEEN, limits: {}, saturated: QUIET }));
  return { at: 0, channels };
}

/**
 * The next state. Pure; readings that are not good change nothing, except that one beyond the scale says so.
 * @throws JudgeError `time-runs-back`
 */
export function stepAir(config: AirConfig, state: AirState, input: AirInput): AirState {
  const at = input.kind === 'reading' ? input.reading.at : input.at;
  requireForward(state.at, at, 'air');
  const reading = input.kind === 'reading' ? input.reading : null;
  const channels = state.channels.map((old, i) => {
    const channel = config.channels[i];
    if (channel === undefined) return old;
    return stepChannel(config, channel, old, reading?.channel === channel.id ? reading : null, at);
  });
  return { at, channels };
}

function stepChannel(
  config: AirConfig,
  channel: AirChannel,
  old: AirChannelState,
  reading: ChannelReading | null,
  at: number,
): AirChannelState {
  const good = reading?.quality === 'good' ? reading : null;
  const held = good === null ? old.held : holdReading(old.held, good);
  const fresh = held.seen && freshness(held, channel.staleAfterSeconds, at) === 'fresh';
  const value = fresh ? held.value : null;
  const limits = { ...old.limits };
  for (const limit of levelLimits(config, channel.gas ?? 'carbon-monoxide')) {
    const before = old.limits[limit.kind] ?? LIMIT_QUIET;
    limits[limit.kind] = stepLimit(before, limit, { value, isSample: good !== null, at });
  }
  return { held, limits, saturated: stepSaturated(channel, old.saturated, reading, at) };
}

interface LimitInput {
  /** Base unit; null while nobody can tell. */
  readonly value: number | null;
  readonly isSample: boolean;
  readonly at: number;
}

function stepLimit(old: LimitState, limit: LevelLimit, { value, isSample, at }: LimitInput): LimitState {
  const { onDelayMs, offDelayMs } = ALARM_DEFINITIONS[limit.kind];
  if (value === null) {
    const condition = stepCondition(old.condition, { active: null, at }, { onDelayMs, offDelayMs });
    return { condition, samples: 0 };
  }
  const beyond = limit.side === 'above' ? aboveLimit : belowLimit;
  const deadband = deadbandOf(limit.kind, limit.value, null);
  const active = beyond(old.condition.raised, value, limit.value, deadband);
  const counted = old.samples + (isSample ? 1 : 0);
  const samples = active ? Math.min(counted, SAMPLES_TO_RAISE) : 0;
  const delays = { onDelayMs: samples >= SAMPLES_TO_RAISE ? 0 : onDelayMs, offDelayMs };
  return { condition: stepCondition(old.condition, { active, at }, delays), samples };
}

/** A value at the end of the scale may be any value above it. Silence afterwards does not take that back. */
function stepSaturated(
  { fullScale }: AirChannel,
  old: AirChannelState['saturated'],
  reading: ChannelReading | null,
  at: number,
): AirChannelState['saturated'] {
  if (fullScale === undefined) return old;
  const active = reading === null ? old.signal : reading.value >= fullScale;
  if (reading !== null && !active && reading.quality !== 'good') return old;
  return stepCondition(old, { active, at }, ALARM_DEFINITIONS['unsafe-air-saturated']);
}

/** What holds at the instant the state stands at: one finding a limit, about its worst channel; louder first. */
export function airFindings(config: AirConfig, state: AirState): Finding[] {
  const levels = LEVEL_KINDS.map((kind) => worst(config, state, kind));
  return [...levels, ...config.channels.map((channel, i) => saturatedFinding(channel, state.channels[i]))]
    .filter((finding) => finding !== null)
    .sort((a, b) => ALARM_DEFINITIONS[a.kind].rank - ALARM_DEFINITIONS[b.kind].rank);
}

interface Worst {
  readonly channel: AirChannel;
  readonly limit: LevelLimit;
  readonly value: number;
}

function worst(config: AirConfig, state: AirState, kind: LevelKind): Finding | null {
  let found: Worst | null = null;
  let since = Number.POSITIVE_INFINITY;
  for (const [i, channel] of config.channels.entries()) {
    const own = state.channels[i];
    const condition = own?.limits[kind]?.condition;
    const limit = levelLimits(config, channel.gas ?? 'carbon-monoxide').find((each) => each.kind === kind);
    if (own === undefined || !own.held.seen || condition?.raised !== true || limit === undefined) continue;
    since = Math.min(since, condition.since ?? state.at);
    const { value } = own.held;
    if (found === null || (limit.side === 'above') === value > found.value) found = { channel, limit, value };
  }
  return found === null ? null : { kind, subject: 'shop', since, params: levelParams(found) };
}

function levelParams({ channel, limit, value }: Worst): Finding['params'] {
  const about = { channel: channel.id, label: channel.label };
  if (channel.gas === 'oxygen') return { percent: value, limitPercent: limit.value, ...about };
  return { ppm: value, limitPpm: limit.value, ...about };
}

function saturatedFinding(channel: AirChannel, own: AirChannelState | undefined): Finding | null {
  if (own?.saturated.raised !== true || channel.fullScale === undefined) return null;
  const params = { channel: channel.id, label: channel.label, fullScale: channel.fullScale };
  return { kind: 'unsafe-air-saturated', subject: channel.id, since: own.saturated.since ?? 0, params };
}
