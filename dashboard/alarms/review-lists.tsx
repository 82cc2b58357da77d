import type { AlarmReview } from '../../hub/contract/alarm-review.ts';
import { reviewWords, STATE_NAMES } from '../words/alarm-review.ts';
import { dayAndTime, duration } from '../words/time.ts';

interface Line {
  readonly key: string;
  readonly name: string;
  readonly said: string;
}

/** What stands, chatters, flits by, stays too long, and comes in floods: named, so that each can be mended. */
export function NuisanceLists({ review }: { readonly review: AlarmReview }) {
  return (
    <div class="alarm-review-lists">
      <List title={reviewWords.standing} none={reviewWords.standingNone} lines={standing(review)} />
      <List
        title={reviewWords.chattering}
        note={reviewWords.chatteringLong}
        none={reviewWords.chatteringNone}
        lines={chattering(review)}
      />
      <List
        title={reviewWords.fleeting}
        note={reviewWords.fleetingLong}
        none={reviewWords.fleetingNone}
        lines={review.fleeting.map(({ kind, place, title, count }) => ({
          key: `${kind} ${place}`,
          name: title,
          said: `${count} ×`,
        }))}
      />
      <List
        title={reviewWords.stale}
        note={reviewWords.staleLong}
        none={reviewWords.staleNone}
        lines={review.stale.map(({ alarmId, title, activeSince }) => ({
          key: alarmId,
          name: title,
          said: reviewWords.since(dayAndTime(activeSince)),
        }))}
      />
      <List
        title={reviewWords.floods}
        note={reviewWords.floodsLong}
        none={reviewWords.floodsNone}
        lines={floods(review)}
      />
    </div>
  );
}

function standing({ standing: rows }: AlarmReview): Line[] {
  return rows.map(({ alarmId, title, state, active, activeSince }) => {
    const holds = active ? reviewWords.setAsideHolds : reviewWords.setAsideOver;
    const when = activeSince === null ? '' : `, ${reviewWords.since(dayAndTime(activeSince))}`;
    return { key: alarmId, name: title, said: `${STATE_NAMES[state]}, ${holds}${when}` };
  });
}

function chattering({ chattering: rows }: AlarmReview): Line[] {
  return rows.map(({ kind, place, title, activations, mostInOneMinute, from }) => ({
    key: `${kind} ${place} ${from}`,
    name: title,
    said: `${reviewWords.chatter(activations, mostInOneMinute)}, ${dayAndTime(from)}`,
  }));
}

function floods({ floods: rows, to: end }: AlarmReview): Line[] {
  return rows.map(({ from, to, alarms }) => {
    const said = reviewWords.flood(alarms, duration(((to ?? end) - from) / 1000));
    return {
      key: String(from),
      name: dayAndTime(from),
      said: to === null ? `${said}; ${reviewWords.still}` : said,
    };
  });
}

interface ListProps {
  readonly title: string;
  readonly note?: string;
  readonly none: string;
  readonly lines: readonly Line[];
}

function List({ title, note, none, lines }: ListProps) {
  return (
    <section class="alarms-part" aria-label={title}>
      <h2>{title}</h2>
      {note !== undefined && <p class="aside">{note}</p>}
      {lines.length === 0 && <p>{none}</p>}
      <ul class="alarm-lines">
        {lines.map(({ key, name, said }) => (
          <li key={key}>
            <strong>{name}</strong> <span>{said}</span>
          </li>
        ))}
      </ul>
    </section>
  );
}
