import { alarmJournalPart } from './alarm-journal.ts';
import type { AlarmFilter, AlarmRow, AlarmStore } from './alarm-types.ts';
import type { Context } from './context.ts';
import { fromJson } from './context.ts';

type Documents = 'params' | 'shelf' | 'suppression' | 'outOfService';
type Stored = Omit<AlarmRow, Documents | 'active'> & {
  params: string;
  active: number;
  shelf: string | null;
  suppression: string | null;
  outOfService: string | null;
};

const SELECT = `
  SELECT id, kind, priority, subject, firing_id AS firingId, furnace_id AS furnaceId, params, state, active,
    raised_at AS raisedAt, cleared_at AS clearedAt, acknowledged_at AS acknowledgedAt,
    acknowledged_by AS acknowledgedBy, active_since AS activeSince, shelf, suppression,
    out_of_service AS outOfService
  FROM alarms`;

function toAlarm(row: Stored): AlarmRow {
  return {
    ...row,
    params: fromJson<AlarmRow['params']>(row.params),
    active: row.active === 1,
    shelf: documentOrNull<AlarmRow['shelf']>(row.shelf),
    suppression: documentOrNull<AlarmRow['suppression']>(row.suppression),
    outOfService: documentOrNull<AlarmRow['outOfService']>(row.outOfService),
  };
}

function documentOrNull<T>(text: string | null): T | null {
  return text === null ? null : fromJson<T>(text);
}

function textOrNull(document: object | null): string | null {
  return document === null ? null : JSON.stringify(document);
}

function toStored(alarm: AlarmRow): Stored {
  return {
    ...alarm,
    params: JSON.stringify(alarm.params),
    active: Number(alarm.active),
    shelf: textOrNull(alarm.shelf),
    suppression: textOrNull(alarm.suppression),
    outOfService: textOrNull(alarm.outOfService),
  };
}

/** The newest first. Without a state, all of them. */
function listSql(filter: AlarmFilter): string {
  const terms = [
    // The words of the partial index, so that it is used: open alarms are few among years of closed ones.
    filter.state === 'open' ? "state <> 'normal'" : null,
    filter.firingId === undefined ? null : 'firing_id = @firingId',
  ].filter((term) => term !== null);
  const where = terms.length > 0 ? `WHERE ${terms.join(' AND ')}` : '';
  return `${SELECT} ${where} ORDER BY raised_at DESC, id DESC LIMIT @limit`;
}

export function alarmPart(context: Context): AlarmStore {
  const { db, write } = context;
  const { append, ...journal } = alarmJournalPart(context);
  const one = db.prepare<[string], Stored>(`${SELECT} WHERE id = ?`);
  const upsert = db.prepare(
    `INSERT INTO alarms (id, kind, priority, subject, firing_id, furnace_id, params, state, active, raised_at,
       cleared_at, acknowledged_at, acknowledged_by, active_since, shelf, suppression, out_of_service)
     VALUES (@id, @kind, @priority, @subject, @firingId, @furnaceId, @params, @state, @active, @raisedAt,
       @clearedAt, @acknowledgedAt, @acknowledgedBy, @activeSince, @shelf, @suppression, @outOfService)
     ON CONFLICT (id) DO UPDATE SET kind = excluded.kind, priority = excluded.priority,
       subject = excluded.subject, firing_id = excluded.firing_id, furnace_id = excluded.furnace_id,
       params = excluded.params, state = excluded.state, active = excluded.active,
       raised_at = excluded.raised_at, cleared_at = excluded.cleared_at,
       acknowledged_at = excluded.acknowledged_at, acknowledged_by = excluded.acknowledged_by,
       active_since = excluded.active_since, shelf = excluded.shelf, suppression = excluded.suppression,
       out_of_service = excluded.out_of_service`,
  );

  return {
    alarms: (filter) =>
      db
        .prepare<[object], Stored>(listSql(filter))
        .all({ firingId: filter.firingId ?? null, limit: filter.limit })
        .map(toAlarm),
    alarm(id) {
      const row = one.get(id);
      return row ? toAlarm(row) : null;
    },
    saveAlarms(alarms, transitions = []) {
      write(() => {
        for (const alarm of alarms) upsert.run(toStored(alarm));
        append(transitions);
      });
    },
    ...journal,
  };
}
