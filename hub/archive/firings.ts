import type { Firing } from '../contract/firing.ts';
import type { Schedule } from '../contract/schedule.ts';
import { type Context, fromJson, mustChange } from './context.ts';
import { ArchiveError } from './errors.ts';
import { summaryPart } from './firing-summaries.ts';
import { judgementPart } from './judgements.ts';
import type { Archive, FiringRow } from './types.ts';

type Stored = Omit<Firing, 'simulated' | 'schedule' | 'watchedChannels'> & {
  simulated: number;
  schedule: string;
};

const SELECT = `
  SELECT id, furnace_id AS furnaceId, title, note, status, simulated, started_at AS startedAt,
    ended_at AS endedAt, schedule, created_at AS createdAt
  FROM firings`;

type FiringPart = Pick<
  Archive,
  | 'firings'
  | 'firing'
  | 'runningFirings'
  | 'finishedFiringsWatching'
  | 'createFiring'
  | 'saveFiring'
  | 'saveJudgement'
  | 'confirmSegment'
  | 'deleteFiring'
>;

export function firingPart(context: Context): FiringPart {
  const { db, ids, write } = context;
  const judgements = judgementPart(context);
  const one = db.prepare<[string], Stored>(`${SELECT} WHERE id = ?`);
  const running = db.prepare<[], Stored>(`${SELECT} WHERE status = 'running' ORDER BY started_at, id`);
  const watched = db
    .prepare<[string], string>('SELECT channel_id FROM firing_channels WHERE firing_id = ? ORDER BY position')
    .pluck();
  const overWatching = db
    .prepare<[object], string>(
      `SELECT f.id FROM firing_channels c JOIN firings f ON f.id = c.firing_id
       WHERE c.channel_id = @channelId AND f.status <> 'running' AND f.started_at <= @to
         AND (f.ended_at IS NULL OR f.ended_at >= @from)
       ORDER BY f.started_at, f.id`,
    )
    .pluck();
  const confirmations = db.prepare<[string], { at: number; segment: number }>(
    'SELECT at, segment FROM confirmations WHERE firing_id = ? ORDER BY at, segment',
  );
  const insert = db.prepare(
    `INSERT INTO firings (id, furnace_id, title, note, status, simulated, started_at, ended_at, created_at,
       schedule_name, schedule)
     VALUES (@id, @furnaceId, @title, @note, @status, @simulated, @startedAt, @endedAt, @createdAt,
       @scheduleName, @schedule)`,
  );
  const insertWatched = db.prepare(
    'INSERT INTO firing_channels (firing_id, position, channel_id) VALUES (?, ?, ?)',
  );
  const update = db.prepare(
    `UPDATE firings SET title = @title, note = @note, status = @status, started_at = @startedAt,
       ended_at = @endedAt WHERE id = @id`,
  );
  const confirm = db.prepare(
    'INSERT INTO confirmations (firing_id, segment, at) VALUES (?, ?, ?) ON CONFLICT DO NOTHING',
  );
  const remove = db.prepare('DELETE FROM firings WHERE id = ?');
  const removeAlarms = db.prepare('DELETE FROM alarms WHERE firing_id = @id AND subject = @id');
  const releaseAlarms = db.prepare('UPDATE alarms SET firing_id = NULL WHERE firing_id = ?');

  function toFiring(row: Stored): FiringRow {
    return {
      ...row,
      simulated: row.simulated === 1,
      schedule: fromJson<Schedule>(row.schedule),
      watchedChannels: watched.all(row.id),
      judgement: judgements.read(row.id),
      confirmations: confirmations.all(row.id),
    };
  }

  function createFiring(draft: Omit<Firing, 'id'>): FiringRow {
    const firing: Firing = { ...draft, id: ids() };
    insert.run({
      ...firing,
      simulated: Number(firing.simulated),
      schedule: JSON.stringify(firing.schedule),
      scheduleName: firing.schedule.name,
    });
    firing.watchedChannels.forEach((channel, position) => {
      insertWatched.run(firing.id, position, channel);
    });
    return { ...firing, judgement: null, confirmations: [] };
  }

  /** Alarms about the firing itself go with it; air and node alarms stay in the shop's record. */
  function deleteFiring(id: string): boolean {
    if (one.get(id)?.status === 'running') {
      throw new ArchiveError('conflict', `firing "${id}" is running: finish it before deleting it`);
    }
    removeAlarms.run({ id });
    releaseAlarms.run(id);
    return remove.run(id).changes > 0;
  }

  return {
    ...summaryPart(context),
    firing(id) {
      const row = one.get(id);
      return row ? toFiring(row) : null;
    },
    runningFirings: () => running.all().map(toFiring),
    finishedFiringsWatching: (channelId, from, to) => overWatching.all({ channelId, from, to }),
    createFiring: (draft) => write(() => createFiring(draft)),
    /** The frozen schedule and the watched channels stay as they were at the start. */
    saveFiring(firing) {
      mustChange(update.run(firing).changes, 'firing', firing.id);
    },
    saveJudgement(firingId, judgement) {
      write(() => {
        judgements.save(firingId, judgement);
      });
    },
    /** The first confirmation of a segment counts; a second press changes nothing. */
    confirmSegment(firingId, segment, at) {
      confirm.run(firingId, segment, at);
    },
    deleteFiring: (id) => write(() => deleteFiring(id)),
  };
}
