import type { Archive, FiringRow } from '../archive/types.ts';
import type { FurnaceFitTry } from '../contract/furnace-fit.ts';
import type { Reading } from '../contract/reading.ts';
import type { Channel, ChannelRole } from '../contract/shop.ts';
import type { RunPoint } from '../physics/heat/furnace-fit.ts';
import { WatchError } from '../watch/errors.ts';

/** The run of a recorded firing, as a fit wants it: chamber and load at the same instants. */

/** As many as the fit uses; each is the mean of its slice, so nothing is lost to thinning. */
const SLICES = 200;
const SHORTEST_SLICE_MS = 5000;
/** A firing that somebody forgot to finish is not read to its end. */
const LONGEST_RUN_MS = 24 * 3_600_000;
/** Over a longer silence nobody knows what the chamber did: the run is cut there. The longer of the two counts. */
const JOINED_SLICES = 3;
const JOINED_MS = 120_000;

export interface RecordedRun {
  readonly run: readonly RunPoint[];
  /** False when the run was cut and its longest part does not begin with the firing. */
  readonly whole: boolean;
}

/**
 * Means of slices from the start to where the plan first lets the load cool: what it does outside the furnace says
 * nothing about the furnace.
 *
 * @throws WatchError `conflict`, `no-watched-channel`, `not-applicable`
 */
export function recordedRun(
  archive: Archive,
  furnaceId: string,
  firing: FiringRow,
  asked: Pick<FurnaceFitTry, 'chamberChannel' | 'loadChannel'>,
): RecordedRun {
  if (firing.furnaceId !== furnaceId) {
    throw new WatchError('conflict', 'that firing was in another furnace: choose one of this furnace');
  }
  if (firing.endedAt === null) {
    throw new WatchError('conflict', 'that firing is still running: finish it first');
  }
  const chamber = channelOf(archive, firing, 'chamber', asked.chamberChannel);
  const load = channelOf(archive, firing, 'load', asked.loadChannel);
  const from = firing.startedAt;
  const to = Math.min(coolingBegins(firing) ?? firing.endedAt, firing.endedAt, from + LONGEST_RUN_MS);
  const width = Math.max(SHORTEST_SLICE_MS, Math.ceil((to - from) / SLICES));
  const points: RunPoint[] = [];
  for (let at = from; at < to; at += width) {
    const until = Math.min(at + width, to) - 1;
    const chamberCelsius = meanOf(archive.readings.range(chamber.id, at, until));
    const loadCelsius = meanOf(archive.readings.range(load.id, at, until));
    if (chamberCelsius === null || loadCelsius === null) continue;
    points.push({ atMs: at + Math.round(width / 2), chamberCelsius, loadCelsius });
  }
  const run = longestPart(points, Math.max(JOINED_MS, JOINED_SLICES * width));
  if (run.length > 0) return { run, whole: run[0] === points[0] };
  throw new WatchError(
    'not-applicable',
    'chamber and load have no readings at the same time in that firing: choose another',
  );
}

function channelOf(archive: Archive, firing: FiringRow, role: ChannelRole, asked: string | null): Channel {
  const temperatures = archive.channels().filter(({ quantity }) => quantity === 'temperature');
  if (asked !== null) {
    const named = temperatures.find(({ id }) => id === asked);
    if (named) return named;
    throw new WatchError('not-found', `there is no temperature channel with the id ${asked}`);
  }
  const own = temperatures.filter((each) => each.role === role && each.furnaceId === firing.furnaceId);
  const found = own.find(({ id }) => firing.watchedChannels.includes(id)) ?? own[0];
  if (found) return found;
  throw new WatchError(
    'no-watched-channel',
    `this furnace has no channel with the role ${role}: a fit needs a thermocouple in the ${role}`,
  );
}

/** When the first segment that lets it cool began. Null while none did. */
function coolingBegins({ schedule, judgement }: FiringRow): number | null {
  const cool = schedule.segments.findIndex(({ kind }) => kind === 'cool');
  return judgement?.segments[cool]?.startedAt ?? null;
}

function meanOf(readings: readonly Reading[]): number | null {
  const good = readings.filter(({ quality }) => quality === 'good');
  return good.length === 0 ? null : good.reduce((sum, { value }) => sum + value, 0) / good.length;
}

function longestPart(points: readonly RunPoint[], mostMs: number): readonly RunPoint[] {
  let longest: readonly RunPoint[] = [];
  let begin = 0;
  for (const [i, point] of points.entries()) {
    const next = points[i + 1];
    if (next !== undefined && next.atMs - point.atMs <= mostMs) continue;
    if (i + 1 - begin > longest.length) longest = points.slice(begin, i + 1);
    begin = i + 1;
  }
  return longest;
}
