import type { AlarmKind } from '../contract/alarm.ts';
import { type ConditionState, QUIET } from '../judging/condition.ts';
import { paramsOf } from './finding-params.ts';
import { withEvent } from './track.ts';
import type { ConditionName, FiringCase, FiringState } from './types.ts';

/** Conditions that are findings, and the events that they leave in the record. */

export const FINDING_CONDITIONS = [
  'overshoot',
  'overshoot-ahead',
  'soak-stalled',
  'ramp-stalled',
] as const satisfies readonly (ConditionName & AlarmKind)[];

function isFinding(name: ConditionName): name is (typeof FINDING_CONDITIONS)[number] {
  return FINDING_CONDITIONS.some((kind) => kind === name);
}

/** Sets one condition; a finding that was raised or cleared by it becomes an event. */
export function setCondition(
  c: FiringCase,
  state: FiringState,
  name: ConditionName,
  condition: ConditionState,
): FiringState {
  const before = state.conditions[name];
  if (condition === before) return state;
  const next = { ...state, conditions: { ...state.conditions, [name]: condition } };
  if (!isFinding(name) || condition.raised === before.raised) return next;
  const kind = condition.raised ? 'finding-raised' : 'finding-cleared';
  const params = paramsOf(c, condition.raised ? next : state, name);
  return withEvent(next, kind, { segment: state.index, finding: name, params });
}

/** Forgets conditions: what they were about is over. */
export function dropConditions(
  c: FiringCase,
  state: FiringState,
  names: readonly ConditionName[],
): FiringState {
  return names.reduce((now, name) => setCondition(c, now, name, QUIET), state);
}
