import type { Archive } from '../archive/types.ts';
import { magnetExpected, magnetSeen } from '../bench/magnet-seen.ts';
import type { MagnetSeen } from '../contract/observation.ts';
import type { Piece } from '../contract/piece.ts';
import type { Reading } from '../contract/reading.ts';
import type { Channel } from '../contract/shop.ts';
import { type FurnaceReading, furnaceReading } from './furnace-heat.ts';
import { steelIfKnown } from './piece-steel.ts';
import { steelBook } from './steel-book.ts';

/** The magnet let go of this piece at `at`: what that furnace read then, against what this steel should do. */
export function magnetTap(archive: Archive, piece: Piece, furnaceId: string, at: number): MagnetSeen {
  const steel = steelIfKnown(steelBook(archive), piece.steel);
  const channels = archive.channels().map((channel) => asOf(archive, channel, furnaceId, at));
  const measured: FurnaceReading | null = furnaceReading(channels, furnaceId, at);
  return magnetSeen(furnaceId, measured, steel && magnetExpected(steel.composition));
}

/** The channel as it stood at an instant: a tap may be told some time after it was made. */
function asOf(archive: Archive, channel: Channel, furnaceId: string, at: number): Channel {
  if (channel.furnaceId !== furnaceId) return channel;
  return { ...channel, latest: readAt(archive, channel, at) };
}

function readAt(archive: Archive, { id, staleAfterSeconds }: Channel, at: number): Reading | null {
  return archive.readings.range(id, Math.max(0, at - staleAfterSeconds * 1000), at).at(-1) ?? null;
}
