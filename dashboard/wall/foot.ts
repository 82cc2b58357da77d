import type { Channel, ShopSettings } from '../../hub/contract/shop.ts';
import type { FeedState } from '../feed/state.ts';
import { type Freshness, freshnessOf } from './freshness.ts';

/** What stands along the foot of the wall: the air first, then gas pressures, then cylinders. */

/** Where a CO reading stands against the two limits. It is a measurement against a limit, never a clearance. */
export type AirLevel = 'under-first' | 'over-first' | 'over-second';

export type AirCell =
  /** Nobody measures the air. */
  | { readonly kind: 'no-sensor' }
  /** There are sensors, but none has a reading that holds; the highest of what was last known, if any. */
  | { readonly kind: 'blind'; readonly last: { readonly ppm: number; readonly at: number } | null }
  | {
      readonly kind: 'measured';
      readonly ppm: number;
      readonly label: string;
      readonly level: AirLevel;
      /** Sensors without a reading that holds. */
      readonly silent: number;
      readonly sensors: number;
    };

export interface SupplyCell {
  readonly channel: Channel;
  readonly freshness: Freshness;
  readonly furnaceName: string | null;
}

export interface Foot {
  readonly air: AirCell;
  readonly supplies: readonly SupplyCell[];
}

export function footOf(state: FeedState, nowMs: number): Foot {
  const channels = [...state.channels.values()].filter((channel) => channel.adopted);
  const air = channels.filter((channel) => channel.quantity === 'carbon-monoxide');
  const supplies = [
    ...channels.filter((channel) => channel.quantity === 'pressure'),
    ...channels.filter((channel) => channel.quantity === 'mass'),
  ];
  return {
    air: airCell(air, state.shop.settings, nowMs),
    supplies: supplies.map((channel) => ({
      channel,
      freshness: freshnessOf(channel, nowMs),
      furnaceName: channel.furnaceId === null ? null : (state.furnaces.get(channel.furnaceId)?.name ?? null),
    })),
  };
}

type Limits = Pick<ShopSettings, 'carbonMonoxideFirstPpm' | 'carbonMonoxideSecondPpm'>;

export function airCell(channels: readonly Channel[], limits: Limits, nowMs: number): AirCell {
  if (channels.length === 0) return { kind: 'no-sensor' };
  const all = channels.map((channel) => ({ channel, now: freshnessOf(channel, nowMs) }));
  const fresh = all.flatMap(({ channel, now }) =>
    now.kind === 'fresh' ? [{ channel, ppm: now.reading.value }] : [],
  );
  const worst = fresh.sort((a, b) => b.ppm - a.ppm)[0];
  if (worst === undefined) return { kind: 'blind', last: worstKnown(all.map(({ now }) => now)) };
  return {
    kind: 'measured',
    ppm: worst.ppm,
    label: worst.channel.label || worst.channel.name,
    level: airLevel(worst.ppm, limits),
    silent: channels.length - fresh.length,
    sensors: channels.length,
  };
}

/** A reading at a limit is over it: a limit is the first value that calls for something. */
export function airLevel(ppm: number, limits: Limits): AirLevel {
  if (ppm >= limits.carbonMonoxideSecondPpm) return 'over-second';
  return ppm >= limits.carbonMonoxideFirstPpm ? 'over-first' : 'under-first';
}

function worstKnown(all: readonly Freshness[]): { ppm: number; at: number } | null {
  const old = all.flatMap((one) => (one.kind === 'old' ? [one.reading] : []));
  const worst = old.sort((a, b) => b.value - a.value)[0];
  return worst ? { ppm: worst.value, at: worst.at } : null;
}
