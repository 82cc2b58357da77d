import './card.css';
import type { Alarm } from '../../hub/contract/alarm.ts';
import { signalOf } from '../../hub/contract/alarm-signal.ts';
import { Shape } from '../parts/shape.tsx';
import { useShell } from '../shell.ts';
import { shapeOf } from '../wall/alarm-order.ts';
import { alarmWords, PRIORITY_WORD } from '../words/alarms.ts';
import { since } from '../words/time.ts';
import { CardActs } from './card-acts.tsx';
import { standingOf } from './standing.ts';

interface CardProps {
  readonly alarm: Alarm;
  /** `first`: the most urgent of all. `aside`: set aside, so its steps are not urgent. */
  readonly look: 'first' | 'lead' | 'follower' | 'aside';
}

/** One alarm: what is wrong, how it stands, what to do, and the one thing to press. */
export function AlarmCard({ alarm, look }: CardProps) {
  const { feed } = useShell();
  const nowMs = feed.now.value;
  const { colour, flash } = signalOf(alarm);
  const tone = colour === null ? 'quiet' : `${alarm.priority} ${flash === null ? 'is-seen' : 'is-unseen'}`;
  return (
    <article class={`alarm-card alarm-card-${look} alarm-${tone}`} aria-label={alarm.title}>
      <Shape of={shapeOf(alarm)} />
      <div class="alarm-words">
        <p class="alarm-priority">
          {look === 'first' && <strong>{alarmWords.first}: </strong>}
          {PRIORITY_WORD[alarm.priority]}, {alarmWords.raised(since(alarm.raisedAt, nowMs))}
        </p>
        <h3 class="alarm-title">{alarm.title}</h3>
        <p class="alarm-measured">{alarm.message}</p>
        <p class="alarm-standing">{standingOf(alarm, nowMs)}</p>
        <Steps alarm={alarm} open={look === 'first'} />
      </div>
      <CardActs alarm={alarm} />
    </article>
  );
}

function Steps({ alarm, open }: { readonly alarm: Alarm; readonly open: boolean }) {
  const steps = (
    <ol class="alarm-steps">
      {alarm.guidance.map((step) => (
        <li key={step}>{step}</li>
      ))}
    </ol>
  );
  if (open) return steps;
  return (
    <details class="alarm-more">
      <summary>
        {alarmWords.guidance}
        <span class="sr-only">: {alarm.title}</span>
      </summary>
      {steps}
    </details>
  );
}
