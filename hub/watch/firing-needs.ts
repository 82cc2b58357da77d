import type { Archive } from '../archive/types.ts';
import type { Schedule } from '../contract/schedule.ts';
import type { Furnace } from '../contract/shop.ts';
import { WatchError } from './errors.ts';

/** What a firing cannot be without; each refusal says where to add it. */

export function needFurnace(archive: Archive, id: string): Furnace {
  const furnace = archive.furnace(id);
  if (!furnace) throw new WatchError('not-found', `there is no furnace ${id}: add it under Setup first`);
  return furnace;
}

export function needSchedule(archive: Archive, id: string): Schedule {
  const schedule = archive.schedule(id);
  if (!schedule)
    throw new WatchError('not-found', `there is no schedule ${id}: add it under Schedules first`);
  return schedule;
}

/** Ids of the temperature channels that the soak clock will listen to. */
export function watchedChannelsOf(archive: Archive, furnace: Furnace): string[] {
  const watched = archive
    .channels()
    .filter((c) => c.furnaceId === furnace.id && c.adopted && !c.archived)
    .filter((c) => c.quantity === 'temperature' && (c.role === 'chamber' || c.role === 'load'));
  if (watched.length > 0) return watched.map((channel) => channel.id);
  throw new WatchError(
    'no-watched-channel',
    `${furnace.name} has no temperature channel: under Setup give it one with the role chamber or load`,
  );
}
