import type { AlarmRow } from '../archive/types.ts';
import type { AlarmEvent, AlarmKind, Finding, Params } from '../contract/alarm.ts';
import type { AlarmTransition } from '../contract/alarm-journal.ts';
import { ALARM_DEFINITIONS } from './definitions.ts';
import {
  type AlarmLife,
  type AlarmPhase,
  type LifeRefusal,
  type LifeRules,
  NORMAL_LIFE,
  shownState,
  stepLife,
} from './life-cycle.ts';

/** One alarm of the book: its kept row, and the row as a life in the state machine. */

/** What comes with an event: when, and, where a person or a rule did it, who, why and until when. */
export interface Happening {
  readonly event: AlarmEvent;
  /** Epoch ms. */
  readonly at: number;
  readonly by?: string;
  readonly why?: string;
  /** End of a shelf, epoch ms. */
  readonly until?: number;
  /** The numbers as they are now. */
  readonly params?: Params;
}

export interface RowStep {
  readonly row: AlarmRow;
  /** Null: nothing changed. */
  readonly transition: AlarmTransition | null;
  readonly refusal: LifeRefusal | null;
}

export type RulesOf = (kind: AlarmKind) => LifeRules;
export const DEFINED_RULES: RulesOf = (kind) => ALARM_DEFINITIONS[kind];

function textOrNull(params: Params, name: string): string | null {
  const value = params[name];
  return typeof value === 'string' ? value : null;
}

/** An alarm that nothing has happened to yet. */
export function newRow(finding: Finding, id: string, at: number): AlarmRow {
  return {
    id,
    kind: finding.kind,
    priority: ALARM_DEFINITIONS[finding.kind].priority,
    subject: finding.subject,
    firingId: textOrNull(finding.params, 'firingId'),
    furnaceId: textOrNull(finding.params, 'furnaceId'),
    params: finding.params,
    state: 'normal',
    active: false,
    raisedAt: at,
    clearedAt: null,
    acknowledgedAt: null,
    acknowledgedBy: null,
    activeSince: null,
    shelf: null,
    suppression: null,
    outOfService: null,
  };
}

/** The life that a kept row stands for. Nobody silences apart from acknowledging, so a state says what sounds. */
export function lifeOfRow(row: AlarmRow): AlarmLife {
  const { state, active } = row;
  const marks = {
    shelved: row.shelf !== null,
    suppressed: row.suppression !== null,
    outOfService: row.outOfService !== null,
  };
  if (state === 'shelved' || state === 'suppressed' || state === 'out-of-service') {
    return { ...NORMAL_LIFE, ...marks, active };
  }
  return { ...NORMAL_LIFE, phase: state, active, sounding: sounds(state) };
}

function sounds(phase: AlarmPhase): boolean {
  return phase === 'unacknowledged' || phase === 'latched-unacknowledged';
}

/** Carries one event into a row. */
export function happen(row: AlarmRow, happening: Happening, rulesOf: RulesOf): RowStep {
  const { event, at } = happening;
  const { life, changed, refusal } = stepLife(rulesOf(row.kind), lifeOfRow(row), event);
  if (!changed) return { row, transition: null, refusal };
  const next: AlarmRow = { ...row, ...fieldsOf(happening), active: life.active, state: shownState(life) };
  const announced = next.state === 'unacknowledged' && row.state !== 'unacknowledged';
  const told = announced ? { ...next, acknowledgedAt: null, acknowledgedBy: null } : next;
  return { row: told, transition: transitionOf(row, told, happening, at), refusal: null };
}

/** What an event writes down in the row beside the state. */
function fieldsOf(happening: Happening): Partial<AlarmRow> {
  const { event, at, by = '', why = '', until, params } = happening;
  switch (event) {
    case 'condition-on':
      return { clearedAt: null, activeSince: at, ...(params === undefined ? {} : { params }) };
    case 'condition-off':
      return { clearedAt: at, activeSince: null };
    case 'acknowledge':
      return { acknowledgedAt: at, acknowledgedBy: by };
    case 'shelve':
      return { shelf: { at, until: until ?? at, by, why } };
    case 'unshelve':
    case 'shelf-ends':
      return { shelf: null };
    case 'suppress':
      return { suppression: { at, rule: why } };
    case 'suppression-ends':
      return { suppression: null };
    case 'take-out-of-service':
      return { outOfService: { at, by, why } };
    case 'return-to-service':
      return { outOfService: null };
    case 'silence':
    case 'reset':
      return {};
    default:
      return event satisfies never;
  }
}

function transitionOf(from: AlarmRow, to: AlarmRow, happening: Happening, at: number): AlarmTransition {
  return {
    at,
    alarmId: to.id,
    kind: to.kind,
    priority: to.priority,
    subject: to.subject,
    firingId: to.firingId,
    furnaceId: to.furnaceId,
    event: happening.event,
    from: from.state,
    to: to.state,
    active: to.active,
    activeSince: to.activeSince,
    by: happening.by ?? null,
    why: happening.why ?? null,
    until: happening.until ?? null,
    params: to.params,
  };
}
