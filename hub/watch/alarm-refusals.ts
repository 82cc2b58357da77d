import type { LifeRefusal } from '../alarms/life-cycle.ts';

/** What a refused press on an alarm says: what was wrong, and what to do. */
export const ALARM_REFUSALS: Readonly<Record<LifeRefusal, string>> = {
  'danger-to-life': 'this alarm is about danger to life: it cannot be set aside; see to its cause',
  'set-aside': 'this alarm is shelved, suppressed or out of service: take it up first',
  'already-acknowledged': 'this alarm has been acknowledged already',
  'nothing-to-acknowledge': 'there is nothing to acknowledge in this alarm',
  'nothing-to-silence': 'this alarm does not sound',
  'nothing-to-reset': 'this alarm does not wait for a reset',
  'acknowledge-first': 'acknowledge this alarm before you reset it',
  'condition-still-holds': 'what the alarm is about still holds: a reset comes after it is over',
  'already-shelved': 'this alarm is shelved already: unshelve it before you shelve it anew',
  'not-shelved': 'this alarm is not shelved',
  'already-out-of-service': 'this alarm is out of service already',
  'not-out-of-service': 'this alarm is not out of service',
};
