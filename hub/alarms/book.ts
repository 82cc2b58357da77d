import type { AlarmRow } from '../archive/types.ts';
import type { AlarmState, Finding, Params } from '../contract/alarm.ts';
import { ALARM_DEFINITIONS } from './definitions.ts';

/**
 * The life cycle of alarms after ISA-18.2 / IEC 62682: two kept facts, active and acknowledged, and a state
 * derived from them. An alarm that went away by itself still waits for someone to have seen it.
 */

export interface BookEntry {
  readonly row: AlarmRow;
  readonly acknowledged: boolean;
  /** When the numbers of this alarm were last told, epoch ms. */
  readonly toldAt: number;
}

/** Every alarm that is not normal. */
export interface AlarmBook {
  readonly open: readonly BookEntry[];
}

export interface BookStep {
  readonly book: AlarmBook;
  /** What has to be kept and told: new, changed and ended alarms. */
  readonly changed: AlarmRow[];
}

export interface BookContext {
  /** Epoch ms. */
  readonly at: number;
  readonly newId: () => string;
}

export const EMPTY_BOOK: AlarmBook = { open: [] };

/** The numbers of a standing alarm are told again at most this often. */
const TELL_EVERY_MS = 10_000;

/** The state that two facts make. */
export function alarmState(active: boolean, acknowledged: boolean): AlarmState {
  if (active) return acknowledged ? 'acknowledged' : 'unacknowledged';
  return acknowledged ? 'normal' : 'returned-unacknowledged';
}

/** A book out of kept alarms, after a restart. Those that are normal are history and stay out. */
export function openBook(rows: readonly AlarmRow[]): AlarmBook {
  const open = rows.filter((row) => row.state !== 'normal');
  return {
    open: open.map((row) => ({ row, acknowledged: row.state === 'acknowledged', toldAt: row.raisedAt })),
  };
}

function entry(row: AlarmRow, acknowledged: boolean, toldAt: number): BookEntry {
  return { row: { ...row, state: alarmState(row.active, acknowledged) }, acknowledged, toldAt };
}

function textOrNull(params: Params, name: string): string | null {
  const value = params[name];
  return typeof value === 'string' ? value : null;
}

function raise(finding: Finding, { at, newId }: BookContext): BookEntry {
  const row: AlarmRow = {
    id: newId(),
    kind: finding.kind,
    priority: ALARM_DEFINITIONS[finding.kind].priority,
    subject: finding.subject,
    firingId: textOrNull(finding.params, 'firingId'),
    furnaceId: textOrNull(finding.params, 'furnaceId'),
    params: finding.params,
    state: 'unacknowledged',
    active: true,
    raisedAt: at,
    clearedAt: null,
    acknowledgedAt: null,
    acknowledgedBy: null,
  };
  return entry(row, false, at);
}

function sameParams(a: Params, b: Params): boolean {
  const names = Object.keys(a);
  return names.length === Object.keys(b).length && names.every((name) => a[name] === b[name]);
}

/** One open alarm and the finding it stands for, if that still holds. Returns the same entry if nothing is new. */
function stepEntry(old: BookEntry, finding: Finding | undefined, at: number): BookEntry {
  const { row } = old;
  if (finding === undefined) {
    return row.active ? entry({ ...row, active: false, clearedAt: at }, old.acknowledged, at) : old;
  }
  if (!row.active) {
    // It came back before anyone had seen that it went: the same alarm sounds again.
    return entry({ ...row, active: true, clearedAt: null, params: finding.params }, false, at);
  }
  if (at - old.toldAt < TELL_EVERY_MS || sameParams(row.params, finding.params)) return old;
  return entry({ ...row, params: finding.params }, old.acknowledged, at);
}

const keyOf = (of: { readonly kind: string; readonly subject: string }) => `${of.kind} ${of.subject}`;

/**
 * Takes in everything that holds now. The same kind of the same subject is one alarm while it is open; what is
 * not among the findings is over.
 */
export function stepBook(book: AlarmBook, findings: readonly Finding[], context: BookContext): BookStep {
  const holding = new Map(findings.map((finding) => [keyOf(finding), finding]));
  const changed: AlarmRow[] = [];
  const open: BookEntry[] = [];
  for (const old of book.open) {
    const key = keyOf(old.row);
    const next = stepEntry(old, holding.get(key), context.at);
    holding.delete(key);
    if (next !== old) changed.push(next.row);
    if (next.row.state !== 'normal') open.push(next);
  }
  for (const finding of holding.values()) {
    const next = raise(finding, context);
    changed.push(next.row);
    open.push(next);
  }
  return changed.length === 0 ? { book, changed } : { book: { open }, changed };
}

/** Someone has seen the alarm. Unknown or already acknowledged: nothing changes. `at` in epoch ms. */
export function acknowledge(book: AlarmBook, id: string, by: string, at: number): BookStep {
  const old = book.open.find((candidate) => candidate.row.id === id);
  if (old === undefined || old.acknowledged) return { book, changed: [] };
  const next = entry({ ...old.row, acknowledgedAt: at, acknowledgedBy: by }, true, old.toldAt);
  const open = book.open
    .map((candidate) => (candidate === old ? next : candidate))
    .filter((candidate) => candidate.row.state !== 'normal');
  return { book: { open }, changed: [next.row] };
}
