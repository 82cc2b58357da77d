import type { AlarmEvent, AlarmState } from '../contract/alarm.ts';

/**
 * The life cycle of one alarm after ISA-18.2 / IEC 62682, as a pure state machine. Kept are the phase of an alarm
 * that is announced and three independent marks that set it aside; what is shown is the highest of out of service,
 * suppressed, shelved, and then the phase. While a mark stands the condition is followed, nothing sounds, and the
 * earlier acknowledgement is forgotten: when the last mark goes, what is still true is announced afresh.
 * Source of the table: ISA-18.2-2016 / IEC 62682 state diagram, secondary; latched states: from memory, the 2009
 * edition's diagram.
 */

export type AlarmPhase = Exclude<AlarmState, 'shelved' | 'suppressed' | 'out-of-service'>;

export interface AlarmLife {
  /** 'normal' while a mark stands. */
  readonly phase: AlarmPhase;
  /** Whether the condition holds, after its delays and deadband. */
  readonly active: boolean;
  readonly sounding: boolean;
  readonly shelved: boolean;
  readonly suppressed: boolean;
  readonly outOfService: boolean;
}

/** What the definition of an alarm says of its life. */
export interface LifeRules {
  /** Stays after the condition has gone, until a person resets it. */
  readonly latching: boolean;
  /** An alarm that went by itself still waits for someone to have seen it. */
  readonly acknowledgeReturn: boolean;
  /** Is never shelved, suppressed or taken out of service. */
  readonly dangerToLife: boolean;
}

/**
 * Why a person's or a rule's event is refused. Stable codes.
 * - `danger-to-life`: this alarm cannot be set aside
 * - `set-aside`: shelved, suppressed or out of service: neither seen, silenced nor reset meanwhile
 * - `already-acknowledged`, `nothing-to-acknowledge`, `nothing-to-silence`
 * - `nothing-to-reset`, `acknowledge-first`, `condition-still-holds`: reset only what is latched, seen and over
 * - `already-shelved`, `not-shelved`, `already-out-of-service`, `not-out-of-service`
 */
export type LifeRefusal =
  | 'danger-to-life'
  | 'set-aside'
  | 'already-acknowledged'
  | 'nothing-to-acknowledge'
  | 'nothing-to-silence'
  | 'nothing-to-reset'
  | 'acknowledge-first'
  | 'condition-still-holds'
  | 'already-shelved'
  | 'not-shelved'
  | 'already-out-of-service'
  | 'not-out-of-service';

export interface LifeStep {
  readonly life: AlarmLife;
  readonly changed: boolean;
  /** Null too where nothing changed because there was nothing to do: a condition or a timer is not refused. */
  readonly refusal: LifeRefusal | null;
}

export const NORMAL_LIFE: AlarmLife = {
  phase: 'normal',
  active: false,
  sounding: false,
  shelved: false,
  suppressed: false,
  outOfService: false,
};

/** True while a mark stands: the alarm is not announced. */
export function isSetAside(life: AlarmLife): boolean {
  return life.shelved || life.suppressed || life.outOfService;
}

/** What is shown: out of service before suppressed before shelved before the phase. */
export function shownState(life: AlarmLife): AlarmState {
  if (life.outOfService) return 'out-of-service';
  if (life.suppressed) return 'suppressed';
  return life.shelved ? 'shelved' : life.phase;
}

/** The next life of an alarm. Pure; a refused event changes nothing. */
export function stepLife(rules: LifeRules, life: AlarmLife, event: AlarmEvent): LifeStep {
  switch (event) {
    case 'condition-on':
      return life.active ? same(life) : to(conditionOn(life));
    case 'condition-off':
      return life.active ? to(conditionOff(rules, life)) : same(life);
    case 'acknowledge':
      return acknowledge(life);
    case 'silence':
      if (isSetAside(life)) return refuse(life, 'set-aside');
      return life.sounding ? to({ ...life, sounding: false }) : refuse(life, 'nothing-to-silence');
    case 'reset':
      return reset(life);
    case 'shelve':
      return setAside(rules, life, 'shelved', 'already-shelved');
    case 'unshelve':
      return life.shelved ? to(takeUp(life, 'shelved')) : refuse(life, 'not-shelved');
    case 'shelf-ends':
      return life.shelved ? to(takeUp(life, 'shelved')) : same(life);
    case 'suppress':
      return setAside(rules, life, 'suppressed', null);
    case 'suppression-ends':
      return life.suppressed ? to(takeUp(life, 'suppressed')) : same(life);
    case 'take-out-of-service':
      return setAside(rules, life, 'outOfService', 'already-out-of-service');
    case 'return-to-service':
      return life.outOfService ? to(takeUp(life, 'outOfService')) : refuse(life, 'not-out-of-service');
    default:
      return event satisfies never;
  }
}

type Mark = 'shelved' | 'suppressed' | 'outOfService';

const to = (life: AlarmLife): LifeStep => ({ life, changed: true, refusal: null });
const same = (life: AlarmLife): LifeStep => ({ life, changed: false, refusal: null });
const refuse = (life: AlarmLife, refusal: LifeRefusal): LifeStep => ({ life, changed: false, refusal });

function conditionOn(life: AlarmLife): AlarmLife {
  if (isSetAside(life)) return { ...life, active: true };
  return { ...life, active: true, phase: 'unacknowledged', sounding: true };
}

function conditionOff(rules: LifeRules, life: AlarmLife): AlarmLife {
  const over = { ...life, active: false };
  if (isSetAside(life)) return over;
  const seen = life.phase === 'acknowledged';
  // A latched alarm goes on sounding as it did: it is not over for anybody before it has been seen.
  if (rules.latching) return { ...over, phase: seen ? 'latched-acknowledged' : 'latched-unacknowledged' };
  const waits = !seen && rules.acknowledgeReturn;
  return { ...over, phase: waits ? 'returned-unacknowledged' : 'normal', sounding: false };
}

function acknowledge(life: AlarmLife): LifeStep {
  if (isSetAside(life)) return refuse(life, 'set-aside');
  switch (life.phase) {
    case 'unacknowledged':
      return to({ ...life, phase: 'acknowledged', sounding: false });
    case 'returned-unacknowledged':
      return to({ ...life, phase: 'normal', sounding: false });
    case 'latched-unacknowledged':
      return to({ ...life, phase: 'latched-acknowledged', sounding: false });
    case 'acknowledged':
    case 'latched-acknowledged':
      return refuse(life, 'already-acknowledged');
    case 'normal':
      return refuse(life, 'nothing-to-acknowledge');
    default:
      return life.phase satisfies never;
  }
}

function reset(life: AlarmLife): LifeStep {
  if (isSetAside(life)) return refuse(life, 'set-aside');
  if (life.phase === 'latched-acknowledged') return to({ ...life, phase: 'normal' });
  if (life.phase === 'latched-unacknowledged') return refuse(life, 'acknowledge-first');
  return refuse(life, life.active ? 'condition-still-holds' : 'nothing-to-reset');
}

function setAside(rules: LifeRules, life: AlarmLife, mark: Mark, again: LifeRefusal | null): LifeStep {
  if (rules.dangerToLife) return refuse(life, 'danger-to-life');
  if (life[mark]) return again === null ? same(life) : refuse(life, again);
  return to({ ...life, phase: 'normal', sounding: false, [mark]: true });
}

/** Takes a mark away; with the last one the alarm is announced again if its condition holds. */
function takeUp(life: AlarmLife, mark: Mark): AlarmLife {
  const next = { ...life, [mark]: false };
  if (isSetAside(next) || !next.active) return next;
  return { ...next, phase: 'unacknowledged', sounding: true };
}
