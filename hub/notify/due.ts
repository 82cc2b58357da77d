import type { NotifyRule } from '../contract/notify.ts';
import { isWithinHours } from './hours.ts';
import type { SeenAlarm, SendReason, Told, WayRule } from './types.ts';

/** Which alarms a way has to tell now. */

const MINUTE_MS = 60_000;
/** An alarm that nobody answers is not repeated for ever. Common practice, no source. */
export const MOST_TIMES = 30;

/** Alarms that wait for a person: announced, and nobody has acknowledged them. */
export function isPressing({ state }: SeenAlarm): boolean {
  return state === 'unacknowledged' || state === 'latched-unacknowledged';
}

/** Null: nothing to say. `at` in epoch ms. */
export function dueReason(
  { id, rule }: WayRule,
  alarm: SeenAlarm,
  told: Told | undefined,
  at: number,
  zone: string,
): SendReason | null {
  if (!isPressing(alarm) || !rule.priorities.includes(alarm.priority)) return null;
  // A way that does not work cannot tell that it does not work, and says so of others once: no loop can form.
  if (alarm.kind === 'notify-failed' && (alarm.subject === id || told !== undefined)) return null;
  if (!isHour(rule, alarm, at, zone)) return null;
  if (told !== undefined) return isRepeat(rule, told, at) ? 'repeated' : null;
  if (at - alarm.since < rule.afterMinutes * MINUTE_MS) return null;
  return rule.afterMinutes > 0 ? 'not-acknowledged' : 'raised';
}

function isHour(rule: NotifyRule, alarm: SeenAlarm, at: number, zone: string): boolean {
  if (rule.hours === null || (rule.dangerAnyHour && alarm.priority === 'danger')) return true;
  return isWithinHours(rule.hours, at, zone);
}

function isRepeat({ repeatMinutes }: NotifyRule, told: Told, at: number): boolean {
  if (repeatMinutes === null || told.times >= MOST_TIMES) return false;
  return at - told.lastAt >= repeatMinutes * MINUTE_MS;
}
