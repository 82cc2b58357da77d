import { describe, expect, it } from 'vitest';
import { saidEntry } from '../../../dashboard/alarms/journal-said.ts';
import type { AlarmJournalEntry } from '../../../hub/contract/alarm-journal.ts';
import { NOW } from '../mock-shop.ts';

const entry = (change: Partial<AlarmJournalEntry>): AlarmJournalEntry => ({
  at: NOW,
  alarmId: 'a',
  kind: 'overshoot',
  priority: 'danger',
  subject: 'firing-1',
  firingId: 'firing-1',
  furnaceId: 'forge',
  event: 'condition-on',
  from: 'normal',
  to: 'unacknowledged',
  active: true,
  activeSince: NOW,
  by: null,
  why: null,
  until: null,
  params: {},
  seq: 1,
  previousHash: '0'.repeat(64),
  hash: '1'.repeat(64),
  ...change,
});
const said = (change: Partial<AlarmJournalEntry>) => saidEntry(entry(change), 'Cel', 'UTC');

describe('an entry of the journal', () => {
  it('says what began, and from which state to which', () => {
    expect(said({}).happened).toBe('It began to hold');
    expect(said({}).step).toBe('normal → unacknowledged');
  });

  it('says who did it, until when and why', () => {
    const shelf = { event: 'shelve', by: 'Ann', until: NOW + 3_600_000, why: 'burner out' } as const;
    expect(said({ ...shelf, to: 'shelved' }).happened).toBe('Shelved by Ann until 15:03: burner out');
  });

  it('names nobody where the hub did it, and says its rule in words', () => {
    const { happened } = said({ event: 'suppress', to: 'suppressed', why: 'probe-at-fault' });
    expect(happened).toMatch(/^Suppressed by rule: the probe that it rests on/);
    expect(happened).not.toMatch(/ by [A-Z]/);
  });

  it('shows no step where the state stayed', () => {
    expect(said({ event: 'condition-off', from: 'shelved', to: 'shelved' }).step).toBe('');
  });
});
