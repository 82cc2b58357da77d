import type { DisplayUnit } from '../../hub/contract/schedule.ts';
import { number, unitNamed } from './format.ts';
import { duration, timeOfDay } from './time.ts';

/** Words of the charts. Values are in the display unit already. */
export const chartWords = {
  now: 'now',
  noReading: 'no reading',
  planned: 'planned',
  tolerance: 'tolerance',
  closer: 'Closer',
  wider: 'Wider',
  earlier: 'Earlier',
  later: 'Later',
  whole: 'Whole firing',
  tools: 'Move over the chart',
  keys: 'Arrow keys move along the time, + and − zoom, 0 shows the whole.',
  sketch: 'Where the schedule names no rate, a usual one is drawn.',
  empty: 'Nothing to draw yet.',
  previewName: (name: string) => `Curve of the schedule ${name}`,
} as const;

export interface ReadoutPart {
  readonly label: string;
  /** Null: nothing was measured there. */
  readonly value: number | null;
}

/** The values at an instant, as one line of text. */
export function readoutWords(time: string, parts: readonly ReadoutPart[], unit: DisplayUnit): string {
  const label = unitNamed(unit).label;
  const values = parts.map(
    (part) =>
      `${part.label} ${part.value === null ? chartWords.noReading : `${number(part.value)} ${label}`}`,
  );
  return [time, ...values].join(' · ');
}

export interface SummaryFacts {
  readonly unit: DisplayUnit;
  readonly from: number;
  readonly to: number;
  readonly curves: readonly {
    readonly label: string;
    readonly lowest: number | null;
    readonly highest: number | null;
    readonly last: number | null;
  }[];
  readonly gaps: number;
  readonly marks: readonly string[];
}

/** What a chart shows, for people who do not see it. */
export function summaryWords(facts: SummaryFacts, timeZone?: string): string {
  const label = unitNamed(facts.unit).label;
  const span = `Chart from ${timeOfDay(facts.from, timeZone)} to ${timeOfDay(facts.to, timeZone)}, ${duration((facts.to - facts.from) / 1000)}.`;
  const curves = facts.curves.map(({ label: name, lowest, highest, last }) =>
    lowest === null || highest === null || last === null
      ? `${name}: ${chartWords.noReading}.`
      : `${name}: from ${number(lowest)} to ${number(highest)} ${label}, last ${number(last)} ${label}.`,
  );
  const gaps =
    facts.gaps === 0 ? [] : [`${facts.gaps} ${facts.gaps === 1 ? 'gap' : 'gaps'} without readings.`];
  const marks = facts.marks.length === 0 ? [] : [`Marked: ${facts.marks.join('; ')}.`];
  return [span, ...curves, ...gaps, ...marks].join(' ');
}
