import type { Channel, ShopSettings } from '../../hub/contract/shop.ts';
import { amount } from '../words/format.ts';
import { channelWords } from '../words/setup.ts';
import { dayAndTime, timeOfDaySeconds } from '../words/time.ts';

/** The newest reading of a channel with its time: an old value must not pass for a new one. */
export function newestText(
  channel: Pick<Channel, 'latest' | 'quantity' | 'staleAfterSeconds'>,
  settings: ShopSettings,
  nowMs?: number,
): string {
  const { latest } = channel;
  if (latest === null) return channelWords.noReading;
  const { number, unit } = amount(latest.value, channel.quantity, settings);
  const isOld = nowMs !== undefined && nowMs - latest.at > channel.staleAfterSeconds * 1000;
  const at = isOld ? channelWords.oldAt(dayAndTime(latest.at)) : timeOfDaySeconds(latest.at);
  const doubt = latest.quality === 'good' ? '' : ` (${channelWords.quality[latest.quality]})`;
  return `${number} ${unit}${doubt}, ${at}`;
}
