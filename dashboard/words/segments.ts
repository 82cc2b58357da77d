import type { CoolSegment, DisplayUnit, Segment } from '../../hub/contract/schedule.ts';
import { degreesDifference, rate, temperature } from './format.ts';
import { duration } from './time.ts';

/** Words of the segments of a schedule, wherever one is shown. */

export const KIND_WORDS: Readonly<Record<Segment['kind'], string>> = {
  ramp: 'Ramp',
  soak: 'Soak',
  cool: 'Cool',
};

export const MEDIUM_WORDS: Readonly<Record<CoolSegment['medium'], string>> = {
  'still-air': 'in still air',
  furnace: 'in the furnace',
  ash: 'buried in ash',
  vermiculite: 'buried in vermiculite',
  quench: 'quenched',
};

/** "Ramp to 860 °C" */
export function segmentName(segment: Pick<Segment, 'kind' | 'targetCelsius'>, unit: DisplayUnit): string {
  const target = temperature(segment.targetCelsius, unit);
  switch (segment.kind) {
    case 'ramp':
      return `Ramp to ${target}`;
    case 'soak':
      return `Soak at ${target}`;
    case 'cool':
      return `Cool to ${target}`;
    default:
      return segment.kind satisfies never;
  }
}

/** What else the plan says of a segment: "±10, 400 °C/h", "±5, 1 h 30 min", "buried in ash, at most 50 °C/h". */
export function segmentTerms(segment: Segment, unit: DisplayUnit): string {
  switch (segment.kind) {
    case 'ramp': {
      const pace =
        segment.rateCelsiusPerHour === null ? 'as fast as it goes' : rate(segment.rateCelsiusPerHour, unit);
      return `±${degreesDifference(segment.toleranceCelsius, unit)}, ${pace}`;
    }
    case 'soak':
      return `±${degreesDifference(segment.toleranceCelsius, unit)}, ${duration(segment.durationSeconds)}`;
    case 'cool':
      return [MEDIUM_WORDS[segment.medium], ...coolLimits(segment, unit)].join(', ');
    default:
      return segment satisfies never;
  }
}

function coolLimits(segment: CoolSegment, unit: DisplayUnit): string[] {
  const { maximumRateCelsiusPerHour: most, minimumRateCelsiusPerHour: least } = segment;
  return [
    ...(most === null ? [] : [`at most ${rate(most, unit)}`]),
    ...(least === null ? [] : [`at least ${rate(least, unit)}`]),
  ];
}
