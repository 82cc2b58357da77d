import type { Archive } from '../archive/types.ts';
import type { ChannelReading } from '../contract/reading.ts';
import type { Channel } from '../contract/shop.ts';
import { TICK_MS } from './firing-track.ts';

/** How the judges of the whole shop are fed out of the archive. */

/** Channels that people have accepted and not put away. */
export function adoptedChannels(
  archive: Pick<Archive, 'channels'>,
  wanted: (channel: Channel) => boolean,
): readonly Channel[] {
  return archive.channels().filter((c) => c.adopted && !c.archived && wanted(c));
}

/** Readings with `after < at <= upTo` in one order. */
export function readingsOf(
  archive: Pick<Archive, 'readings'>,
  channels: readonly { readonly id: string }[],
  after: number,
  upTo: number,
): ChannelReading[] {
  const found = channels.flatMap(({ id }) =>
    archive.readings.range(id, after + 1, upTo).map((reading) => ({ ...reading, channel: id })),
  );
  return found.sort((a, b) => a.at - b.at || (a.channel < b.channel ? -1 : 1));
}

export type ShopInput =
  | { readonly kind: 'reading'; readonly reading: ChannelReading }
  | { readonly kind: 'tick'; readonly at: number };

/** Readings and events in time order with a tick on every whole second; a tick comes last at its instant. */
export function* merge<E extends { readonly at: number }>(
  readings: readonly ChannelReading[],
  events: readonly E[],
  after: number,
  upTo: number,
): Generator<ShopInput | E> {
  const happened = [
    ...readings.map((reading) => ({ at: reading.at, input: { kind: 'reading', reading } as const })),
    ...events.map((event) => ({ at: event.at, input: event })),
  ].sort((a, b) => a.at - b.at);
  let next = 0;
  const firstTick = Math.floor(after / TICK_MS) * TICK_MS + TICK_MS;
  for (let tick = firstTick; tick <= upTo; tick += TICK_MS) {
    for (let item = happened[next]; item && item.at <= tick; item = happened[++next]) yield item.input;
    yield { kind: 'tick', at: tick };
  }
  for (let item = happened[next]; item; item = happened[++next]) yield item.input;
}
