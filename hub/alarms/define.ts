import type { AlarmDefinition } from './definitions.ts';

/** What every definition has unless its row says otherwise. */

type Given = Pick<AlarmDefinition, 'rank' | 'setpoint' | 'secondsToAct' | 'source'>;

const NO_SOURCE = 'common practice, no source';

const PLAIN = {
  onDelayMs: 0,
  offDelayMs: 0,
  deadbandShare: 0,
  deadbandMostOfTolerance: null,
  // ISA-18.2-2016 makes latching an option, not the rule: a returned alarm waits to be seen anyway.
  latching: false,
  acknowledgeReturn: true,
  dangerToLife: false,
  suppressedBy: [],
  timeSource: NO_SOURCE,
} as const;

export function warning(given: Given & Partial<AlarmDefinition>): AlarmDefinition {
  return { ...PLAIN, priority: 'warning', ...given };
}

export function danger(given: Given & Partial<AlarmDefinition>): AlarmDefinition {
  return { ...PLAIN, priority: 'danger', ...given };
}
