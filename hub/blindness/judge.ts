import type { ChannelReading } from '../contract/reading.ts';
import { aboveLimit } from '../judging/condition.ts';
import { requireForward } from '../judging/errors.ts';
import { holdReading, NEVER_SEEN } from '../judging/held.ts';
import type { BlindnessConfig, BlindnessInput, BlindnessState } from './types.ts';

/**
 * The judge of blindness: what should be watched now, and is not. Nothing looks fine while it is blind; and a
 * cold shop at night, where nothing needs to be watched, is quiet.
 */

/** A furnace that was hot stays hot until it is this share of the limit below it. */
const HOT_DEADBAND_SHARE = 0.1;

/** The state at `at` (epoch ms). Nothing was heard yet; every channel has its own time to speak up. */
export function startBlindness(_config: BlindnessConfig, at: number): BlindnessState {
  return { at, startedAt: at, channels: {}, offline: {}, firings: [], hot: {} };
}

/**
 * The next state. Pure.
 * @throws JudgeError `time-runs-back`
 */
export function stepBlindness(
  config: BlindnessConfig,
  state: BlindnessState,
  input: BlindnessInput,
): BlindnessState {
  const at = input.kind === 'reading' ? input.reading.at : input.at;
  requireForward(state.at, at, 'blindness');
  const moved = { ...state, at };
  switch (input.kind) {
    case 'tick':
      return moved;
    case 'reading':
      return takeReading(config, moved, input.reading);
    case 'node-status':
      return { ...moved, offline: offlineAfter(state, input) };
    case 'firing-running': {
      const { firingId, furnaceId, watched } = input;
      const others = state.firings.filter((firing) => firing.firingId !== firingId);
      const since = state.firings.find((firing) => firing.firingId === firingId)?.since ?? at;
      return { ...moved, firings: [...others, { firingId, furnaceId, watched, since }] };
    }
    case 'firing-over':
      return { ...moved, firings: state.firings.filter((firing) => firing.firingId !== input.firingId) };
    default:
      throw input satisfies never;
  }
}

function offlineAfter(
  state: BlindnessState,
  input: Extract<BlindnessInput, { kind: 'node-status' }>,
): BlindnessState['offline'] {
  if (input.status === 'offline') {
    return { ...state.offline, [input.node]: state.offline[input.node] ?? input.at };
  }
  const { [input.node]: _back, ...others } = state.offline;
  return others;
}

function takeReading(
  config: BlindnessConfig,
  state: BlindnessState,
  reading: ChannelReading,
): BlindnessState {
  const channel = config.channels.find((candidate) => candidate.id === reading.channel);
  if (channel === undefined || reading.quality !== 'good') return state;
  const held = holdReading(state.channels[channel.id] ?? NEVER_SEEN, reading);
  const channels = { ...state.channels, [channel.id]: held };
  if (channel.role !== 'chamber') return { ...state, channels };
  return { ...state, channels, hot: hotAfter(config, state.hot, channel.id, reading) };
}

/** Hot is told a channel, so that one cold corner does not hide a hot one. */
function hotAfter(
  config: BlindnessConfig,
  hot: BlindnessState['hot'],
  id: string,
  reading: ChannelReading,
): BlindnessState['hot'] {
  const limit = config.hotAboveCelsius;
  const was = hot[id] !== undefined;
  const is = aboveLimit(was, reading.value, limit, limit * HOT_DEADBAND_SHARE);
  if (is) return was ? hot : { ...hot, [id]: reading.at };
  const { [id]: _cold, ...others } = hot;
  return others;
}
