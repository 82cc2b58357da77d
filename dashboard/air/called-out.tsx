import type { Alarm } from '../../hub/contract/alarm.ts';
import { LinkButton } from '../parts/button.tsx';
import { Shape } from '../parts/shape.tsx';
import { hrefTo } from '../router.ts';
import { byUrgency, shapeOf } from '../wall/alarm-order.ts';
import { airWords } from '../words/air.ts';

interface CalledOutProps {
  readonly alarms: Iterable<Alarm>;
  /** When the hub was last heard, in words; null: it is heard now. */
  readonly lastKnown: string | null;
}

/** The alarms about the air, the most urgent first, each with the first thing to do. */
export function CalledOut({ alarms, lastKnown }: CalledOutProps) {
  const about = byUrgency(alarms).filter(isAboutAir);
  // What holds now stands before what has passed and waits for somebody to have seen it.
  const open = [...about.filter(({ active }) => active), ...about.filter(({ active }) => !active)];
  if (open.length === 0) return null;
  return (
    <section class="air-called" aria-labelledby="air-called">
      <h2 id="air-called">{lastKnown === null ? airWords.alarmsTitle : airWords.alarmsLast(lastKnown)}</h2>
      <ul>
        {open.map((alarm) => (
          <li
            key={alarm.id}
            class={alarm.active ? `air-call air-call-${shapeOf(alarm)}` : 'air-call air-call-over'}
          >
            <Shape of={shapeOf(alarm)} />
            <div>
              <p class="air-call-title">{alarm.title}</p>
              <p>{alarm.message}</p>
              {alarm.active && alarm.guidance[0] !== undefined && (
                <p class="air-call-act">{alarm.guidance[0]}</p>
              )}
              {!alarm.active && <p class="air-call-passed">{airWords.alarmOver}</p>}
            </div>
          </li>
        ))}
      </ul>
      <LinkButton href={hrefTo({ view: 'wall' })}>{airWords.toWall}</LinkButton>
    </section>
  );
}

/** By its kind: every alarm about the air of the room, and that nobody watches it. */
export function isAboutAir({ kind }: Pick<Alarm, 'kind'>): boolean {
  return kind === 'not-watching-air' || kind.startsWith('unsafe-air-') || kind.startsWith('air-');
}
