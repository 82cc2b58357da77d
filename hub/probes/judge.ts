import type { ChannelReading } from '../contract/reading.ts';
import { aboveLimit } from '../judging/condition.ts';
import { requireForward } from '../judging/errors.ts';
import { freshness, holdReading, NEVER_SEEN } from '../judging/held.ts';
import type { ProbeFaultRules } from '../physics/probe-fault-rules.ts';
import { type ProbeFaultState, stepProbeFaults, untouchedProbe } from '../physics/probe-faults.ts';
import { isElectrical, rulesOf } from './rules.ts';
import { isTold } from './told.ts';
import type { ProbeChannel, ProbeState, ProbesConfig, ProbesInput, ProbesState, ToldFault } from './types.ts';

/**
 * The judge of probes: is what a channel says a temperature at all? It looks at each temperature channel of a
 * furnace beside the others of that furnace and beside its terminals; hub/physics knows the faults.
 */

/** A chamber that was hot stays hot until it is this share of the limit below it. */
const HOT_DEADBAND_SHARE = 0.1;

const UNTOUCHED: ProbeState = {
  faults: untouchedProbe,
  finestChangeCelsius: null,
  coolAt: null,
  usable: true,
  told: null,
};

/** The state at `at` (epoch ms), before the first reading. */
export function startProbes(at: number): ProbesState {
  return { at, probes: {}, values: {}, hot: {} };
}

/**
 * The next state. Pure.
 * @throws JudgeError `time-runs-back`
 */
export function stepProbes(config: ProbesConfig, state: ProbesState, input: ProbesInput): ProbesState {
  const at = input.kind === 'reading' ? input.reading.at : input.at;
  requireForward(state.at, at, 'probes');
  const moved = { ...state, at };
  switch (input.kind) {
    case 'tick':
      return moved;
    case 'reading':
      return takeReading(config, moved, input.reading);
    default:
      throw input satisfies never;
  }
}

function takeReading(config: ProbesConfig, state: ProbesState, reading: ChannelReading): ProbesState {
  const channel = config.channels.find(({ id }) => id === reading.channel);
  const seen = withValue(state, reading);
  if (channel === undefined) return seen;
  const before = state.probes[channel.id] ?? UNTOUCHED;
  const probe = stepProbe(config, state, channel, before, reading);
  return {
    ...seen,
    probes: probe === before ? state.probes : { ...state.probes, [channel.id]: probe },
    hot: channel.role === 'chamber' ? hotAfter(config, state.hot, reading) : state.hot,
  };
}

function withValue(state: ProbesState, reading: ChannelReading): ProbesState {
  if (reading.quality !== 'good') return state;
  const held = holdReading(state.values[reading.channel] ?? NEVER_SEEN, reading);
  return { ...state, values: { ...state.values, [reading.channel]: held } };
}

function stepProbe(
  config: ProbesConfig,
  state: ProbesState,
  channel: ProbeChannel,
  before: ProbeState,
  reading: ChannelReading,
): ProbeState {
  const finestChangeCelsius = finestAfter(before, reading);
  const rules = rulesOf(channel, finestChangeCelsius);
  const celsius = celsiusOf(rules, reading);
  const passed = before.faults.atMs !== undefined && reading.at <= before.faults.atMs;
  if (celsius === undefined || passed) return before;
  const terminalsCelsius = junctionOf(config, state, channel);
  const faults = stepProbeFaults(rules, before.faults, {
    atMs: reading.at,
    celsius,
    ...(terminalsCelsius === undefined ? {} : { coldJunctionCelsius: terminalsCelsius }),
    others: othersOf(config, state, channel),
  });
  const isCool = celsius !== null && celsius <= rules.shop.highCelsius;
  return {
    faults,
    finestChangeCelsius,
    coolAt: isCool ? reading.at : before.coolAt,
    usable: reading.quality === 'good',
    told: toldAfter(channel, faults, before, reading, terminalsCelsius),
  };
}

function toldAfter(
  channel: ProbeChannel,
  faults: ProbeFaultState,
  { coolAt, told }: ProbeState,
  { at, quality }: ChannelReading,
  terminalsCelsius: number | undefined,
): ToldFault | null {
  const { finding } = faults;
  if (finding === null) return told;
  if (!isTold(channel, faults, { coolAt, usable: quality === 'good', terminalsCelsius })) return told;
  return { fault: finding.fault, since: finding.sinceMs, lastAt: at, evidence: finding.evidence };
}

/**
 * The value as the fault rules should see it: a bad reading counts only where no furnace could have it, or where the
 * node itself calls its sensor broken; null is "no number". Undefined: it says nothing about the probe.
 */
function celsiusOf(
  rules: ProbeFaultRules,
  { quality, reason, value }: ChannelReading,
): number | null | undefined {
  if (quality === 'good') return value;
  if (reason === 'sensor-fault') return null;
  return reason === 'out-of-range' && isElectrical(rules, value) ? value : undefined;
}

function finestAfter({ faults, finestChangeCelsius }: ProbeState, reading: ChannelReading): number | null {
  const { previous } = faults;
  if (reading.quality !== 'good' || previous === undefined) return finestChangeCelsius;
  const change = Math.abs(reading.value - previous.celsius);
  if (change === 0) return finestChangeCelsius;
  return Math.min(change, finestChangeCelsius ?? change);
}

function junctionOf(
  config: ProbesConfig,
  state: ProbesState,
  { junction }: ProbeChannel,
): number | undefined {
  const known = config.junctions.find(({ id }) => id === junction);
  return known && freshValue(state, known);
}

function othersOf(config: ProbesConfig, state: ProbesState, of: ProbeChannel): Record<string, number> {
  const others: Record<string, number> = {};
  for (const channel of config.channels) {
    if (channel.id === of.id || channel.furnaceId !== of.furnaceId) continue;
    const celsius = freshValue(state, channel);
    if (celsius !== undefined) others[channel.id] = celsius;
  }
  return others;
}

function freshValue(
  state: ProbesState,
  { id, staleAfterSeconds }: { readonly id: string; readonly staleAfterSeconds: number },
): number | undefined {
  const held = state.values[id] ?? NEVER_SEEN;
  const fresh = held.seen && freshness(held, staleAfterSeconds, state.at) === 'fresh';
  return fresh ? held.value : undefined;
}

function hotAfter(
  config: ProbesConfig,
  hot: ProbesState['hot'],
  { channel, quality, value }: ChannelReading,
): ProbesState['hot'] {
  if (quality !== 'good') return hot;
  const limit = config.hotAboveCelsius;
  const was = hot[channel] !== undefined;
  const is = aboveLimit(was, value, limit, limit * HOT_DEADBAND_SHARE);
  if (is) return was ? hot : { ...hot, [channel]: true };
  const { [channel]: _cold, ...others } = hot;
  return others;
}
