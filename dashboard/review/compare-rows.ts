import type {
  ComparedFiring,
  ComparedFiringSegment,
  CurveDifference,
  FigureDrift,
  FiringComparison,
  SegmentFigure,
} from '../../hub/contract/comparison.ts';
import type { DisplayUnit } from '../../hub/contract/schedule.ts';
import { differenceFromBase } from '../../hub/contract/units.ts';
import { number, rate, temperature, unitNamed } from '../words/format.ts';
import { compareWords, FIGURE_WORDS } from '../words/review.ts';
import { duration } from '../words/time.ts';

/** The table of differences and the drifts, as words. Pure. */

export interface CompareRow {
  readonly id: string;
  readonly title: string;
  readonly startedAt: number;
  readonly isReference: boolean;
  readonly toPlan: string;
  readonly toReference: string;
  readonly soakMean: string;
  readonly peak: string;
  readonly soakTime: string;
  readonly rate: string;
}

/** A difference of temperatures with its sign: "+4.2 °C". One decimal: a thermocouple says no more. */
export function signedCelsius(celsius: number, unit: DisplayUnit): string {
  const shown = unitNamed(unit);
  return `${signed(differenceFromBase(celsius, shown), 1)} ${shown.label}`;
}

function signed(value: number, decimals: number): string {
  const text = number(value, decimals);
  return Number(value.toFixed(decimals)) > 0 ? `+${text}` : text;
}

function signedDuration(seconds: number): string {
  const sign = seconds < 0 ? '−' : '+';
  return Math.round(seconds) === 0 ? duration(0) : `${sign}${duration(Math.abs(seconds))}`;
}

function differenceWords(difference: CurveDifference | null, unit: DisplayUnit): string {
  if (difference === null) return compareWords.unknown;
  return compareWords.beside(
    signedCelsius(difference.meanCelsius, unit),
    signedCelsius(difference.largestCelsius, unit),
  );
}

function valueWords(figure: SegmentFigure, value: number, unit: DisplayUnit): string {
  switch (figure) {
    case 'soakMeanCelsius':
    case 'peakCelsius':
      return temperature(value, unit);
    case 'soakSeconds':
      return duration(value);
    case 'rateCelsiusPerHour':
      return rate(value, unit);
    default:
      return figure satisfies never;
  }
}

function lessWords(figure: SegmentFigure, value: number, unit: DisplayUnit): string {
  switch (figure) {
    case 'soakMeanCelsius':
    case 'peakCelsius':
      return signedCelsius(value, unit);
    case 'soakSeconds':
      return signedDuration(value);
    case 'rateCelsiusPerHour':
      return `${value > 0 ? '+' : ''}${rate(value, unit)}`;
    default:
      return figure satisfies never;
  }
}

/** One row a firing, for one segment. */
export function compareRows(comparison: FiringComparison, segment: number, unit: DisplayUnit): CompareRow[] {
  return comparison.firings.map((one) => {
    const found = one.segments.find(({ index }) => index === segment);
    const figure = (name: SegmentFigure) => figureWords(one, found, name, unit);
    return {
      ...{ id: one.firing.id, startedAt: one.firing.startedAt, isReference: one.isReference },
      title: one.firing.title || one.firing.scheduleName,
      toPlan: differenceWords(found?.toPlan ?? null, unit),
      toReference: one.isReference
        ? compareWords.reference
        : differenceWords(found?.toReference ?? null, unit),
      ...{ soakMean: figure('soakMeanCelsius'), peak: figure('peakCelsius') },
      ...{ soakTime: figure('soakSeconds'), rate: figure('rateCelsiusPerHour') },
    };
  });
}

function figureWords(
  { isReference }: ComparedFiring,
  segment: ComparedFiringSegment | undefined,
  figure: SegmentFigure,
  unit: DisplayUnit,
): string {
  const value = segment?.figures[figure] ?? null;
  if (value === null) return compareWords.unknown;
  const less = segment?.figuresToReference[figure] ?? null;
  const own = valueWords(figure, value, unit);
  return less === null || isReference ? own : compareWords.beside(own, lessWords(figure, less, unit));
}

/** The drifts of a segment that chance does not explain. */
export function driftWords(drifts: readonly FigureDrift[], segment: number, unit: DisplayUnit): string[] {
  return drifts
    .filter((one) => one.segment === segment && one.sure)
    .map(({ figure, perFiring, low, high, firings }) => {
      const band = compareWords.readSpread(lessWords(figure, low, unit), lessWords(figure, high, unit));
      return compareWords.drift(FIGURE_WORDS[figure], lessWords(figure, perFiring, unit), band, firings);
    });
}
