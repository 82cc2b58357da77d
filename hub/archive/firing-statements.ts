import type { Firing } from '../contract/firing.ts';
import type { Context } from './context.ts';

export type StoredFiring = Omit<Firing, 'simulated' | 'schedule' | 'watchedChannels' | 'pieces'> & {
  simulated: number;
  schedule: string;
};

const SELECT = `
  SELECT id, furnace_id AS furnaceId, title, note, status, simulated, started_at AS startedAt,
    ended_at AS endedAt, schedule, created_at AS createdAt
  FROM firings`;

const INSERT = `
  INSERT INTO firings (id, furnace_id, title, note, status, simulated, started_at, ended_at, created_at,
    schedule_name, schedule, search)
  VALUES (@id, @furnaceId, @title, @note, @status, @simulated, @startedAt, @endedAt, @createdAt,
    @scheduleName, @schedule, @search)`;

const OVER_WATCHING = `
  SELECT f.id FROM firing_channels c JOIN firings f ON f.id = c.firing_id
  WHERE c.channel_id = @channelId AND f.status <> 'running' AND f.started_at <= @to
    AND (f.ended_at IS NULL OR f.ended_at >= @from)
  ORDER BY f.started_at, f.id`;

/** Every question that is put to a firing and its own small tables, prepared once. */
export function firingStatements({ db }: Context) {
  return {
    one: db.prepare<[string], StoredFiring>(`${SELECT} WHERE id = ?`),
    running: db.prepare<[], StoredFiring>(`${SELECT} WHERE status = 'running' ORDER BY started_at, id`),
    overWatching: db.prepare<[object], string>(OVER_WATCHING).pluck(),
    watched: db
      .prepare<[string], string>(
        'SELECT channel_id FROM firing_channels WHERE firing_id = ? ORDER BY position',
      )
      .pluck(),
    confirmations: db.prepare<[string], { at: number; segment: number }>(
      'SELECT at, segment FROM confirmations WHERE firing_id = ? ORDER BY at, segment',
    ),
    insert: db.prepare(INSERT),
    watch: db.prepare('INSERT INTO firing_channels (firing_id, position, channel_id) VALUES (?, ?, ?)'),
    update: db.prepare(
      `UPDATE firings SET title = @title, note = @note, status = @status, started_at = @startedAt,
         ended_at = @endedAt, search = @search WHERE id = @id`,
    ),
    reword: db.prepare('UPDATE firings SET search = ? WHERE id = ?'),
    confirm: db.prepare(
      'INSERT INTO confirmations (firing_id, segment, at) VALUES (?, ?, ?) ON CONFLICT DO NOTHING',
    ),
    remove: db.prepare('DELETE FROM firings WHERE id = ?'),
    removeAlarms: db.prepare('DELETE FROM alarms WHERE firing_id = @id AND subject = @id'),
    releaseAlarms: db.prepare('UPDATE alarms SET firing_id = NULL WHERE firing_id = ?'),
  };
}
