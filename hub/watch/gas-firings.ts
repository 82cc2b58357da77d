import type { Archive, FiringRow } from '../archive/types.ts';
import type { FiringJudgement } from '../contract/firing.ts';
import type { Segment } from '../contract/schedule.ts';
import type { FiringNow } from '../gas/types.ts';

/** What the firings of a stretch of time asked of their furnaces, as their judgements say. */

interface Heat {
  readonly from: number;
  readonly to: number | null;
  readonly celsius: number;
}

/** A firing with the little of it that the gas is judged by. */
export interface FiringSpan {
  readonly firingId: string;
  readonly furnaceId: string;
  readonly from: number;
  readonly to: number | null;
  readonly heats: readonly Heat[];
  readonly heatEndsAt: number | null;
}

/** The judgement as it stands now; null: none yet. */
export type JudgementOf = (row: FiringRow) => FiringJudgement | null;

/** Firings that overlap (after, upTo]. Looks at the forty newest. */
export function firingSpans(
  archive: Archive,
  after: number,
  upTo: number,
  judgementOf: JudgementOf,
): readonly FiringSpan[] {
  return archive
    .firings({ limit: 40 })
    .filter(({ startedAt, endedAt }) => startedAt <= upTo && (endedAt ?? upTo) > after)
    .flatMap(({ id }) => {
      const row = archive.firing(id);
      return row === null ? [] : [spanOf(row, judgementOf(row))];
    });
}

function spanOf(row: FiringRow, judgement: FiringJudgement | null): FiringSpan {
  const { id: firingId, furnaceId, startedAt: from, endedAt: to, schedule } = row;
  const common = { firingId, furnaceId, from, to };
  if (judgement === null) {
    const first = schedule.segments[0];
    const heats =
      first === undefined || first.kind === 'cool' ? [] : [{ from, to: null, celsius: first.targetCelsius }];
    return { ...common, heats, heatEndsAt: null };
  }
  const heats = judgement.segments.flatMap(({ index, startedAt, endedAt }): Heat[] => {
    const segment = schedule.segments[index];
    if (startedAt === null || segment === undefined || segment.kind === 'cool') return [];
    return [{ from: startedAt, to: endedAt, celsius: segment.targetCelsius }];
  });
  return { ...common, heats, heatEndsAt: heatEndsAt(schedule.segments, judgement) };
}

/** End of the running segment and the heating after it. A later ramp without a rate is not in it: nobody foretells it. */
function heatEndsAt(segments: readonly Segment[], { segmentIndex, endsAt }: FiringJudgement): number | null {
  if (endsAt === null || segments[segmentIndex]?.kind === 'cool') return null;
  const later = segments.slice(segmentIndex + 1);
  const seconds = later.reduce(
    (sum, segment) => sum + (segment.kind === 'soak' ? segment.durationSeconds : 0),
    0,
  );
  return endsAt + seconds * 1000;
}

/** What holds at an instant. */
export function firingsAt(spans: readonly FiringSpan[], at: number): FiringNow[] {
  return spans
    .filter(({ from, to }) => from < at && at <= (to ?? at))
    .map(({ firingId, furnaceId, heats, heatEndsAt: ends }) => {
      const heat = heats.find(({ from, to }) => from < at && at <= (to ?? at));
      const wanted = heat !== undefined;
      return { firingId, furnaceId, wanted, targetCelsius: heat?.celsius ?? null, heatEndsAt: ends };
    });
}
