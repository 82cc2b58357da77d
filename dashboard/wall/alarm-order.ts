import type { Alarm } from '../../hub/contract/alarm.ts';
import { compareUrgency, isBlindness } from '../../hub/contract/alarm-groups.ts';
import { type SoundName, signalOf } from '../../hub/contract/alarm-signal.ts';
import type { ShapeKind } from '../parts/shape.tsx';

/** Every alarm that is not back to normal, in the order in which the banner shows them. */
export function byUrgency(alarms: Iterable<Alarm>): Alarm[] {
  return [...alarms].filter((alarm) => alarm.state !== 'normal').sort(compareUrgency);
}

/** True when a press is still owed. */
export function wantsPress(alarm: Pick<Alarm, 'state'>): boolean {
  return (
    alarm.state === 'unacknowledged' ||
    alarm.state === 'returned-unacknowledged' ||
    alarm.state === 'latched-unacknowledged'
  );
}

/** True for what is seen and over, and stays until somebody resets it. */
export function wantsReset(alarm: Pick<Alarm, 'state'>): boolean {
  return alarm.state === 'latched-acknowledged';
}

/** The shape that stands beside an alarm's words. */
export function shapeOf(alarm: Pick<Alarm, 'kind' | 'priority'>): ShapeKind {
  return isBlindness(alarm) ? 'blind' : alarm.priority;
}

/** The louder first: blindness, then by priority. */
const LOUDNESS: readonly SoundName[] = ['blind', 'danger', 'warning'];

/**
 * What must sound, by the signals of the contract: what is not acknowledged and true now (ISA-18.2: no horn once it
 * has returned), or latched: that sounds until someone has seen it. Foul air sounds as danger whatever else cannot
 * be seen: one goes out first and looks for the broken probe afterwards.
 */
export function soundingOf(alarms: Iterable<Alarm>): SoundName | null {
  const loud = [...alarms].filter((alarm) => signalOf(alarm).sound !== null);
  const mortal = loud.some((alarm) => alarm.dangerToLife && !isBlindness(alarm));
  if (mortal) return 'danger';
  return LOUDNESS.find((name) => loud.some((alarm) => signalOf(alarm).sound === name)) ?? null;
}

/** Ids of the dangers that nobody has acknowledged. */
export function unseenDanger(alarms: Iterable<Alarm>): ReadonlySet<string> {
  const unseen = [...alarms].filter((alarm) => signalOf(alarm).sound !== null && alarm.priority === 'danger');
  return new Set(unseen.map((alarm) => alarm.id));
}

/** True when there is a danger that was not there when `known` was taken. */
export function newDanger(alarms: Iterable<Alarm>, known: ReadonlySet<string>): boolean {
  return [...unseenDanger(alarms)].some((id) => !known.has(id));
}
