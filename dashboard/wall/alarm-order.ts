import type { Alarm } from '../../hub/contract/alarm.ts';
import { compareUrgency, isBlindness } from '../../hub/contract/alarm-groups.ts';
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

/** The shape that stands beside an alarm's words. */
export function shapeOf(alarm: Pick<Alarm, 'kind' | 'priority'>): ShapeKind {
  return isBlindness(alarm) ? 'blind' : alarm.priority;
}

/**
 * What must sound: what is not acknowledged and true now (ISA-18.2: no horn once it has returned), or latched: that
 * sounds until someone has seen it.
 */
export function soundingOf(alarms: Iterable<Alarm>): Alarm['priority'] | null {
  const loud = [...alarms].filter(
    ({ state }) => state === 'unacknowledged' || state === 'latched-unacknowledged',
  );
  if (loud.some((alarm) => alarm.priority === 'danger')) return 'danger';
  return loud.length > 0 ? 'warning' : null;
}

/** Ids of the dangers that nobody has acknowledged. */
export function unseenDanger(alarms: Iterable<Alarm>): ReadonlySet<string> {
  const unseen = [...alarms].filter(
    (alarm) => alarm.state === 'unacknowledged' && alarm.priority === 'danger',
  );
  return new Set(unseen.map((alarm) => alarm.id));
}

/** True when there is a danger that was not there when `known` was taken. */
export function newDanger(alarms: Iterable<Alarm>, known: ReadonlySet<string>): boolean {
  return [...unseenDanger(alarms)].some((id) => !known.has(id));
}
