import type { AlarmJournalEntry, AlarmTransition } from '../contract/alarm-journal.ts';
import { chained } from './alarm-chain.ts';
import type { AlarmJournalFilter, AlarmStore } from './alarm-types.ts';
import { type Context, fromJson } from './context.ts';

/** The journal of alarms as it is kept: added to, read, and never changed. */

type Stored = Omit<AlarmJournalEntry, 'params' | 'active'> & { params: string; active: number };

const SELECT = `
  SELECT seq, at, alarm_id AS alarmId, kind, priority, subject, firing_id AS firingId, furnace_id AS furnaceId,
    event, from_state AS "from", to_state AS "to", active, active_since AS activeSince, by, why, until, params,
    previous_hash AS previousHash, hash
  FROM alarm_journal`;

function toEntry(row: Stored): AlarmJournalEntry {
  return { ...row, params: fromJson<AlarmJournalEntry['params']>(row.params), active: row.active === 1 };
}

function listSql(filter: AlarmJournalFilter): string {
  const terms = [
    filter.from === undefined ? null : 'at >= @from',
    filter.to === undefined ? null : 'at <= @to',
    filter.alarmId === undefined ? null : 'alarm_id = @alarmId',
    filter.before === undefined ? null : 'seq < @before',
    filter.after === undefined ? null : 'seq > @after',
  ].filter((term) => term !== null);
  const where = terms.length > 0 ? `WHERE ${terms.join(' AND ')}` : '';
  return `${SELECT} ${where} ORDER BY seq ${filter.order === 'newest-first' ? 'DESC' : 'ASC'} LIMIT @limit`;
}

export interface JournalPart extends Pick<AlarmStore, 'alarmJournal' | 'alarmsStandingAt'> {
  /** Inside the caller's transaction. */
  append(transitions: readonly AlarmTransition[]): void;
}

export function alarmJournalPart({ db }: Context): JournalPart {
  const last = db.prepare<[], { seq: number; hash: string }>(
    'SELECT seq, hash FROM alarm_journal ORDER BY seq DESC LIMIT 1',
  );
  const insert = db.prepare(
    `INSERT INTO alarm_journal (seq, at, alarm_id, kind, priority, subject, firing_id, furnace_id, event, from_state,
       to_state, active, active_since, by, why, until, params, previous_hash, hash)
     VALUES (@seq, @at, @alarmId, @kind, @priority, @subject, @firingId, @furnaceId, @event, @from, @to, @active,
       @activeSince, @by, @why, @until, @params, @previousHash, @hash)`,
  );
  const standing = db.prepare<[number], Stored>(
    `${SELECT} WHERE seq IN (SELECT max(seq) FROM alarm_journal WHERE at <= ? GROUP BY alarm_id)
       AND to_state <> 'normal' ORDER BY seq`,
  );
  return {
    append(transitions) {
      let head = last.get() ?? null;
      for (const transition of transitions) {
        const entry = chained(asStored(transition), head);
        insert.run({ ...entry, params: JSON.stringify(entry.params), active: Number(entry.active) });
        head = entry;
      }
    },
    alarmJournal: (filter) =>
      db
        .prepare<[object], Stored>(listSql(filter))
        .all({ ...EVERYTHING, ...filter })
        .map(toEntry),
    alarmsStandingAt: (at) => standing.all(at).map(toEntry),
  };
}

/**
 * As it will come back: half a surrogate pair and a number that JSON cannot carry must neither stop an alarm nor make
 * its entry look tampered with.
 */
function asStored(transition: AlarmTransition): AlarmTransition {
  const { by, why, subject, params } = transition;
  return {
    ...transition,
    by: by === null ? null : wellFormed(by),
    why: why === null ? null : wellFormed(why),
    subject: wellFormed(subject),
    params: fromJson<AlarmTransition['params']>(JSON.stringify(params)),
  };
}

function wellFormed(text: string): string {
  return Buffer.from(text, 'utf8').toString('utf8');
}

/** A parameter that no term names must still have a value. */
const EVERYTHING = { from: null, to: null, alarmId: null, before: null, after: null };
