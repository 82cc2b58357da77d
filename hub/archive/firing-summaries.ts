import type { FiringSummary } from '../contract/firing.ts';
import { type Context, fromJson } from './context.ts';
import type { Archive, FiringFilter } from './types.ts';

export type StoredSummary = Omit<FiringSummary, 'simulated' | 'marks'> & { simulated: number; marks: string };

/** The columns of a summary and what else is asked for, from firings `f`. */
export function summarySelect(...more: readonly string[]): string {
  return `
  SELECT f.id, f.furnace_id AS furnaceId, f.title, f.note, f.status, f.simulated,
    f.started_at AS startedAt, f.ended_at AS endedAt, f.created_at AS createdAt,
    u.name AS furnaceName, f.schedule_name AS scheduleName, f.verdict, f.peak_celsius AS peakCelsius,
    f.soak_seconds AS soakSeconds,
    (SELECT count(*) FROM alarms a WHERE a.firing_id = f.id) AS alarmCount,
    (SELECT json_group_array(m.mark) FROM (
       SELECT mark FROM firing_pieces WHERE firing_id = f.id ORDER BY position) m) AS marks
    ${more.map((column) => `, ${column}`).join('')}
  FROM firings f JOIN furnaces u ON u.id = f.furnace_id`;
}

export function toSummary(row: StoredSummary): FiringSummary {
  return { ...row, simulated: row.simulated === 1, marks: fromJson<string[]>(row.marks) };
}

/**
 * The one query behind the list, the newest first. Only the terms that are asked for stand in it, so that
 * SQLite can walk the index that fits and stop at the limit. `before` is exclusive.
 */
export function summarySql(filter: FiringFilter): string {
  const terms = [
    filter.status === undefined ? null : 'f.status = @status',
    filter.furnaceId === undefined ? null : 'f.furnace_id = @furnaceId',
    filter.before === undefined ? null : 'f.started_at < @before',
  ].filter((term) => term !== null);
  const where = terms.length > 0 ? `WHERE ${terms.join(' AND ')}` : '';
  return `${summarySelect()} ${where} ORDER BY f.started_at DESC, f.id DESC LIMIT @limit`;
}

export function summaryPart({ db }: Context): Pick<Archive, 'firings'> {
  return {
    firings: (filter) =>
      db
        .prepare<[object], StoredSummary>(summarySql(filter))
        .all({ status: null, furnaceId: null, before: null, ...filter })
        .map(toSummary),
  };
}
