import type { ComparedBy, FiringComparison } from '../contract/comparison.ts';
import { compareFirings, type ReviewedFiring } from '../review/compare.ts';
import type { WebParts } from './parts.ts';
import { need } from './routes/need.ts';

/** Readings of one channel of one firing that are asked of the archive: about two for each pixel of a chart. */
const POINTS_OF_A_CURVE = 1600;

export interface CompareAsked {
  readonly ids: readonly string[];
  /** Left out: the reference of the schedule of the first, which is taken in with them. */
  readonly reference?: string | undefined;
  readonly by: ComparedBy;
  readonly points: number;
}

/**
 * Firings laid over each other, with the curves that the archive holds.
 *
 * @throws WatchError `not-found` for a firing that is not there
 */
export function compareView(parts: WebParts, asked: CompareAsked): FiringComparison {
  const referenceId = referenceOf(parts, asked);
  const ids = withReference(asked.ids, referenceId);
  const summaries = new Map(parts.archive.summariesOf(ids).map((row) => [row.id, row]));
  const firings = ids.map((id): ReviewedFiring => {
    const summary = need(summaries.get(id) ?? null, 'firing', id);
    const detail = parts.watch.firings.detail(id);
    const to = detail.endedAt ?? parts.clock.now();
    const curves = detail.watchedChannels.flatMap((channelId) => {
      const channel = parts.archive.channel(channelId);
      if (channel === null) return [];
      return [parts.archive.readings.series(channel, detail.startedAt, to, POINTS_OF_A_CURVE)];
    });
    return { summary: parts.watch.firings.asReached(summary), detail, curves };
  });
  const { by, points } = asked;
  return compareFirings({ firings, referenceId, by, points });
}

function referenceOf({ archive }: WebParts, { ids, reference }: CompareAsked): string | null {
  if (reference !== undefined) return reference;
  const scheduleId = archive.firing(ids[0] ?? '')?.schedule.id;
  return scheduleId === undefined ? null : (archive.scheduleReference(scheduleId)?.firingId ?? null);
}

/** One more curve than may be asked for is still told apart: the reference is drawn in its own way. */
function withReference(ids: readonly string[], reference: string | null): readonly string[] {
  return reference === null || ids.includes(reference) ? ids : [...ids, reference];
}
