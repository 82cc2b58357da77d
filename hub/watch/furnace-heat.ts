import type { Channel } from '../contract/shop.ts';

/** What a furnace's thermocouples say now. */

export interface FurnaceReading {
  readonly channelId: string;
  readonly at: number;
  readonly celsius: number;
}

/**
 * The coldest good reading of a furnace's chamber that is not old, else of its load; null: nobody reads it.
 * The coldest, since that is what the soak clock listens to as well.
 */
export function furnaceReading(
  channels: readonly Channel[],
  furnaceId: string,
  now: number,
): FurnaceReading | null {
  const fresh = channels.flatMap((channel) => {
    const { latest, staleAfterSeconds: stale } = channel;
    const counts = channel.furnaceId === furnaceId && channel.adopted && !channel.archived;
    if (!counts || channel.quantity !== 'temperature' || latest?.quality !== 'good') return [];
    if (now - latest.at > stale * 1000 || latest.at > now) return [];
    return [{ role: channel.role, channelId: channel.id, at: latest.at, celsius: latest.value }];
  });
  const chamber = fresh.filter(({ role }) => role === 'chamber');
  const watched = chamber.length > 0 ? chamber : fresh.filter(({ role }) => role === 'load');
  const [coldest] = watched.toSorted((a, b) => a.celsius - b.celsius);
  return coldest ? { channelId: coldest.channelId, at: coldest.at, celsius: coldest.celsius } : null;
}
