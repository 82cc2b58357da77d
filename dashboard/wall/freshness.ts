import type { Reading } from '../../hub/contract/reading.ts';
import type { Channel } from '../../hub/contract/shop.ts';

/**
 * What a channel's newest reading is worth now. Never seen, old, bad and fresh are different things, and only
 * fresh is shown as a value that holds.
 */
export type Freshness =
  | { readonly kind: 'fresh'; readonly reading: Reading }
  | { readonly kind: 'old'; readonly reading: Reading }
  /** Outside what the sensor can mean, from the future, or a fault. */
  | { readonly kind: 'doubtful'; readonly reading: Reading }
  | { readonly kind: 'never' };

/** @param nowMs the hub's clock, epoch ms */
export function freshnessOf(
  channel: Pick<Channel, 'latest' | 'staleAfterSeconds'>,
  nowMs: number,
): Freshness {
  const { latest: reading, staleAfterSeconds } = channel;
  if (reading === null) return { kind: 'never' };
  if (nowMs - reading.at > staleAfterSeconds * 1000) return { kind: 'old', reading };
  return reading.quality === 'good' ? { kind: 'fresh', reading } : { kind: 'doubtful', reading };
}
