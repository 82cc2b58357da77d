import type { Alarm } from '../../hub/contract/alarm.ts';
import { STATE_NAMES } from '../words/alarm-review.ts';
import { ruleWords, standingWords } from '../words/alarms.ts';
import { duration, since } from '../words/time.ts';

/** How an alarm stands and what it asks for, out of its state. Pure. */

/** The one thing to press. Null: nothing is owed (it is seen and still holds, or a rule holds it back). */
export type Act = 'acknowledge' | 'reset' | 'unshelve' | 'give-back';

export function actOf({ state }: Pick<Alarm, 'state'>): Act | null {
  switch (state) {
    case 'unacknowledged':
    case 'returned-unacknowledged':
    case 'latched-unacknowledged':
      return 'acknowledge';
    case 'latched-acknowledged':
      return 'reset';
    case 'shelved':
      return 'unshelve';
    case 'out-of-service':
      return 'give-back';
    case 'acknowledged':
    case 'suppressed':
    case 'normal':
      return null;
    default:
      return state satisfies never;
  }
}

/** How it stands, in words: the state, who did it, and until when. `nowMs` epoch ms, the hub's clock. */
export function standingOf(alarm: Alarm, nowMs: number, timeZone?: string): string {
  const time = (at: number | null) => (at === null ? standingWords.unknownTime : since(at, nowMs, timeZone));
  const by = alarm.acknowledgedBy ?? standingWords.somebody;
  switch (alarm.state) {
    case 'unacknowledged':
      return standingWords.unacknowledged(time(alarm.activeSince ?? alarm.raisedAt));
    case 'acknowledged':
      return standingWords.acknowledged(by, time(alarm.acknowledgedAt));
    case 'returned-unacknowledged':
      return standingWords.returned(time(alarm.clearedAt));
    case 'latched-unacknowledged':
      return standingWords.latchedUnseen(time(alarm.clearedAt));
    case 'latched-acknowledged':
      return standingWords.latchedSeen(by, time(alarm.clearedAt));
    case 'shelved':
    case 'suppressed':
    case 'out-of-service':
      return asideOf(alarm, nowMs, time);
    case 'normal':
      return standingWords.normal;
    default:
      return alarm.state satisfies never;
  }
}

function asideOf(alarm: Alarm, nowMs: number, time: (at: number | null) => string): string {
  const holds = alarm.active ? standingWords.holds(time(alarm.activeSince)) : standingWords.holdsNot;
  return `${ended(whyAside(alarm, nowMs, time))} ${holds}`;
}

function whyAside(alarm: Alarm, nowMs: number, time: (at: number | null) => string): string {
  const { state, shelf, suppression, outOfService } = alarm;
  if (state === 'shelved' && shelf !== null) {
    const left = duration((shelf.until - nowMs) / 1000);
    return standingWords.shelved(time(shelf.until), left, shelf.by, shelf.why);
  }
  if (state === 'out-of-service' && outOfService !== null) {
    return standingWords.outOfService(time(outOfService.at), outOfService.by, outOfService.why);
  }
  if (state === 'suppressed' && suppression !== null) {
    return standingWords.suppressed(ruleWords(suppression.rule));
  }
  return STATE_NAMES[state];
}

/** A reason that a person wrote may end without a stop; what follows it is a sentence of its own. */
function ended(text: string): string {
  return /[.!?]$/.test(text) ? text : `${text}.`;
}
