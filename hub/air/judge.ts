import { ALARM_DEFINITIONS, deadbandOf } from '../alarms/definitions.ts';
import type { Finding } from '../contract/alarm.ts';
import type { ChannelReading } from '../contract/reading.ts';
import { aboveLimit, type ConditionState, QUIET, stepCondition } from '../judging/condition.ts';
import { requireForward } from '../judging/errors.ts';
import { freshness, type HeldChannel, holdReading, NEVER_SEEN } from '../judging/held.ts';

/**
 * The judge of the shop's air: measured carbon monoxide against two limits, on every channel; the worst
 * speaks. It never says that the air is good. Channels that say nothing are the blindness judge's business.
 */

export interface AirChannel {
  readonly id: string;
  readonly label: string;
  readonly staleAfterSeconds: number;
}

export interface AirConfig {
  readonly channels: readonly AirChannel[];
  /** Limits on the instant reading, ppm. */
  readonly firstPpm: number;
  readonly secondPpm: number;
}

export type AirInput =
  | { readonly kind: 'reading'; readonly reading: ChannelReading }
  | { readonly kind: 'tick'; readonly at: number };

interface LimitState {
  readonly condition: ConditionState;
  /** Readings in a row above the limit. */
  readonly samples: number;
}

export interface AirChannelState {
  readonly held: HeldChannel;
  readonly first: LimitState;
  readonly second: LimitState;
}

export interface AirState {
  /** Epoch ms. */
  readonly at: number;
  /** In the order of `AirConfig.channels`. */
  readonly channels: readonly AirChannelState[];
}

const LIMIT_QUIET: LimitState = { condition: QUIET, samples: 0 };
/** This many readings in a row above the limit are as good as the on-delay. Common practice. */
const SAMPLES_TO_RAISE = 2;

/** The state before the first reading. */
export function startAir(config: AirConfig): AirState {
  const channels = config.channels.map(() => ({
    held: NEVER_SEEN,
    first: LIMIT_QUIET,
    second: LIMIT_QUIET,
  }));
  return { at: 0, channels };
}

/**
 * The next state. Pure; readings that are not good change nothing.
 * @throws JudgeError `time-runs-back`
 */
export function stepAir(config: AirConfig, state: AirState, input: AirInput): AirState {
  const at = input.kind === 'reading' ? input.reading.at : input.at;
  requireForward(state.at, at, 'air');
  const reading = input.kind === 'reading' && input.reading.quality === 'good' ? input.reading : null;
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
  const held = reading === null ? old.held : holdReading(old.held, reading);
  const fresh = held.seen && freshness(held, channel.staleAfterSeconds, at) === 'fresh';
  const value = fresh ? held.value : null;
  const isSample = reading !== null;
  return {
    held,
    first: stepLimit('unsafe-air-first', old.first, { value, isSample, at, limit: config.firstPpm }),
    second: stepLimit('unsafe-air-second', old.second, { value, isSample, at, limit: config.secondPpm }),
  };
}

interface LimitInput {
  /** Ppm; null while nobody can tell. */
  readonly value: number | null;
  readonly isSample: boolean;
  readonly at: number;
  readonly limit: number;
}

type AirKind = 'unsafe-air-first' | 'unsafe-air-second';

function stepLimit(kind: AirKind, old: LimitState, { value, isSample, at, limit }: LimitInput): LimitState {
  const { onDelayMs, offDelayMs } = ALARM_DEFINITIONS[kind];
  if (value === null) {
    return {
      condition: stepCondition(old.condition, { active: null, at }, { onDelayMs, offDelayMs }),
      samples: 0,
    };
  }
  const active = aboveLimit(old.condition.raised, value, limit, deadbandOf(kind, limit, null));
  const counted = old.samples + (isSample ? 1 : 0);
  const samples = active ? Math.min(counted, SAMPLES_TO_RAISE) : 0;
  const enough = samples >= SAMPLES_TO_RAISE;
  const delays = { onDelayMs: enough ? 0 : onDelayMs, offDelayMs };
  return { condition: stepCondition(old.condition, { active, at }, delays), samples };
}

/** What holds at the instant the state stands at: at most one finding a limit, about the worst channel. */
export function airFindings(config: AirConfig, state: AirState): Finding[] {
  const second = worst(config, state, 'second');
  const first = worst(config, state, 'first');
  return [second, first].filter((finding) => finding !== null);
}

function worst(config: AirConfig, state: AirState, which: 'first' | 'second'): Finding | null {
  let found: { channel: AirChannel; ppm: number } | null = null;
  let since = Number.POSITIVE_INFINITY;
  for (const [i, channel] of config.channels.entries()) {
    const own = state.channels[i];
    const condition = own?.[which].condition;
    if (own === undefined || !own.held.seen || condition?.raised !== true) continue;
    since = Math.min(since, condition.since ?? state.at);
    if (found === null || own.held.value > found.ppm) found = { channel, ppm: own.held.value };
  }
  if (found === null) return null;
  const limitPpm = which === 'first' ? config.firstPpm : config.secondPpm;
  const params = { ppm: found.ppm, limitPpm, channel: found.channel.id, label: found.channel.label };
  return { kind: `unsafe-air-${which}`, subject: 'shop', since, params };
}
