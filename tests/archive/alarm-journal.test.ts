import { createHash } from 'node:crypto';
import Database from 'better-sqlite3';
import { describe, expect, it } from 'vitest';
import { canonicalJson, chained, checkChain, hashOf } from '../../hub/archive/alarm-chain.ts';
import { alarmPart } from '../../hub/archive/alarms.ts';
import { makeContext } from '../../hub/archive/context.ts';
import { migrate } from '../../hub/archive/migrate.ts';
import { MIGRATIONS } from '../../hub/archive/migrations/list.ts';
import type { AlarmJournalEntry, AlarmTransition } from '../../hub/contract/alarm-journal.ts';
import { alarm, T0 } from './helpers.ts';

const ALL = { order: 'oldest-first', limit: 100 } as const;

const transition = (at: number, extra: Partial<AlarmTransition> = {}): AlarmTransition => ({
  at,
  alarmId: 'a',
  kind: 'overshoot',
  priority: 'warning',
  subject: 'firing-1',
  firingId: 'firing-1',
  furnaceId: 'forge',
  event: 'condition-on',
  from: 'normal',
  to: 'unacknowledged',
  active: true,
  activeSince: at,
  by: null,
  why: null,
  until: null,
  params: { celsius: 0.1 + 0.2, channel: 'chamber', limit: null },
  ...extra,
});

/** The alarms over a bare database, so that a test can reach into the file as an intruder would. */
function bench() {
  const db = new Database(':memory:');
  migrate(db, MIGRATIONS);
  const part = alarmPart(makeContext(db, () => 'id'));
  const journal = (): readonly AlarmJournalEntry[] => part.alarmJournal(ALL);
  return { db, part, journal };
}

function filled() {
  const made = bench();
  const steps = [
    transition(T0),
    transition(T0 + 1000, { event: 'acknowledge', from: 'unacknowledged', to: 'acknowledged', by: 'Ina' }),
    transition(T0 + 2000, { event: 'condition-off', from: 'acknowledged', to: 'normal', active: false }),
    transition(T0 + 3000, { alarmId: 'b' }),
  ];
  made.part.saveAlarms([alarm('a'), alarm('b')], steps.slice(0, 2));
  made.part.saveAlarms([], steps.slice(2));
  return { ...made, steps };
}

describe('the journal of alarms', () => {
  it('keeps every step with its number, in order, as it was told', () => {
    const { journal, steps } = filled();
    expect(journal().map(({ seq }) => seq)).toEqual([1, 2, 3, 4]);
    expect(journal()).toMatchObject(steps);
    expect(checkChain(journal())).toMatchObject({ holds: true, entries: 4, breaks: [] });
  });

  it('is read by time, by alarm and by page, newest or oldest first', () => {
    const { part } = filled();
    const seqs = (filter: object) => part.alarmJournal({ ...ALL, ...filter }).map(({ seq }) => seq);
    expect(seqs({ from: T0 + 1000, to: T0 + 2000 })).toEqual([2, 3]);
    expect(seqs({ alarmId: 'b' })).toEqual([4]);
    expect(seqs({ order: 'newest-first', before: 4, limit: 2 })).toEqual([3, 2]);
    expect(seqs({ after: 3 })).toEqual([4]);
  });

  it('tells what stood at an instant', () => {
    const { part } = filled();
    const standing = (at: number) => part.alarmsStandingAt(at).map(({ alarmId, to }) => `${alarmId} ${to}`);
    expect(standing(T0 - 1)).toEqual([]);
    expect(standing(T0 + 1500)).toEqual(['a acknowledged']);
    expect(standing(T0 + 9000)).toEqual(['b unacknowledged']);
  });

  it.each([
    ["UPDATE alarm_journal SET by = 'Max' WHERE seq = 2", /only ever added to/],
    ['DELETE FROM alarm_journal WHERE seq = 4', /only ever added to/],
    ['INSERT OR REPLACE INTO alarm_journal SELECT * FROM alarm_journal WHERE seq = 2', /without a hole/],
    [
      'INSERT INTO alarm_journal SELECT 9, at, alarm_id, kind, priority, subject, firing_id, furnace_id, event, from_state, to_state, active, active_since, by, why, until, params, previous_hash, hash FROM alarm_journal WHERE seq = 2',
      /without a hole/,
    ],
  ])('refuses %s', (sql, why) => {
    const { db, journal } = filled();
    expect(() => db.exec(sql)).toThrow(why);
    expect(checkChain(journal())).toMatchObject({ holds: true, entries: 4 });
  });

  it('is kept together with the alarm, or neither is', () => {
    const { part, journal } = bench();
    const broken = alarm('b', { raisedAt: 0.5 });
    expect(() => part.saveAlarms([alarm('a'), broken], [transition(T0)])).toThrow();
    expect(journal()).toEqual([]);
  });

  it('lets neither half a surrogate pair nor a number that is none stop an alarm or look like a forgery', () => {
    const { part, journal } = bench();
    const odd = transition(T0, {
      by: 'I\ud800na',
      why: 'line\nbreak, "quote", nul \u0000 end',
      params: { celsius: Number.NaN, text: '\udfff', zero: -0 },
    });
    part.saveAlarms([alarm('a')], [odd]);
    expect(journal()[0]).toMatchObject({ why: odd.why, params: { celsius: null } });
    expect(checkChain(journal())).toMatchObject({ holds: true, entries: 1 });
  });

  it('survives the deletion of the alarm that it is about', () => {
    const { db, journal } = filled();
    db.exec('DELETE FROM alarms');
    expect(journal()).toHaveLength(4);
  });
});

describe('an edit of the journal in the file itself', () => {
  /** As somebody does who opens the file with another program. */
  function tampered(sql: string) {
    const made = filled();
    made.db.exec('DROP TRIGGER alarm_journal_no_update; DROP TRIGGER alarm_journal_no_delete;');
    made.db.exec(sql);
    const { holds, breaks } = checkChain(made.journal());
    return [holds, ...breaks.map(({ seq, code }) => `${seq} ${code}`)];
  }

  it.each([
    ["by = 'Max'", ['2 content-differs']],
    ['at = at + 1', ['2 content-differs']],
    ['params = json(\'{"celsius":20}\')', ['2 content-differs']],
    ["hash = 'f00'", ['2 content-differs', '3 previous-hash-differs']],
  ])('shows at its entry: %s', (change, breaks) => {
    expect(tampered(`UPDATE alarm_journal SET ${change} WHERE seq = 2`)).toEqual([false, ...breaks]);
  });

  it('shows where an entry was taken out', () => {
    expect(tampered('DELETE FROM alarm_journal WHERE seq = 2')).toEqual([
      false,
      '3 missing-entry',
      '3 previous-hash-differs',
    ]);
  });

  it('does not show a cut at the end by itself, but against a head that was kept', () => {
    const { db, journal } = filled();
    const kept = checkChain(journal()).head;
    db.exec('DROP TRIGGER alarm_journal_no_delete; DELETE FROM alarm_journal WHERE seq = 4');
    expect(checkChain(journal()).holds).toBe(true);
    expect(checkChain(journal(), kept).breaks).toMatchObject([{ seq: 4, code: 'head-differs' }]);
  });

  it('shows against a kept head when the whole chain was written anew', () => {
    const { journal, steps } = filled();
    const kept = checkChain(journal()).head;
    let last: AlarmJournalEntry | null = null;
    const forged = steps.map((step, n) => {
      last = chained(n === 1 ? { ...step, by: 'Max' } : step, last);
      return last;
    });
    expect(checkChain(forged).holds).toBe(true);
    expect(checkChain(forged, kept).holds).toBe(false);
  });
});

describe('canonical JSON', () => {
  // SOURCE: RFC 8785 section 3.2.3, the sorting example.
  it('sorts names by UTF-16 code units', () => {
    const sample = {
      '\u20ac': 'Euro Sign',
      '\r': 'Carriage Return',
      '\ufb33': 'Hebrew Letter Dalet With Dagesh',
      '1': 'One',
      '\ud83d\ude00': 'Emoji: Grinning Face',
      '\u0080': 'Control',
      '\u00f6': 'Latin Small Letter O With Diaeresis',
    };
    const written = [...canonicalJson(sample).matchAll(/:"([^"]*)"/g)].map(([, text]) => text);
    expect(written).toEqual([
      'Carriage Return',
      'One',
      'Control',
      'Latin Small Letter O With Diaeresis',
      'Euro Sign',
      'Emoji: Grinning Face',
      'Hebrew Letter Dalet With Dagesh',
    ]);
    expect(JSON.parse(canonicalJson(sample))).toEqual(sample);
  });

  // SOURCE: RFC 8785 section 3.2.2 (the numbers, string and literals example).
  it('writes numbers and strings as ECMAScript does', () => {
    const text = canonicalJson({
      numbers: [Number('333333333.33333329'), 1e30, 4.5, 2e-3, 0.000000000000000000000000001],
      string: '\u20ac$\u000F\u000aA\'\u0042\u0022\u005c\\"/',
      literals: [null, true, false],
    });
    expect(text).toBe(
      '{"literals":[null,true,false],"numbers":[333333333.3333333,1e+30,4.5,0.002,1e-27],"string":"€$\\u000f\\nA\'B\\"\\\\\\\\\\"/"}',
    );
  });

  it('has no place for what JSON cannot carry', () => {
    expect(() => canonicalJson({ ppm: Number.NaN })).toThrow(TypeError);
  });

  it('is what the hash is taken over, with SHA-256', () => {
    const { hash, ...content } = chained(transition(T0), null);
    expect(hash).toBe(createHash('sha256').update(canonicalJson(content)).digest('hex'));
    expect(hashOf({ ...content, by: 'Max' })).not.toBe(hash);
    expect(content).toMatchObject({ seq: 1, previousHash: '0'.repeat(64) });
  });
});

describe('an archive of the version before', () => {
  it('keeps its alarms, and knows since when the active ones hold', () => {
    const db = new Database(':memory:');
    const before = MIGRATIONS.findIndex((sql) => sql.includes('alarm_journal'));
    migrate(db, MIGRATIONS.slice(0, before));
    db.exec(`INSERT INTO alarms (id, kind, priority, subject, params, state, active, raised_at)
      VALUES ('a', 'overshoot', 'warning', 's', '{}', 'unacknowledged', 1, ${T0}),
        ('b', 'overshoot', 'warning', 't', '{}', 'normal', 0, ${T0})`);
    migrate(db, MIGRATIONS);
    const part = alarmPart(makeContext(db, () => 'id'));
    expect(part.alarm('a')).toMatchObject({ activeSince: T0, shelf: null, outOfService: null });
    expect(part.alarm('b')).toMatchObject({ activeSince: null, state: 'normal' });
  });
});
