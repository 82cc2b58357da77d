import type { Alarm } from '../contract/alarm.ts';
import type { AlarmJournalEntry, AlarmTransition } from '../contract/alarm-journal.ts';

/** What the archive keeps of alarms. */

/** Without a state: all. The newest first. */
export interface AlarmFilter {
  readonly state?: 'open' | 'all' | undefined;
  readonly firingId?: string | undefined;
  readonly limit: number;
}

/** An alarm as it is kept: the words are made from kind and params when it is shown. */
export type AlarmRow = Omit<Alarm, 'title' | 'message' | 'guidance' | 'dangerToLife'>;

/** Instants epoch ms, both ends included; `before` and `after` are numbers of entries, exclusive. */
export interface AlarmJournalFilter {
  readonly from?: number | undefined;
  readonly to?: number | undefined;
  readonly alarmId?: string | undefined;
  readonly before?: number | undefined;
  readonly after?: number | undefined;
  readonly order: 'newest-first' | 'oldest-first';
  readonly limit: number;
}

export interface AlarmStore {
  alarms(filter: AlarmFilter): readonly AlarmRow[];
  alarm(id: string): AlarmRow | null;
  /** Inserts or updates by id, and adds to the journal in the same transaction. */
  saveAlarms(alarms: readonly AlarmRow[], transitions?: readonly AlarmTransition[]): void;
  alarmJournal(filter: AlarmJournalFilter): readonly AlarmJournalEntry[];
  /** The last entry of every alarm that was not normal at `at`, epoch ms. */
  alarmsStandingAt(at: number): readonly AlarmJournalEntry[];
}
