import type { Alarm } from '../../hub/contract/alarm.ts';
import { isBlindness } from '../../hub/contract/alarm-groups.ts';
import type { FiringEvent } from '../../hub/contract/firing.ts';
import type { ChartMark } from '../charts/types.ts';
import { shapeOf } from '../wall/alarm-order.ts';

/** Kinds that a chart need not mark: the end of a segment is the start of the next, the end of a finding is no news. */
const UNMARKED: ReadonlySet<FiringEvent['kind']> = new Set(['segment-ended', 'finding-cleared', 'seeing']);
/** A finding and the alarm made of it carry instants of the same moment. */
const SAME_MOMENT_MS = 120_000;

type AlarmFacts = Pick<Alarm, 'kind' | 'priority' | 'raisedAt' | 'title'>;

/**
 * Everything a firing's chart marks, oldest first: alarms with their own shape, then the events that no alarm
 * tells already. A firing recorded afterwards has findings and no alarms: they are marked as warnings.
 */
export function firingMarks(events: readonly FiringEvent[], alarms: readonly AlarmFacts[]): ChartMark[] {
  const ofAlarms = alarms.map((alarm) => ({
    at: alarm.raisedAt,
    shape: shapeOf(alarm),
    words: alarm.title,
  }));
  const ofEvents = events
    .filter((event) => !UNMARKED.has(event.kind) && !isToldBy(alarms, event))
    .map((event) => ({ at: event.at, shape: shapeOfEvent(event), words: shortWords(event) }));
  return [...ofAlarms, ...ofEvents].sort((a, b) => a.at - b.at);
}

function isToldBy(alarms: readonly AlarmFacts[], event: FiringEvent): boolean {
  if (event.kind !== 'finding-raised') return false;
  return alarms.some(
    (alarm) => alarm.kind === event.finding && Math.abs(alarm.raisedAt - event.at) <= SAME_MOMENT_MS,
  );
}

/** The shape of an event, as it stands in the chart and beside its words. */
export function shapeOfEvent(event: Pick<FiringEvent, 'kind' | 'finding'>): ChartMark['shape'] {
  if (event.kind === 'blind') return 'blind';
  if (event.kind !== 'finding-raised') return 'event';
  return event.finding !== null && isBlindness({ kind: event.finding }) ? 'blind' : 'warning';
}

/** A chart has room for "Overshoot ahead" and "Soak at 860 °C", not for their sentences. */
function shortWords(event: FiringEvent): string {
  if (event.kind === 'finding-raised') return event.text.split(/\.(?:\s|$)/, 1)[0] ?? event.text;
  if (event.kind === 'segment-started' || event.kind === 'arrest')
    return event.text.split(': ', 1)[0] ?? event.text;
  return event.text;
}
