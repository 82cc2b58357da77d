import type { Alarm } from '../../hub/contract/alarm.ts';
import type { AlarmGroup } from '../../hub/contract/alarm-groups.ts';
import { alarmWords } from '../words/alarms.ts';
import { AlarmCard } from './card.tsx';

interface GroupProps {
  readonly group: AlarmGroup<Alarm>;
  /** The most urgent of all. */
  readonly first: boolean;
}

/** One action, and what goes away with it. */
export function GroupView({ group: { lead, followers }, first }: GroupProps) {
  return (
    <li class="alarms-group">
      <AlarmCard alarm={lead} look={first ? 'first' : 'lead'} />
      {followers.length > 0 && (
        <div class="alarms-follows">
          <p class="alarms-follows-head">{alarmWords.follows(followers.length)}</p>
          <ul class="alarms-list">
            {followers.map((alarm) => (
              <li key={alarm.id}>
                <AlarmCard alarm={alarm} look="follower" />
              </li>
            ))}
          </ul>
        </div>
      )}
    </li>
  );
}
