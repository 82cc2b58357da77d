import type { AlarmEvent } from '../../hub/contract/alarm.ts';
import type { AlarmJournalCheck } from '../../hub/contract/alarm-journal.ts';

/** Words of the journal of the alarms. */

export const EVENT_WORDS: Readonly<Record<AlarmEvent, string>> = {
  'condition-on': 'It began to hold',
  'condition-off': 'It was over',
  acknowledge: 'Acknowledged',
  silence: 'Silenced',
  reset: 'Reset',
  shelve: 'Shelved',
  unshelve: 'Taken off the shelf',
  'shelf-ends': 'The shelf ended',
  suppress: 'Suppressed by rule',
  'suppression-ends': 'The rule ended',
  'take-out-of-service': 'Taken out of service',
  'return-to-service': 'Returned to service',
};

type Break = AlarmJournalCheck['breaks'][number]['code'];

export const BREAK_WORDS: Readonly<Record<Break, string>> = {
  'missing-entry': 'an entry is missing',
  'previous-hash-differs': 'it does not follow on from the entry before',
  'content-differs': 'what it says was changed after it was written',
  'head-differs': 'the journal does not end where your kept entry says',
};

export const journalWords = {
  title: 'Journal of the alarms',
  intro:
    'Everything that happened to every alarm, and who did what when. Entries are added and never changed; each carries a mark made from the entry before it, so that an edit shows.',
  asking: 'Asking the hub',
  checking: 'Checking the chain of every entry',
  holds: (entries: number) =>
    entries === 1 ? 'The chain holds: one entry.' : `The chain holds over all ${entries} entries.`,
  empty: 'The journal is empty: there is nothing to check.',
  broken: 'THE JOURNAL WAS CHANGED',
  brokenLong: (entries: number) =>
    `The chain of ${entries} entries does not hold. What it says cannot be trusted from here on:`,
  brokenDo: 'Save the files now, keep the hub’s data as it is, and compare with a copy from before.',
  brokenAt: (seq: number, what: string) => `Entry ${seq}: ${what}.`,
  head: (seq: number) => `Last entry ${seq}, hash`,
  headLong:
    'Keep these elsewhere: that entries were cut from the end shows only against a last entry kept outside.',
  check: 'Check against a last entry that you kept',
  seq: 'Its number',
  hash: 'Its hash',
  checkDo: 'Check',
  checkAgain: 'Check again',
  keptHolds: (seq: number) => `Entry ${seq} is there as you kept it.`,
  seqWrong: 'A whole number from 1.',
  hashWrong: '64 digits from 0 to 9 and a to f.',
  saveJsonl: 'Save as JSON lines',
  saveCsv: 'Save as CSV',
  entries: 'Newest first',
  noEntries: 'Nothing has happened to an alarm yet.',
  older: 'Older entries',
  newest: 'Read the newest again',
  end: 'That is the beginning of the journal.',
  entry: (seq: number) => `no. ${seq}`,
  by: (event: string, by: string) => `${event} by ${by}`,
  hub: 'the hub',
  until: (event: string, until: string) => `${event} until ${until}`,
  step: (from: string, to: string) => `${from} → ${to}`,
} as const;
