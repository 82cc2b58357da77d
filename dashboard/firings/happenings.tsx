import type { Alarm } from '../../hub/contract/alarm.ts';
import type { FiringDetail, FiringEvent } from '../../hub/contract/firing.ts';
import { Shape } from '../parts/shape.tsx';
import { type Column, Table } from '../parts/table.tsx';
import { shapeOf } from '../wall/alarm-order.ts';
import { firingWords } from '../words/firings.ts';
import { timeOfDaySeconds } from '../words/time.ts';
import { shapeOfEvent } from './marks.ts';

/** What happened, in the order of time. */
export function Events({ firing }: { readonly firing: FiringDetail }) {
  const { events } = firing.judgement;
  return (
    <section class="firing-section" aria-labelledby="events-head">
      <h2 id="events-head">{firingWords.events}</h2>
      {events.length === 0 ? (
        <p>{firingWords.noEvents}</p>
      ) : (
        <ol class="events">
          {events.map((event, index) => (
            <EventLine key={`${event.at}-${index}`} event={event} />
          ))}
        </ol>
      )}
    </section>
  );
}

function EventLine({ event }: { readonly event: FiringEvent }) {
  const shape = shapeOfEvent(event);
  return (
    <li>
      <time>{timeOfDaySeconds(event.at)}</time>
      {shape === 'event' ? <span aria-hidden="true" class="event-dot" /> : <Shape of={shape} />}
      <span>{event.text}</span>
    </li>
  );
}

const { alarmHeads } = firingWords;

const ALARM_COLUMNS: readonly Column<Alarm>[] = [
  {
    key: 'alarm',
    head: alarmHeads.alarm,
    cell: (alarm) => (
      <span class="alarm-name">
        <Shape of={shapeOf(alarm)} />
        <span>
          {alarm.title}
          <br />
          <span class="alarm-message">{alarm.message}</span>
        </span>
      </span>
    ),
  },
  { key: 'raised', head: alarmHeads.raised, cell: (alarm) => timeOfDaySeconds(alarm.raisedAt) },
  { key: 'over', head: alarmHeads.over, cell: overText },
  { key: 'seen', head: alarmHeads.seen, cell: seenText },
];

/** The alarms of a firing, with when they ended and who acknowledged them. */
export function Alarms({ alarms }: { readonly alarms: readonly Alarm[] }) {
  return (
    <section class="firing-section" aria-labelledby="alarms-head">
      <h2 id="alarms-head">{firingWords.alarms}</h2>
      {alarms.length === 0 ? (
        <p>{firingWords.noAlarms}</p>
      ) : (
        <Table
          caption={firingWords.alarms}
          hideCaption
          columns={ALARM_COLUMNS}
          rows={[...alarms].sort((a, b) => a.raisedAt - b.raisedAt)}
          rowKey={(alarm) => alarm.id}
          empty={firingWords.noAlarms}
        />
      )}
    </section>
  );
}

export function overText(alarm: Alarm): string {
  return alarm.clearedAt === null ? firingWords.stillOn : timeOfDaySeconds(alarm.clearedAt);
}

export function seenText(alarm: Alarm): string {
  if (alarm.acknowledgedAt === null) return firingWords.notSeen;
  return firingWords.seenBy(timeOfDaySeconds(alarm.acknowledgedAt), alarm.acknowledgedBy);
}
