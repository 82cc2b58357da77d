import type { BatchFiring, HardnessSeen } from '../archive/review-types.ts';
import type { BatchStatistics, Measure } from '../contract/batch-statistics.ts';
import type { Observation } from '../contract/observation.ts';
import type { Schedule } from '../contract/schedule.ts';
import { meanOf } from '../physics/statistics/describe.ts';
import { batchOf, type Change, type Charted } from '../review/batch.ts';
import { type IndexedSoak, mainSoak, measured, soaksOf, toleranceOf } from '../review/measure.ts';
import { FieldError } from '../watch/errors.ts';
import type { WebParts } from './parts.ts';
import { need } from './routes/need.ts';

export interface BatchAsked {
  readonly schedule: string;
  readonly furnace?: string | undefined;
  readonly measure: Measure;
  readonly segment?: number | undefined;
  readonly limit: number;
}

const UNITS = { 'soak-mean': 'Cel', peak: 'Cel', 'soak-time': 's', hardness: 'HRC' } as const;

/** Noted fills looked at, the newest. */
const MOST_CYLINDERS = 500;

interface Gathered {
  readonly points: readonly Charted[];
  readonly unknown: number;
  readonly otherScale: number;
  readonly older: boolean;
  readonly changes: readonly Change[];
}

/**
 * The charted history of one schedule.
 *
 * @throws WatchError `not-found`; FieldError `invalid-request` for a segment that is no soak
 */
export function batchView(parts: WebParts, asked: BatchAsked): BatchStatistics {
  const schedule = need(parts.archive.schedule(asked.schedule), 'schedule', asked.schedule);
  if (asked.furnace !== undefined) need(parts.archive.furnace(asked.furnace), 'furnace', asked.furnace);
  const soak = soakAsked(schedule, asked);
  const { points, changes, ...leftOut } = gather(parts, asked, soak);
  const tolerance = toleranceOf(asked.measure, soak?.soak ?? null);
  const answer = batchOf({ points, tolerance, changes: [...changes, ...noted(parts, points)] });
  return {
    measure: asked.measure,
    unit: UNITS[asked.measure],
    segment: asked.measure === 'hardness' ? null : (soak?.index ?? null),
    soaks: soaksOf(schedule.segments).map(({ index, soak: { targetCelsius, durationSeconds } }) => ({
      index,
      targetCelsius,
      durationSeconds,
    })),
    points: [...answer.points],
    chart: answer.chart,
    tolerance,
    capability: answer.capability,
    changes: [...answer.changes],
    leftOut,
  };
}

function soakAsked({ segments }: Schedule, { segment }: BatchAsked): IndexedSoak | null {
  if (segment === undefined) return mainSoak(segments);
  const found = soaksOf(segments).find(({ index }) => index === segment);
  if (found) return found;
  throw new FieldError('/segment', `segment ${segment + 1} of this schedule is no soak`);
}

function gather(parts: WebParts, asked: BatchAsked, soak: IndexedSoak | null): Gathered {
  const filter = { scheduleId: asked.schedule, furnaceId: asked.furnace, limit: asked.limit + 1 };
  if (asked.measure === 'hardness') return ofHardness(parts.archive.hardnessSeen(filter), asked.limit);
  const rows = soak === null ? [] : parts.archive.batch({ ...filter, segment: soak.index });
  return ofFirings(rows, asked.measure, asked.limit);
}

function ofFirings(
  rows: readonly BatchFiring[],
  measure: Exclude<Measure, 'hardness'>,
  limit: number,
): Gathered {
  const shown = rows.slice(0, limit).reverse();
  const points = shown.flatMap(({ planned, result, id, startedAt, ...row }): Charted[] => {
    const value = planned?.kind === 'soak' && result !== null ? measured(measure, result) : null;
    if (value === null) return [];
    return [{ ...row, at: startedAt, value, firingId: id, pieceId: null, marks: [...row.marks] }];
  });
  return {
    points,
    unknown: shown.length - points.length,
    otherScale: 0,
    older: rows.length > limit,
    changes: replannedIn(shown),
  };
}

/** What was changed in the furnaces of these firings, or in the whole shop, while they were made. */
function noted({ archive }: WebParts, points: readonly Charted[]): readonly Change[] {
  const [first, last] = [points[0], points.at(-1)];
  if (first === undefined || last === undefined) return [];
  const furnaces = new Set(points.map(({ furnaceId }) => furnaceId));
  const cylinders = archive
    .gasChanges(MOST_CYLINDERS)
    .filter(({ at }) => at >= first.at && at <= last.at)
    .map(({ at, furnaceId, note }) => ({ at, furnaceId, kind: 'cylinder' as const, text: note }));
  return [...archive.shopChanges(first.at, last.at), ...cylinders].filter(
    ({ furnaceId }) => furnaceId === null || furnaces.has(furnaceId),
  );
}

/** Where the plan of the soak became another one: values on both sides are not of one process. */
function replannedIn(rows: readonly BatchFiring[]): Change[] {
  return rows.flatMap(({ planned, startedAt, scheduleVersion }, at) => {
    const before = rows[at - 1];
    if (before === undefined || JSON.stringify(before.planned) === JSON.stringify(planned)) return [];
    return [{ at: startedAt, kind: 'schedule' as const, text: String(scheduleVersion) }];
  });
}

function ofHardness(seen: readonly HardnessSeen[], limit: number): Gathered {
  const shown = seen.slice(0, limit).reverse();
  const points = shown.flatMap(({ observation, mark, firing }): Charted[] => {
    const value = meanHrc(observation);
    if (value === null || firing === null) return [];
    const { id, startedAt: _, ...about } = firing;
    const { at, pieceId } = observation;
    return [{ ...about, at, value, firingId: id, pieceId, marks: [mark] }];
  });
  const otherScale = shown.filter(({ observation }) => meanHrc(observation) === null).length;
  const unknown = shown.length - points.length - otherScale;
  return { points, unknown, otherScale, older: seen.length > limit, changes: [] };
}

/** Mean of the readings of an observation, HRC; null when it is no hardness, or in another scale. */
export function meanHrc({ seen }: Pick<Observation, 'seen'>): number | null {
  return seen.kind === 'hardness' && seen.scale === 'HRC'
    ? meanOf(seen.readings.map(({ value }) => value))
    : null;
}
