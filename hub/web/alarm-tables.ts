import { canonicalJson } from '../archive/alarm-chain.ts';
import type { Archive } from '../archive/types.ts';
import type { AlarmDefinitionEntry } from '../contract/alarm-definition.ts';
import type { AlarmJournalEntry } from '../contract/alarm-journal.ts';
import { type Cell, csvRow } from './csv.ts';

/** The alarms as tables to keep or to take elsewhere. */

/** Entries of the journal are read this many at a time. */
const PAGE = 1000;

export interface JournalSpan {
  readonly from?: number | undefined;
  readonly to?: number | undefined;
}

/** Every entry of a stretch, oldest first, read page by page. */
export function* journalEntries(
  archive: Pick<Archive, 'alarmJournal'>,
  span: JournalSpan,
): Generator<AlarmJournalEntry> {
  let after = 0;
  for (;;) {
    const page = archive.alarmJournal({ ...span, after, order: 'oldest-first', limit: PAGE });
    yield* page;
    const last = page.at(-1);
    if (last === undefined || page.length < PAGE) return;
    after = last.seq;
  }
}

/** One canonical JSON object a line (RFC 8785), so that a hash can be checked without rewriting anything. */
export function* journalLines(entries: Iterable<AlarmJournalEntry>): Generator<string> {
  for (const entry of entries) yield `${canonicalJson(entry)}\n`;
}

const JOURNAL_HEAD = [
  'seq',
  'time_utc',
  'alarm',
  'kind',
  'priority',
  'subject',
  'firing',
  'furnace',
  'event',
  'from',
  'to',
  'active',
  'active_since_utc',
  'by',
  'why',
  'until_utc',
  'params',
  'previous_hash',
  'hash',
];

export function* journalCsv(entries: Iterable<AlarmJournalEntry>): Generator<string> {
  yield csvRow(JOURNAL_HEAD);
  for (const entry of entries) yield csvRow(journalCells(entry));
}

const utc = (at: number | null): string | null => (at === null ? null : new Date(at).toISOString());

function journalCells(entry: AlarmJournalEntry): Cell[] {
  return [
    entry.seq,
    utc(entry.at),
    entry.alarmId,
    entry.kind,
    entry.priority,
    entry.subject,
    entry.firingId,
    entry.furnaceId,
    entry.event,
    entry.from,
    entry.to,
    String(entry.active),
    utc(entry.activeSince),
    entry.by,
    entry.why,
    utc(entry.until),
    canonicalJson(entry.params),
    entry.previousHash,
    entry.hash,
  ];
}

const DEFINITION_HEAD = [
  'kind',
  'name',
  'priority',
  'rank',
  'danger_to_life',
  'cause',
  'consequence',
  'action',
  'seconds_to_act',
  'setpoint_from',
  'setpoint_name',
  'setpoint_value',
  'setpoint_unit',
  'deadband_percent',
  'deadband_most_percent_of_tolerance',
  'on_delay_seconds',
  'off_delay_seconds',
  'latching',
  'acknowledge_return',
  'suppressed_by',
  'follows_from',
  'source',
  'time_source',
];

/** The table of definitions as CSV. */
export function definitionsCsv(definitions: readonly AlarmDefinitionEntry[]): string {
  return csvRow(DEFINITION_HEAD) + definitions.map((one) => csvRow(definitionCells(one))).join('');
}

function definitionCells(one: AlarmDefinitionEntry): Cell[] {
  return [
    one.kind,
    one.name,
    one.priority,
    one.rank,
    String(one.dangerToLife),
    one.cause,
    one.consequence,
    one.action,
    one.secondsToAct,
    one.setpoint.from,
    one.setpoint.name,
    one.setpoint.value,
    one.setpoint.unit,
    one.deadbandPercent,
    one.deadbandMostPercentOfTolerance,
    one.onDelaySeconds,
    one.offDelaySeconds,
    String(one.latching),
    String(one.acknowledgeReturn),
    one.suppressedBy.map(({ rule, by, same }) => `${rule}: ${by}, same ${same}`).join('; '),
    one.followsFrom.map(({ kind, same }) => `${kind}, same ${same}`).join('; '),
    one.source,
    one.timeSource,
  ];
}
