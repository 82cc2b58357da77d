import type { FiringRow } from '../archive/types.ts';
import type { LoadPiece } from '../contract/load.ts';
import type { Schedule } from '../contract/schedule.ts';
import type { Furnace } from '../contract/shop.ts';
import { WatchError } from './errors.ts';

/** What forbids a firing to start. Each throws a WatchError that says what to do. */

export function checkInstants(startedAt: number, endedAt: number | null, now: number): void {
  if (startedAt > now) throw new WatchError('invalid-request', 'a firing cannot start in the future');
  if (endedAt !== null && (endedAt <= startedAt || endedAt > now)) {
    throw new WatchError('invalid-request', 'endedAt must lie after startedAt and not in the future');
  }
}

export function refuseBeyondRating(furnace: Furnace, schedule: Schedule): void {
  const hottest = schedule.segments.findIndex((segment) => segment.targetCelsius > furnace.ratedCelsius);
  const segment = schedule.segments[hottest];
  if (!segment) return;
  throw new WatchError(
    'beyond-rating',
    `segment ${hottest + 1} asks for ${segment.targetCelsius} °C, but ${furnace.name} is rated for ${furnace.ratedCelsius} °C: change the schedule or use another furnace`,
  );
}

export function refuseBusy(furnace: Furnace, running: readonly FiringRow[]): void {
  const busy = running.find((row) => row.furnaceId === furnace.id);
  if (!busy) return;
  throw new WatchError(
    'furnace-busy',
    `${furnace.name} is already in a firing (${busy.title}): finish that one first`,
  );
}

/** A piece can lie in one furnace only. */
export function refuseElsewhere(pieces: readonly LoadPiece[], others: readonly FiringRow[]): void {
  const ids = new Set(pieces.map(({ pieceId }) => pieceId));
  for (const other of others) {
    const there = other.pieces.find(({ pieceId }) => ids.has(pieceId));
    if (there === undefined) continue;
    throw new WatchError(
      'in-use',
      `${there.mark} lies in another running firing (${other.title}): take it out of that one first`,
    );
  }
}
