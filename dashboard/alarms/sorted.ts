import type { Alarm } from '../../hub/contract/alarm.ts';
import { type AlarmGroup, compareUrgency, groupAlarms, isPutAside } from '../../hub/contract/alarm-groups.ts';

/** What stands, sorted for the page: what asks for somebody, and three lists of what is set aside. */
export interface Sorted {
  readonly groups: readonly AlarmGroup<Alarm>[];
  readonly shelved: readonly Alarm[];
  readonly outOfService: readonly Alarm[];
  readonly suppressed: readonly Alarm[];
}

/** Nothing that is open is left out: each alarm stands in exactly one of the four. */
export function sortAlarms(alarms: Iterable<Alarm>): Sorted {
  const all = [...alarms].sort(compareUrgency);
  const aside = (state: Alarm['state']) => all.filter((alarm) => alarm.state === state);
  return {
    groups: groupAlarms(all.filter((alarm) => !isPutAside(alarm))),
    shelved: aside('shelved'),
    outOfService: aside('out-of-service'),
    suppressed: aside('suppressed'),
  };
}
