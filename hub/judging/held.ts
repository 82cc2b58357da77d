import type { Reading } from '../contract/reading.ts';

/**
 * A channel as a judge sees it: the last good value, held until it is too old. Fresh, stale and never seen
 * are three different things, and only a fresh value is a measurement.
 */
export type HeldChannel =
  | { readonly seen: false }
  | { readonly seen: true; readonly value: number; readonly goodAt: number };

export type Freshness = 'fresh' | 'stale' | 'never-seen';

export const NEVER_SEEN: HeldChannel = { seen: false };

/** Takes a reading in. Only quality `good` counts, and only when it is not older than the one held. */
export function holdReading(held: HeldChannel, reading: Reading): HeldChannel {
  if (reading.quality !== 'good') return held;
  if (held.seen && reading.at < held.goodAt) return held;
  return { seen: true, value: reading.value, goodAt: reading.at };
}

/** The instant at which this channel stops being fresh, epoch ms; null when it was never seen. */
export function staleAt(held: HeldChannel, staleAfterSeconds: number): number | null {
  return held.seen ? held.goodAt + Math.round(staleAfterSeconds * 1000) : null;
}

/** Fresh means strictly younger than `staleAfterSeconds` at the instant `at` (epoch ms). */
export function freshness(held: HeldChannel, staleAfterSeconds: number, at: number): Freshness {
  const end = staleAt(held, staleAfterSeconds);
  if (end === null) return 'never-seen';
  return at < end ? 'fresh' : 'stale';
}
