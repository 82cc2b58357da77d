import type { FiringEvent } from '../firing.ts';
import type { Schedule, Segment } from '../schedule.ts';
import type { EVENTS } from './en-events.ts';
import { fill } from './fill.ts';
import { numberOf } from './format.ts';
import type { Numbers } from './numbers.ts';
import type { Words } from './types.ts';

/** Which sentence of a language's table an event is, and with which numbers and names. */

export type EventKey = keyof typeof EVENTS;
export type EventTable = Readonly<Record<EventKey, string>>;

/** From this confidence on an arrest is clear. Ours. */
const CLEAR = 0.8;

/** The events in one language; `alarm` tells the findings. */
export function eventTeller(table: EventTable, say: Numbers, alarm: Words['alarm']): Words['event'] {
  return (event, { segments, displayUnit: unit }) => {
    const segment = event.segment === null ? undefined : segments[event.segment];
    const told = event.finding === null ? null : alarm(event.finding, event.params, unit);
    const sure = (numberOf(event.params, 'confidence') ?? 0) >= CLEAR;
    return fill(table[keyOf(event)], {
      name: nameOf(table, say, segment, unit),
      title: told?.title ?? '',
      message: told?.message ?? '',
      gap: say.elapsed(numberOf(event.params, 'seconds')),
      celsius: say.temperature(numberOf(event.params, 'celsius'), unit),
      sure: table[sure ? 'sure.well' : 'sure.fairly'],
    });
  };
}

function nameOf(
  table: EventTable,
  say: Numbers,
  segment: Segment | undefined,
  unit: Schedule['displayUnit'],
): string {
  if (segment === undefined) return table['name.firing'];
  const key: EventKey = segment.kind === 'cool' ? `name.${segment.medium}` : `name.${segment.kind}`;
  const time = segment.kind === 'soak' ? say.elapsed(segment.durationSeconds) : '';
  return fill(table[key], { target: say.temperature(segment.targetCelsius, unit), time });
}

function keyOf({ kind, params, finding }: Omit<FiringEvent, 'text'>): EventKey {
  switch (kind) {
    case 'segment-ended':
      return params.by === 'confirmed' || params.by === 'finished' ? `segment-ended.${params.by}` : kind;
    case 'arrest':
      return params.direction === 'cooling' ? 'arrest.cooling' : 'arrest.heating';
    case 'finding-raised':
    case 'finding-cleared':
      return finding === null ? `${kind}.unnamed` : kind;
    case 'segment-started':
    case 'blind':
    case 'seeing':
    case 'confirmed':
    case 'late-readings':
      return kind;
    default:
      throw kind satisfies never;
  }
}
