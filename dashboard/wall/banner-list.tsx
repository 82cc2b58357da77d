import type { Alarm } from '../../hub/contract/alarm.ts';
import { isPutAside } from '../../hub/contract/alarm-groups.ts';
import { Shape } from '../parts/shape.tsx';
import { timeOfDay } from '../words/time.ts';
import { wallWords } from '../words/wall.ts';
import { shapeOf } from './alarm-order.ts';
import type { Named } from './banner-groups.ts';

/** How an alarm stands that asks for no press. What is set aside says so, and until when: it is never hidden. */
export function standingOf(alarm: Alarm): string {
  if (alarm.state === 'out-of-service') return wallWords.outOfService;
  if (alarm.state === 'suppressed') return wallWords.heldBack;
  return alarm.shelf === null ? wallWords.seen : wallWords.shelvedUntil(timeOfDay(alarm.shelf.until));
}

interface ListProps {
  readonly head: string;
  readonly list: Named;
}

/** Some alarms by shape and name on one line, the rest by number. */
export function BannerList({ head, list: { named, more, moreMortal } }: ListProps) {
  if (named.length === 0) return null;
  return (
    <span class="banner-others">
      {head}{' '}
      {named.map((alarm) => (
        <span class="banner-other" key={alarm.id}>
          <Shape of={shapeOf(alarm)} /> {alarm.title}
          {isPutAside(alarm) && ` (${standingOf(alarm)})`}
        </span>
      ))}
      {more > 0 && (moreMortal > 0 ? wallWords.othersMortal(more, moreMortal) : wallWords.others(more))}
    </span>
  );
}
