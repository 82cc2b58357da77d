import { ALARM_DEFINITIONS } from '../alarms/definitions.ts';
import type { HeldBack } from '../alarms/suppression.ts';
import type { AlarmRow } from '../archive/types.ts';
import type { Alarm, HeldBackAlarm } from '../contract/alarm.ts';
import type { DisplayUnit } from '../contract/schedule.ts';
import { words } from '../contract/words/words.ts';

/** An alarm with its words, in the shop's unit. */
export function worded(row: AlarmRow, unit: DisplayUnit): Alarm {
  const { dangerToLife } = ALARM_DEFINITIONS[row.kind];
  return { ...row, dangerToLife, ...words('en').alarm(row.kind, row.params, unit) };
}

/** What a rule holds back, with its words, in the shop's unit. */
export function heldBackWords({ finding, rule }: HeldBack, unit: DisplayUnit): HeldBackAlarm {
  const { kind, subject, since, params } = finding;
  const { title, message } = words('en').alarm(kind, params, unit);
  return { kind, subject, since, rule, title, message };
}
