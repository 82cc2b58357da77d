import {
  type AlarmLife,
  isSetAside,
  type LifeRules,
  NORMAL_LIFE,
  shownState,
} from '../../hub/alarms/life-cycle.ts';
import type { AlarmEvent } from '../../hub/contract/alarm.ts';
import model from '../reference/alarm-model.json' with { type: 'json' };

/**
 * The table of alarm states in the letters of its source (tests/reference/alarm-model.json): A normal,
 * B unacknowledged, C acknowledged, D returned unacknowledged, LU and LA latched, E shelved, F suppressed,
 * G out of service; marks that stand together are joined by +.
 */
const PHASES = {
  A: 'normal',
  B: 'unacknowledged',
  C: 'acknowledged',
  D: 'returned-unacknowledged',
  LU: 'latched-unacknowledged',
  LA: 'latched-acknowledged',
} as const;

export const EVENTS: Readonly<Record<string, AlarmEvent>> = {
  cond_on: 'condition-on',
  cond_off: 'condition-off',
  ack: 'acknowledge',
  reset: 'reset',
  silence: 'silence',
  shelve: 'shelve',
  unshelve: 'unshelve',
  shelve_expired: 'shelf-ends',
  suppress_on: 'suppress',
  suppress_off: 'suppression-ends',
  oos_on: 'take-out-of-service',
  oos_off: 'return-to-service',
};

export function eventOf(name: unknown): AlarmEvent {
  const event = EVENTS[String(name)];
  if (event === undefined) throw new Error(`no event ${String(name)}`);
  return event;
}

/** A life out of the source's letters. */
export function lifeOf(letters: string, active: boolean, horn: boolean): AlarmLife {
  const phase = PHASES[letters as keyof typeof PHASES];
  if (phase !== undefined) return { ...NORMAL_LIFE, phase, active, sounding: horn };
  const marks = letters.split('+');
  return {
    ...NORMAL_LIFE,
    active,
    shelved: marks.includes('E'),
    suppressed: marks.includes('F'),
    outOfService: marks.includes('G'),
  };
}

/** The source's letters of a life. */
export function lettersOf(life: AlarmLife): string {
  if (isSetAside(life)) {
    const marks = [life.shelved && 'E', life.suppressed && 'F', life.outOfService && 'G'];
    return marks.filter((mark) => mark !== false).join('+');
  }
  const found = Object.entries(PHASES).find(([, phase]) => phase === life.phase);
  return found?.[0] ?? 'none';
}

/** The single letter that is shown: G over F over E. */
export function shownLetter(life: AlarmLife): string {
  const shown = shownState(life);
  const aside = { shelved: 'E', suppressed: 'F', 'out-of-service': 'G' } as const;
  return shown in aside ? aside[shown as keyof typeof aside] : lettersOf(life);
}

export type Config = keyof typeof model.tables;
export const CONFIGS = Object.keys(model.tables) as Config[];

export function rulesOf(config: Config): LifeRules {
  const { latching, acknowledgeReturn } = model.tables[config];
  return { latching, acknowledgeReturn, dangerToLife: false };
}

/** State, condition, horn, event; then state, condition, horn, changed. */
export type Row = readonly [string, number, number, string, string, number, number, number];

export function rowsOf(config: Config): readonly Row[] {
  return model.tables[config].rows as unknown as readonly Row[];
}

export interface Trace {
  readonly id: string;
  readonly config: Config;
  readonly why: string;
  /** Event, state after it, condition, horn, changed. */
  readonly steps: readonly (readonly [string, string, number, number, number])[];
}

export const TRACES = model.traces as unknown as readonly Trace[];
export const CORE = model.core;
