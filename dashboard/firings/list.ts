import { FiringStatus, type FiringSummary, FiringVerdict } from '../../hub/contract/firing.ts';
import type { LiveFiring } from '../../hub/contract/live.ts';
import type { FiringQuery } from '../api/client.ts';

/** The firings list as arithmetic: what to ask for, in which order to show it. */

export const PAGE_SIZE = 50;

export interface FiringFilter {
  /** Empty: every furnace. */
  readonly furnaceId: string;
  /** Empty: every status. */
  readonly status: FiringStatus | '';
  /** Words that must all be found; empty: whatever. */
  readonly q: string;
  /** Empty: every schedule. */
  readonly scheduleId: string;
  /** Empty: every verdict. */
  readonly verdict: FiringVerdict | '';
  /** First and last day, "2026-03-07"; empty: open. */
  readonly from: string;
  readonly to: string;
}

export const EVERYTHING: FiringFilter = {
  ...{ furnaceId: '', status: '', q: '', scheduleId: '', verdict: '', from: '', to: '' },
};

/** The question for one page of the list. `after` is the last row of the page before; null asks for the newest. */
export function queryOf(filter: FiringFilter, after: string | null): FiringQuery {
  const { furnaceId, status, scheduleId, verdict } = filter;
  const q = filter.q.trim();
  const [from, before] = [dayStart(filter.from), dayStart(filter.to, 1)];
  return {
    limit: PAGE_SIZE,
    ...(furnaceId === '' ? {} : { furnaceId }),
    ...(status === '' ? {} : { status }),
    ...(q === '' ? {} : { q }),
    ...(scheduleId === '' ? {} : { scheduleId }),
    ...(verdict === '' ? {} : { verdict }),
    ...(from === null ? {} : { from }),
    ...(before === null ? {} : { before }),
    ...(after === null ? {} : { after }),
  };
}

/** Midnight of a day on this screen's clock, so many days on, epoch ms; null for what is no day. */
function dayStart(day: string, later = 0): number | null {
  const parts = /^(\d{4})-(\d\d)-(\d\d)$/.exec(day)?.slice(1).map(Number);
  if (parts === undefined) return null;
  const [year = 0, month = 1, date = 1] = parts;
  return Math.max(0, new Date(year, month - 1, date + later).getTime());
}

const KEYS = ['q', 'furnaceId', 'scheduleId', 'status', 'verdict', 'from', 'to'] as const;

/** The filter as it stands in the address: `?q=chisel&verdict=met`; empty when nothing is chosen. */
export function filterAddress(filter: FiringFilter): string {
  const chosen = KEYS.filter((key) => filter[key] !== '').map((key) => [key, filter[key]]);
  return chosen.length === 0 ? '' : `?${new URLSearchParams(chosen).toString()}`;
}

/** The filter that an address (`#/firings?q=chisel`) names. What it cannot read is not chosen. */
export function filterFrom(hash: string): FiringFilter {
  const given = new URLSearchParams(hash.split('?')[1] ?? '');
  const text = (key: (typeof KEYS)[number]) => given.get(key) ?? '';
  return {
    ...{ q: text('q'), furnaceId: text('furnaceId'), scheduleId: text('scheduleId') },
    ...{ from: text('from'), to: text('to') },
    status: FiringStatus.safeParse(text('status')).data ?? '',
    verdict: FiringVerdict.safeParse(text('verdict')).data ?? '',
  };
}

export function isNarrowed(filter: FiringFilter): boolean {
  return KEYS.some((key) => filter[key].trim() !== '');
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

/** Where the next page begins: behind the last row of a page as it came. Null when there is nothing yet. */
export function nextAfter(page: readonly FiringSummary[]): string | null {
  return page.at(-1)?.id ?? null;
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
