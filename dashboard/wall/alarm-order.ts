import { ALARM_KINDS, type Alarm } from '../../hub/contract/alarm.ts';
import type { ShapeKind } from '../parts/shape.tsx';

/**
 * Which alarm the banner shows first. What nobody has acknowledged comes before what somebody has; then
 * blindness before everything else, because every other answer rests on seeing; then danger before warning;
 * then the contract's order of kinds; then the newest.
 */
export function byUrgency(alarms: Iterable<Alarm>): Alarm[] {
  return [...alarms]
    .filter((alarm) => alarm.state !== 'normal')
    .sort(
      (a, b) =>
        attention(a) - attention(b) ||
        Number(isBlindness(b)) - Number(isBlindness(a)) ||
        gravity(a) - gravity(b) ||
        ALARM_KINDS.indexOf(a.kind) - ALARM_KINDS.indexOf(b.kind) ||
        b.raisedAt - a.raisedAt,
    );
}

/** True for alarms that say that nobody is watching something. */
export function isBlindness(alarm: Pick<Alarm, 'kind'>): boolean {
  return alarm.kind.startsWith('not-watching');
}

/** True when a press is still owed. */
export function wantsPress(alarm: Pick<Alarm, 'state'>): boolean {
  return alarm.state === 'unacknowledged' || alarm.state === 'returned-unacknowledged';
}

/** The shape that stands beside an alarm's words. */
export function shapeOf(alarm: Pick<Alarm, 'kind' | 'priority'>): ShapeKind {
  return isBlindness(alarm) ? 'blind' : alarm.priority;
}

/** What must sound: only what is true now and not acknowledged (ISA-18.2: no horn once it has returned). */
export function soundingOf(alarms: Iterable<Alarm>): Alarm['priority'] | null {
  const loud = [...alarms].filter((alarm) => alarm.state === 'unacknowledged');
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

function attention(alarm: Alarm): number {
  switch (alarm.state) {
    case 'unacknowledged':
      return 0;
    case 'acknowledged':
      return 1;
    case 'returned-unacknowledged':
      return 2;
    case 'normal':
      return 3;
    default:
      return alarm.state satisfies never;
  }
}

function gravity(alarm: Alarm): number {
  return alarm.priority === 'danger' ? 0 : 1;
}
