import { useEffect } from 'preact/hooks';
import type { Alarm, HeldBackAlarm } from '../../hub/contract/alarm.ts';
import { ProblemNote } from '../parts/problem.tsx';
import { useAnswer } from '../parts/use-answer.ts';
import { useShell } from '../shell.ts';
import { alarmWords, ruleWords, standingWords } from '../words/alarms.ts';
import { since } from '../words/time.ts';
import { AlarmCard } from './card.tsx';

/** What is held back changes without an alarm changing, so it is asked for again and again. */
const ASK_MS = 10_000;

/** What a rule holds back: alarms that were open already, and conditions that were never announced. */
export function HeldBackPart({ suppressed }: { readonly suppressed: readonly Alarm[] }) {
  const { api, feed } = useShell();
  const key = `${suppressed.map(({ id }) => id).join()} ${feed.blind.value}`;
  const { answer, reload } = useAnswer(key, () => api.alarms.heldBack());
  useEffect(() => {
    const timer = window.setInterval(reload, ASK_MS);
    return () => window.clearInterval(timer);
  }, []);
  const told = new Set(suppressed.map(nameOf));
  const others = answer.state === 'here' ? answer.value.filter((held) => !told.has(nameOf(held))) : [];
  const known = answer.state === 'here';
  return (
    <section class="alarms-part" aria-label={alarmWords.held}>
      <h2>{alarmWords.held}</h2>
      {answer.state === 'failed' && <ProblemNote error={answer.error} />}
      {known && suppressed.length + others.length === 0 && <p class="aside">{alarmWords.heldNone}</p>}
      <ul class="alarms-list">
        {suppressed.map((alarm) => (
          <li key={alarm.id}>
            <AlarmCard alarm={alarm} look="aside" />
          </li>
        ))}
        {others.map((held) => (
          <li key={nameOf(held)}>
            <HeldView held={held} />
          </li>
        ))}
      </ul>
    </section>
  );
}

function HeldView({ held }: { readonly held: HeldBackAlarm }) {
  const { feed } = useShell();
  return (
    <article class="alarm-card alarm-card-aside alarm-quiet" aria-label={held.title}>
      <div class="alarm-words">
        <h3 class="alarm-title">{held.title}</h3>
        <p class="alarm-measured">{held.message}</p>
        <p class="alarm-standing">
          {standingWords.suppressed(ruleWords(held.rule))}{' '}
          {alarmWords.heldSince(since(held.since, feed.now.value))}
        </p>
      </div>
    </article>
  );
}

const nameOf = ({ kind, subject }: Pick<HeldBackAlarm, 'kind' | 'subject'>): string => `${kind} ${subject}`;
