import type { FiringSummary } from '../contract/firing.ts';
import { type Context, fromJson } from './context.ts';
import { firingTerms } from './firing-search.ts';
import type { Archive, FiringFilter } from './types.ts';

export type StoredSummary = Omit<FiringSummary, 'simulated' | 'marks'> & { simulated: number; marks: string };

/** The columns of a summary and what else is asked for, from firings `f`, walking `index` if one is named. */
export function summarySelect(more: readonly string[] = [], index = ''): string {
  return `
  SELECT f.id, f.furnace_id AS furnaceId, f.title, f.note, f.status, f.simulated,
    f.started_at AS startedAt, f.ended_at AS endedAt, f.created_at AS createdAt,
    u.name AS furnaceName, f.schedule_name AS scheduleName, f.verdict, f.peak_celsius AS peakCelsius,
    f.soak_seconds AS soakSeconds,
    (SELECT count(*) FROM alarms a WHERE a.firing_id = f.id) AS alarmCount,
    (SELECT json_group_array(m.mark) FROM (
       SELECT mark FROM firing_pieces WHERE firing_id = f.id ORDER BY position) m) AS marks
    ${more.map((column) => `, ${column}`).join('')}
  FROM firings f ${index} JOIN furnaces u ON u.id = f.furnace_id`;
}

export function toSummary(row: StoredSummary): FiringSummary {
  return { ...row, simulated: row.simulated === 1, marks: fromJson<string[]>(row.marks) };
}

/**
 * The one query behind the list, the newest first. Only the terms that are asked for stand in it, so that
 * SQLite can walk the index that fits and stop at the limit. `before` and `after` are exclusive.
 */
export function summaryQuery(
  filter: FiringFilter,
  furnaces: readonly { readonly id: string; readonly name: string }[] = [],
): { readonly sql: string; readonly values: object } {
  const { terms, values, index } = firingTerms(filter, furnaces);
  const where = terms.length > 0 ? `WHERE ${terms.join(' AND ')}` : '';
  const sql = `${summarySelect([], index)} ${where} ORDER BY f.started_at DESC, f.id DESC LIMIT @limit`;
  return { sql, values };
}

export function summaryPart({ db }: Context): Pick<Archive, 'firings'> {
  const furnaces = db.prepare<[], { id: string; name: string }>('SELECT id, name FROM furnaces');
  return {
    firings(filter) {
      const { sql, values } = summaryQuery(filter, filter.q ? furnaces.all() : []);
      return db.prepare<[object], StoredSummary>(sql).all(values).map(toSummary);
    },
  };
}
