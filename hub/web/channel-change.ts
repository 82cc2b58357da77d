import type { ShopChange } from '../contract/batch-statistics.ts';
import type { Channel } from '../contract/shop.ts';
import type { WebParts } from './parts.ts';

type Noted = Omit<ShopChange, 'id'>;

/**
 * What a change of a channel means to those who look back: another probe, a probe in another furnace, a calibration.
 * Only a temperature tells of firings, and only a channel that was in use: the first word about it changes nothing.
 */
export function channelChanges(before: Channel, after: Channel, at: number): Noted[] {
  if (after.quantity !== 'temperature' || !before.adopted) return [];
  const note = (kind: ShopChange['kind'], furnaceId = after.furnaceId): Noted => ({
    ...{ at, kind, furnaceId, channelId: after.id, by: '' },
    text: after.label || `${after.node}/${after.name}`,
  });
  const moved = before.furnaceId === after.furnaceId ? [] : [before.furnaceId, after.furnaceId];
  return [
    ...(JSON.stringify(before.probe) === JSON.stringify(after.probe) ? [] : [note('probe')]),
    ...moved.filter((id) => id !== null).map((id) => note('probe-moved', id)),
    ...(before.calibratedAt === after.calibratedAt ? [] : [note('calibration')]),
  ];
}

export function noteChannelChange({ archive, clock }: WebParts, before: Channel, after: Channel): void {
  for (const change of channelChanges(before, after, clock.now())) archive.addShopChange(change);
}
