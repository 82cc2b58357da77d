import { createHash } from 'node:crypto';
import type { AlarmJournalCheck, AlarmJournalEntry, AlarmTransition } from '../contract/alarm-journal.ts';

/** The chain of hashes over the journal of alarms: an entry that was changed, taken out or slipped in shows. */

/** What stands before the first entry. */
export const FIRST_PREVIOUS_HASH = '0'.repeat(64);

const MOST_BREAKS = 100;

type Json = string | number | boolean | null | readonly Json[] | { readonly [name: string]: Json };

/**
 * Canonical JSON after RFC 8785 (JCS) for what a journal holds: names sorted by UTF-16 code units, no white space,
 * numbers and strings as ECMAScript writes them. `undefined`, NaN and infinities have no place in it.
 * @throws TypeError for a number that JSON cannot carry.
 */
export function canonicalJson(value: Json): string {
  if (typeof value === 'number' && !Number.isFinite(value)) {
    throw new TypeError(`${value} has no JSON: a journal holds finite numbers only`);
  }
  if (value === null || typeof value !== 'object') return JSON.stringify(value);
  if (Array.isArray(value)) return `[${value.map((item: Json) => canonicalJson(item)).join(',')}]`;
  const named = Object.entries(value as Readonly<Record<string, Json>>);
  // The plain order of strings is by UTF-16 code units, as the RFC wants.
  named.sort(([a], [b]) => (a < b ? -1 : 1));
  return `{${named.map(([name, item]) => `${JSON.stringify(name)}:${canonicalJson(item)}`).join(',')}}`;
}

/** SHA-256, hex, over the canonical JSON of an entry without its own hash; the previous hash is in it. */
export function hashOf(entry: Omit<AlarmJournalEntry, 'hash'>): string {
  return createHash('sha256').update(canonicalJson(entry), 'utf8').digest('hex');
}

/** The next entry of a chain. `last`: the entry before it, or null for the first. */
export function chained(
  transition: AlarmTransition,
  last: Pick<AlarmJournalEntry, 'seq' | 'hash'> | null,
): AlarmJournalEntry {
  const entry = {
    ...transition,
    seq: (last?.seq ?? 0) + 1,
    previousHash: last?.hash ?? FIRST_PREVIOUS_HASH,
  };
  return { ...entry, hash: hashOf(entry) };
}

type Break = AlarmJournalCheck['breaks'][number];

function breaksAt(entry: AlarmJournalEntry, last: Pick<AlarmJournalEntry, 'seq' | 'hash'> | null): Break[] {
  const found: Break[] = [];
  const { hash, ...content } = entry;
  const due = (last?.seq ?? 0) + 1;
  if (entry.seq !== due) {
    found.push({ seq: entry.seq, code: 'missing-entry', detail: `entry ${due} should stand here` });
  }
  if (entry.previousHash !== (last?.hash ?? FIRST_PREVIOUS_HASH)) {
    const detail = 'it does not follow from the entry before it';
    found.push({ seq: entry.seq, code: 'previous-hash-differs', detail });
  }
  if (hashOf(content) !== hash) {
    const detail = 'its content is not what was written';
    found.push({ seq: entry.seq, code: 'content-differs', detail });
  }
  return found;
}

/**
 * Walks a chain in order and tells where it breaks. `kept`: a head that was noted earlier, so that a cut at the end
 * or a chain written anew shows.
 */
export function checkChain(
  entries: Iterable<AlarmJournalEntry>,
  kept: { readonly seq: number; readonly hash: string } | null = null,
): AlarmJournalCheck {
  const breaks: Break[] = [];
  let last: { seq: number; hash: string } | null = null;
  let count = 0;
  let keptFound = kept === null;
  for (const entry of entries) {
    if (breaks.length < MOST_BREAKS) breaks.push(...breaksAt(entry, last));
    if (entry.seq === kept?.seq && entry.hash === kept.hash) keptFound = true;
    last = { seq: entry.seq, hash: entry.hash };
    count += 1;
  }
  if (!keptFound && kept !== null) {
    const detail = 'the head that was kept is not in the journal: it was cut or written anew';
    breaks.push({ seq: kept.seq, code: 'head-differs', detail });
  }
  return { holds: breaks.length === 0, entries: count, head: last, breaks: breaks.slice(0, MOST_BREAKS) };
}
