import type { Alarm } from '../../hub/contract/alarm.ts';
import type { NextMoveCode } from '../../hub/contract/firing.ts';
import type { LiveFiring } from '../../hub/contract/live.ts';
import type { Channel, Furnace } from '../../hub/contract/shop.ts';
import type { FeedState } from '../feed/state.ts';
import { byUrgency } from './alarm-order.ts';
import { type Freshness, freshnessOf } from './freshness.ts';

/** What a lane says, before it is put into words and units. */
export interface Lane {
  readonly furnace: Furnace;
  readonly live: LiveFiring | null;
  /** Temperature channels of this furnace, the watched ones first. */
  readonly channels: readonly Channel[];
  readonly heat: Heat;
  /** The most urgent open alarm of this furnace. */
  readonly alarm: Alarm | null;
}

/** The temperature to show large. */
export type Heat =
  | { readonly kind: 'measured'; readonly celsius: number }
  /** What was measured last, and when: shown struck. */
  | { readonly kind: 'last-known'; readonly celsius: number; readonly at: number }
  | { readonly kind: 'none' }
  | { readonly kind: 'no-channel' };

/** Lanes of every furnace: running firings first, each group in the order the furnaces were made. */
export function lanesOf(state: FeedState, nowMs: number): Lane[] {
  const lanes = [...state.furnaces.values()]
    .sort((a, b) => a.createdAt - b.createdAt)
    .map((furnace) => laneOf(state, furnace, nowMs));
  return [...lanes.filter((lane) => lane.live !== null), ...lanes.filter((lane) => lane.live === null)];
}

export function laneOf(state: FeedState, furnace: Furnace, nowMs: number): Lane {
  const live =
    [...state.firings.values()].find((candidate) => candidate.firing.furnaceId === furnace.id) ?? null;
  const channels = temperatureChannels(state, furnace, live);
  const alarms = [...state.alarms.values()].filter((alarm) => alarm.furnaceId === furnace.id);
  return {
    furnace,
    live,
    channels,
    heat: live ? runningHeat(live, channels, nowMs) : idleHeat(channels, nowMs),
    alarm: byUrgency(alarms)[0] ?? null,
  };
}

function temperatureChannels(state: FeedState, furnace: Furnace, live: LiveFiring | null): Channel[] {
  const watched = live?.firing.watchedChannels ?? [];
  const own = [...state.channels.values()].filter(
    (channel) =>
      channel.adopted &&
      channel.quantity === 'temperature' &&
      (watched.includes(channel.id) ||
        (channel.furnaceId === furnace.id && (channel.role === 'chamber' || channel.role === 'load'))),
  );
  return own.sort((a, b) => Number(watched.includes(b.id)) - Number(watched.includes(a.id)));
}

/** The judge's own number while it sees; else what the watched channels said last. */
function runningHeat(live: LiveFiring, channels: readonly Channel[], nowMs: number): Heat {
  const { measuredCelsius } = live.judgement;
  const watched = channels.filter((channel) => live.firing.watchedChannels.includes(channel.id));
  const allFresh = watched.every((channel) => freshnessOf(channel, nowMs).kind === 'fresh');
  if (measuredCelsius !== null && allFresh) return { kind: 'measured', celsius: measuredCelsius };
  return lastKnown(watched.map((channel) => freshnessOf(channel, nowMs)));
}

/** Nothing is judged, and a hot furnace can burn: the hottest channel counts. */
function idleHeat(channels: readonly Channel[], nowMs: number): Heat {
  if (channels.length === 0) return { kind: 'no-channel' };
  const all = channels.map((channel) => freshnessOf(channel, nowMs));
  const fresh = all.flatMap((one) => (one.kind === 'fresh' ? [one.reading.value] : []));
  return fresh.length > 0 ? { kind: 'measured', celsius: Math.max(...fresh) } : lastKnown(all);
}

function lastKnown(all: readonly Freshness[]): Heat {
  const readings = all.flatMap((one) => (one.kind === 'old' || one.kind === 'fresh' ? [one.reading] : []));
  // The stalest speaks: it is the one that made the lane blind.
  const oldest = readings.sort((a, b) => a.at - b.at)[0];
  return oldest ? { kind: 'last-known', celsius: oldest.value, at: oldest.at } : { kind: 'none' };
}

/** Moves that a person must make now are set in reverse; the rest is what already happens. */
export function isActNow(code: NextMoveCode): boolean {
  switch (code) {
    case 'ease-off':
    case 'turn-down':
    case 'quench-now':
    case 'cool-still-air':
    case 'cool-bury':
    case 'cool-slower':
    case 'cool-faster':
    case 'heat-up-slower':
    case 'heat-up-faster':
    case 'hold-raise':
    case 'turn-piece':
    case 'leave-buried':
    case 'temper-soon':
    case 'no-reading':
    case 'done':
      return true;
    case 'heat-up':
    case 'hold':
    case 'cool-furnace':
    case 'wait-cooling':
    case 'wait-core':
      return false;
    default:
      return code satisfies never;
  }
}
