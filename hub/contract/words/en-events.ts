import type { FiringEvent } from '../firing.ts';
import type { Schedule, Segment } from '../schedule.ts';
import { alarmWords } from './en-alarms.ts';
import { elapsed, numberOf, temperature } from './format.ts';

/** What happened, for the chart and the record. */

const MEDIA = {
  'still-air': 'in still air',
  furnace: 'in the furnace',
  ash: 'in ash',
  vermiculite: 'in vermiculite',
  quench: 'by quenching',
} as const;

function segmentName(segment: Segment, schedule: Pick<Schedule, 'displayUnit'>): string {
  const target = temperature(segment.targetCelsius, schedule.displayUnit);
  switch (segment.kind) {
    case 'ramp':
      return `Ramp to ${target}`;
    case 'soak':
      return `Soak at ${target} for ${elapsed(segment.durationSeconds)}`;
    case 'cool':
      return `Cool to ${target} ${MEDIA[segment.medium]}`;
    default:
      throw segment satisfies never;
  }
}

function endedBy(by: unknown): string {
  if (by === 'confirmed') return 'ended by the smith';
  return by === 'finished' ? 'cut short: the firing was finished' : 'ended';
}

/** One event as a sentence. */
export function eventWords(
  event: Omit<FiringEvent, 'text'>,
  schedule: Pick<Schedule, 'segments' | 'displayUnit'>,
): string {
  const segment = event.segment === null ? undefined : schedule.segments[event.segment];
  const name = segment === undefined ? 'Firing' : segmentName(segment, schedule);
  const alarm = event.finding === null ? null : alarmWords(event.finding, event.params, schedule.displayUnit);
  switch (event.kind) {
    case 'segment-started':
      return `${name}: started`;
    case 'segment-ended':
      return `${name}: ${endedBy(event.params.by)}`;
    case 'finding-raised':
      return alarm === null ? 'Something was noticed' : `${alarm.title}. ${alarm.message}`;
    case 'finding-cleared':
      return alarm === null ? 'Over' : `Over: ${alarm.title}`;
    case 'blind':
      return 'No fresh reading: nothing is counted';
    case 'seeing':
      return `Readings are back after ${elapsed(numberOf(event.params, 'seconds'))}`;
    case 'confirmed':
      return `${name}: confirmed by the smith`;
    case 'late-readings':
      return 'Readings arrived late; judged again with them';
    default:
      throw event.kind satisfies never;
  }
}
