import { z } from 'zod';
import { ALARM_KINDS, Alarm } from './alarm.ts';
import { ALARM_CAUSES, type CauseTable, isAlike } from './alarm-relations.ts';

/** First-out: several alarms as what to do first, and what follows from the same cause under it. */

/** What grouping looks at. */
export type GroupedAlarm = Pick<
  Alarm,
  'id' | 'kind' | 'priority' | 'subject' | 'params' | 'state' | 'active' | 'raisedAt' | 'dangerToLife'
>;

export interface AlarmGroup<A> {
  readonly lead: A;
  /** What comes of the lead, the most urgent first. */
  readonly followers: readonly A[];
}

/** As `GET /api/v1/alarms/groups` answers it. */
export const AlarmGroupAnswer = z
  .object({ lead: Alarm, followers: z.array(Alarm) })
  .meta({ id: 'AlarmGroup' });

/** True for alarms that say that nobody is watching something. */
export function isBlindness(alarm: Pick<Alarm, 'kind'>): boolean {
  return alarm.kind.startsWith('not-watching');
}

/** True when an alarm is shelved, suppressed or out of service: listed, never announced. */
export function isPutAside({ state }: Pick<Alarm, 'state'>): boolean {
  return state === 'shelved' || state === 'suppressed' || state === 'out-of-service';
}

/**
 * The more urgent first: what nobody has acknowledged before what somebody has, save a danger to life that still
 * holds, which no smaller thing may push aside; what is set aside last; then
 * blindness before everything else, because every other answer rests on seeing; then danger before warning; then
 * the order of kinds; then the newest.
 */
export function compareUrgency(a: GroupedAlarm, b: GroupedAlarm): number {
  return (
    claim(a) - claim(b) ||
    Number(isBlindness(b)) - Number(isBlindness(a)) ||
    gravity(a) - gravity(b) ||
    attention(a) - attention(b) ||
    ALARM_KINDS.indexOf(a.kind) - ALARM_KINDS.indexOf(b.kind) ||
    b.raisedAt - a.raisedAt
  );
}

/**
 * Groups alarms by what they come of; the group with the most urgent alarm in it comes first. Alarms that are back
 * to normal are left out. An alarm goes under another only where nothing is lost by it: never one about danger to
 * life, never a louder under a quieter one, never what holds under what is over, nor under what is set aside.
 */
export function groupAlarms<A extends GroupedAlarm>(
  alarms: Iterable<A>,
  causes: CauseTable = ALARM_CAUSES,
): readonly AlarmGroup<A>[] {
  const open = [...alarms].filter((alarm) => alarm.state !== 'normal').sort(compareUrgency);
  const members = new Map<A, A[]>();
  for (const alarm of open) {
    const root = rootOf(alarm, open, causes);
    members.set(root, [...(members.get(root) ?? []), alarm]);
  }
  // Kept in order of insertion: each group was begun by its most urgent member.
  return [...members].map(([lead, all]) => ({ lead, followers: all.filter((one) => one !== lead) }));
}

/** Follows the causes up to the first. In a ring of causes nothing is the first: the alarm stands for itself. */
function rootOf<A extends GroupedAlarm>(alarm: A, open: readonly A[], causes: CauseTable): A {
  const seen = new Set<A>([alarm]);
  let root = alarm;
  for (let next = causeOf(root, open, causes); next; next = causeOf(root, open, causes)) {
    if (seen.has(next)) return alarm;
    seen.add(next);
    root = next;
  }
  return root;
}

function causeOf<A extends GroupedAlarm>(alarm: A, open: readonly A[], causes: CauseTable): A | undefined {
  for (const { kind, same } of causes[alarm.kind] ?? []) {
    const found = open.find(
      (other) => other.kind === kind && isAlike(alarm, other, same) && mayStandUnder(alarm, other),
    );
    if (found !== undefined) return found;
  }
  return undefined;
}

function mayStandUnder(alarm: GroupedAlarm, cause: GroupedAlarm): boolean {
  if (alarm.dangerToLife || isPutAside(alarm) || isPutAside(cause)) return false;
  if (gravity(alarm) < gravity(cause)) return false;
  return cause.active || !alarm.active;
}

/** A danger to life claims the first place for as long as it holds, seen or not. */
function claim(alarm: GroupedAlarm): number {
  const holds = alarm.dangerToLife && alarm.active && !isPutAside(alarm);
  return holds ? 0 : attention(alarm);
}

function attention(alarm: Pick<Alarm, 'state'>): number {
  switch (alarm.state) {
    case 'unacknowledged':
      return 0;
    case 'acknowledged':
      return 1;
    case 'latched-unacknowledged':
    case 'returned-unacknowledged':
      return 2;
    case 'latched-acknowledged':
      return 3;
    case 'shelved':
    case 'suppressed':
    case 'out-of-service':
      return 4;
    case 'normal':
      return 5;
    default:
      return alarm.state satisfies never;
  }
}

function gravity(alarm: Pick<Alarm, 'priority'>): number {
  return alarm.priority === 'danger' ? 0 : 1;
}
