import type { AlarmRow } from '../archive/types.ts';
import type { AlarmEvent, Finding, Params } from '../contract/alarm.ts';
import type { AlarmTransition } from '../contract/alarm-journal.ts';
import { DEFINED_RULES, type Happening, happen, newRow, type RulesOf } from './entry.ts';
import type { LifeRefusal } from './life-cycle.ts';
import type { HeldBack } from './suppression.ts';

/**
 * The book of alarms: every alarm that is not normal, each with the life cycle of ISA-18.2 / IEC 62682. An alarm that
 * went away by itself still waits for someone to have seen it; one that is set aside stays in the book, so that it
 * is always listed and comes back by itself.
 */

export interface BookEntry {
  readonly row: AlarmRow;
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
  /** What goes into the journal, in order. */
  readonly transitions: AlarmTransition[];
}

export interface BookContext {
  /** Epoch ms. */
  readonly at: number;
  readonly newId: () => string;
  /** What a rule holds back now. It is not raised; what is open already becomes suppressed by design. */
  readonly heldBack?: readonly HeldBack[];
  readonly rulesOf?: RulesOf;
}

export const EMPTY_BOOK: AlarmBook = { open: [] };

/** The numbers of a standing alarm are told again at most this often. */
const TELL_EVERY_MS = 10_000;

/** A book out of kept alarms, after a restart. Those that are normal are history and stay out. */
export function openBook(rows: readonly AlarmRow[]): AlarmBook {
  const open = rows.filter((row) => row.state !== 'normal');
  return { open: open.map((row) => ({ row, toldAt: row.raisedAt })) };
}

function sameParams(a: Params, b: Params): boolean {
  const names = Object.keys(a);
  return names.length === Object.keys(b).length && names.every((name) => a[name] === b[name]);
}

/** What holds of one open alarm now. */
interface Holding {
  readonly finding: Finding | undefined;
  readonly heldBack: HeldBack | undefined;
}

/**
 * The events of one alarm at one instant, in order. A rule that begins comes before the condition and one that ends
 * after it, so that nothing is announced for an instant in between; so does a shelf that ends.
 */
function eventsOf(row: AlarmRow, { finding, heldBack }: Holding, at: number): Happening[] {
  const found = finding ?? heldBack?.finding;
  const condition: Happening = found
    ? { event: 'condition-on', at, params: found.params }
    : { event: 'condition-off', at };
  const events = [condition];
  if (heldBack !== undefined) events.unshift({ event: 'suppress', at, why: heldBack.rule });
  else if (row.suppression !== null)
    events.push({ event: 'suppression-ends', at, why: row.suppression.rule });
  if (row.shelf !== null && at >= row.shelf.until) events.push({ event: 'shelf-ends', at });
  return events;
}

interface EntryStep {
  readonly entry: BookEntry;
  readonly transitions: readonly AlarmTransition[];
}

function play(row: AlarmRow, events: readonly Happening[], rulesOf: RulesOf): [AlarmRow, AlarmTransition[]] {
  const transitions: AlarmTransition[] = [];
  let now = row;
  for (const happening of events) {
    const step = happen(now, happening, rulesOf);
    now = step.row;
    if (step.transition !== null) transitions.push(step.transition);
  }
  return [now, transitions];
}

/** One open alarm and what holds of it. Returns the same entry if nothing is new. */
function stepEntry(old: BookEntry, holding: Holding, at: number, rulesOf: RulesOf): EntryStep {
  const [row, transitions] = play(old.row, eventsOf(old.row, holding, at), rulesOf);
  if (transitions.length > 0) return { entry: { row, toldAt: at }, transitions };
  const params = holding.finding?.params;
  const isNew = params !== undefined && !sameParams(row.params, params);
  if (!isNew || at - old.toldAt < TELL_EVERY_MS) return { entry: old, transitions };
  return { entry: { row: { ...row, params }, toldAt: at }, transitions };
}

const keyOf = (of: { readonly kind: string; readonly subject: string }) => `${of.kind} ${of.subject}`;

/**
 * Takes in everything that holds now. The same kind of the same subject is one alarm while it is open; what is
 * not among the findings is over.
 */
export function stepBook(book: AlarmBook, findings: readonly Finding[], context: BookContext): BookStep {
  const { at, newId, heldBack = [], rulesOf = DEFINED_RULES } = context;
  const holding = new Map(findings.map((finding) => [keyOf(finding), finding]));
  const held = new Map(heldBack.map((one) => [keyOf(one.finding), one]));
  const changed: AlarmRow[] = [];
  const transitions: AlarmTransition[] = [];
  const open: BookEntry[] = [];
  const take = (entry: BookEntry): void => {
    if (entry.row.state !== 'normal') open.push(entry);
  };
  for (const old of book.open) {
    const key = keyOf(old.row);
    const step = stepEntry(old, { finding: holding.get(key), heldBack: held.get(key) }, at, rulesOf);
    holding.delete(key);
    if (step.entry !== old) changed.push(step.entry.row);
    transitions.push(...step.transitions);
    take(step.entry);
  }
  for (const finding of holding.values()) {
    const row = newRow(finding, newId(), at);
    const [raised, steps] = play(row, [{ event: 'condition-on', at, params: finding.params }], rulesOf);
    changed.push(raised);
    transitions.push(...steps);
    take({ row: raised, toldAt: at });
  }
  return changed.length === 0 ? { book, changed, transitions } : { book: { open }, changed, transitions };
}

/** What a person does to an alarm. */
export type PersonalEvent = Extract<
  AlarmEvent,
  'acknowledge' | 'reset' | 'shelve' | 'unshelve' | 'take-out-of-service' | 'return-to-service'
>;

export interface Press extends Happening {
  readonly event: PersonalEvent;
  readonly by: string;
}

export interface PressStep extends BookStep {
  /** Null: done. `not-open`: no alarm of that id is open. */
  readonly refusal: LifeRefusal | 'not-open' | null;
}

/** A person does something to an open alarm. Refused: nothing changes. */
export function press(book: AlarmBook, id: string, what: Press, rulesOf = DEFINED_RULES): PressStep {
  const nothing = { book, changed: [], transitions: [] };
  const old = book.open.find((candidate) => candidate.row.id === id);
  if (old === undefined) return { ...nothing, refusal: 'not-open' };
  const { row, transition, refusal } = happen(old.row, what, rulesOf);
  if (transition === null) return { ...nothing, refusal };
  const open = book.open
    .map((candidate) => (candidate === old ? { ...old, row } : candidate))
    .filter((candidate) => candidate.row.state !== 'normal');
  return { book: { open }, changed: [row], transitions: [transition], refusal: null };
}

/** Someone has seen the alarm. Unknown or already acknowledged: nothing changes. `at` in epoch ms. */
export function acknowledge(book: AlarmBook, id: string, by: string, at: number): PressStep {
  return press(book, id, { event: 'acknowledge', at, by });
}
