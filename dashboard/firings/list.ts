import type { FiringStatus, FiringSummary } from '../../hub/contract/firing.ts';
import type { LiveFiring } from '../../hub/contract/live.ts';
import type { FiringQuery } from '../api/client.ts';

/** The firings list as arithmetic: what to ask for, in which order to show it. */

export const PAGE_SIZE = 50;

export interface FiringFilter {
  /** Empty: every furnace. */
  readonly furnaceId: string;
  /** Empty: every status. */
  readonly status: FiringStatus | '';
}

export const EVERYTHING: FiringFilter = { furnaceId: '', status: '' };

/** The question for one page of the list. `before` is epoch ms; null asks for the newest. */
export function queryOf(filter: FiringFilter, before: number | null): FiringQuery {
  return {
    limit: PAGE_SIZE,
    ...(filter.furnaceId === '' ? {} : { furnaceId: filter.furnaceId }),
    ...(filter.status === '' ? {} : { status: filter.status }),
    ...(before === null ? {} : { before }),
  };
}

/** Pages put together: each firing once (the page that came last wins), running ones on top, newest first. */
export function inOrder(pages: readonly (readonly FiringSummary[])[]): FiringSummary[] {
  const byId = new Map(pages.flat().map((row) => [row.id, row]));
  return [...byId.values()].sort(
    (a, b) =>
      Number(b.status === 'running') - Number(a.status === 'running') ||
      b.startedAt - a.startedAt ||
      a.id.localeCompare(b.id),
  );
}

/** Where the next page begins: the oldest start of the pages loaded so far. Null when there is nothing yet. */
export function nextBefore(page: readonly FiringSummary[]): number | null {
  return page.reduce<number | null>(
    (oldest, row) => (oldest === null ? row.startedAt : Math.min(oldest, row.startedAt)),
    null,
  );
}

/** A row with what the live feed knows better while the firing runs. */
export function withLive(row: FiringSummary, live: LiveFiring | undefined): FiringSummary {
  if (live === undefined || row.status !== 'running') return row;
  const peaks = live.judgement.segments.flatMap((segment) =>
    segment.peakCelsius === null ? [] : [segment.peakCelsius],
  );
  return {
    ...row,
    title: live.firing.title,
    verdict: live.judgement.verdict,
    peakCelsius: peaks.length > 0 ? Math.max(...peaks) : row.peakCelsius,
    soakSeconds: live.judgement.segments.reduce((sum, segment) => sum + segment.soakSeconds, 0),
  };
}

/** How long a firing took, or has taken until now, seconds. */
export function lastedSeconds(row: Pick<FiringSummary, 'startedAt' | 'endedAt'>, nowMs: number): number {
  return Math.max(0, ((row.endedAt ?? nowMs) - row.startedAt) / 1000);
}
