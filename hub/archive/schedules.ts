import type { Schedule, ScheduleDraft } from '../contract/schedule.ts';
import { type Context, fromJson } from './context.ts';
import { ArchiveError } from './errors.ts';
import type { Archive } from './types.ts';

type ScheduleRow = Omit<Schedule, 'segments' | 'archived' | 'basis'> & {
  segments: string;
  archived: number;
  basis: string | null;
};

const SELECT = `
  SELECT s.id, s.version, v.name, v.note, v.display_unit AS displayUnit, v.segments, v.basis,
    v.created_at AS createdAt, s.archived
  FROM schedules s JOIN schedule_versions v ON v.schedule_id = s.id AND v.version = s.version`;

function toSchedule({ basis, ...row }: ScheduleRow): Schedule {
  return {
    ...row,
    segments: fromJson<Schedule['segments']>(row.segments),
    archived: row.archived === 1,
    ...(basis === null ? {} : { basis: fromJson<NonNullable<Schedule['basis']>>(basis) }),
  };
}

/** Schedules, each as its newest version. `createdAt` is the instant of that version. */
export function schedulePart({
  db,
  ids,
  write,
}: Context): Pick<
  Archive,
  'schedules' | 'schedule' | 'createSchedule' | 'reviseSchedule' | 'archiveSchedule'
> {
  const all = db.prepare<[], ScheduleRow>(`${SELECT} ORDER BY v.name COLLATE NOCASE, s.id`);
  const one = db.prepare<[string], ScheduleRow>(`${SELECT} WHERE s.id = ?`);
  const insert = db.prepare(
    'INSERT INTO schedules (id, version, archived, created_at, updated_at) VALUES (?, 1, 0, ?, ?)',
  );
  const raise = db
    .prepare<[number, string], number>(
      'UPDATE schedules SET version = version + 1, updated_at = ? WHERE id = ? RETURNING version',
    )
    .pluck();
  const insertVersion = db.prepare(
    `INSERT INTO schedule_versions (schedule_id, version, name, note, display_unit, created_at, segments, basis)
     VALUES (@id, @version, @name, @note, @displayUnit, @at, @segments, @basis)`,
  );
  const setArchived = db.prepare('UPDATE schedules SET archived = 1, updated_at = ? WHERE id = ?');

  function schedule(id: string): Schedule | null {
    const row = one.get(id);
    return row ? toSchedule(row) : null;
  }

  function addVersion(id: string, version: number, draft: ScheduleDraft, at: number): Schedule {
    insertVersion.run({
      ...draft,
      segments: JSON.stringify(draft.segments),
      basis: draft.basis === undefined ? null : JSON.stringify(draft.basis),
      id,
      version,
      at,
    });
    const kept = schedule(id);
    if (!kept) throw new ArchiveError('fault', `schedule "${id}" was written and is not there`);
    return kept;
  }

  return {
    schedules: () => all.all().map(toSchedule),
    schedule,
    createSchedule: (draft, at) =>
      write(() => {
        const id = ids();
        insert.run(id, at, at);
        return addVersion(id, 1, draft, at);
      }),
    reviseSchedule: (id, draft, at) =>
      write(() => {
        const version = raise.get(at, id);
        if (version === undefined) throw new ArchiveError('not-found', `there is no schedule "${id}"`);
        return addVersion(id, version, draft, at);
      }),
    archiveSchedule: (id, at) => setArchived.run(at, id).changes > 0,
  };
}
