import type { AlarmJournalEntry } from '../../hub/contract/alarm-journal.ts';
import type { DisplayUnit } from '../../hub/contract/schedule.ts';
import { words } from '../../hub/contract/words/words.ts';
import { EVENT_WORDS, journalWords } from '../words/alarm-journal.ts';
import { STATE_NAMES } from '../words/alarm-review.ts';
import { ruleWords } from '../words/alarms.ts';
import { since } from '../words/time.ts';

/** One entry of the journal in words. */
export interface SaidEntry {
  /** What the alarm was about, with its numbers at that instant. */
  readonly title: string;
  /** What happened, who did it, until when, why. */
  readonly happened: string;
  /** From state to state; empty where the state stayed. */
  readonly step: string;
}

export function saidEntry(entry: AlarmJournalEntry, unit: DisplayUnit, timeZone?: string): SaidEntry {
  const { event, by, why, until, from, to, at } = entry;
  let happened: string = EVENT_WORDS[event];
  if (by !== null) happened = journalWords.by(happened, by);
  if (until !== null) happened = journalWords.until(happened, since(until, at, timeZone));
  if (why !== null) happened = `${happened}: ${by === null ? ruleWords(why) : why}`;
  return {
    title: words('en').alarm(entry.kind, entry.params, unit).title,
    happened,
    step: from === to ? '' : journalWords.step(STATE_NAMES[from], STATE_NAMES[to]),
  };
}
