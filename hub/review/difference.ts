import type { CurveDifference, FigureDrift, SegmentFigure, SegmentFigures } from '../contract/comparison.ts';
import { SEGMENT_FIGURES } from '../contract/comparison.ts';
import type { SegmentResult } from '../contract/firing.ts';
import type { Segment } from '../contract/schedule.ts';
import { drift } from '../physics/statistics/changes.ts';
import { meanOf } from '../physics/statistics/describe.ts';

type Values = readonly (number | null)[];
const LEAST_FOR_DRIFT = 3;

/** How `curve` lies to `other` over the entries `first` to `last`, °C; null when they are never both known. */
export function differenceOver(
  curve: Values,
  other: Values,
  first: number,
  last: number,
): CurveDifference | null {
  const found: number[] = [];
  for (let i = first; i <= last; i += 1) {
    const [one, two] = [curve[i] ?? null, other[i] ?? null];
    if (one !== null && two !== null) found.push(one - two);
  }
  if (found.length === 0) return null;
  const largestCelsius = found.reduce((most, one) => (Math.abs(one) > Math.abs(most) ? one : most));
  return { meanCelsius: meanOf(found), largestCelsius, points: found.length };
}

/** The figures by which a segment is compared; what does not belong to its kind is null. */
export function figuresOf(segment: Segment, result: SegmentResult): SegmentFigures {
  const isSoak = segment.kind === 'soak';
  return {
    soakMeanCelsius: isSoak ? result.meanCelsius : null,
    peakCelsius: result.peakCelsius,
    soakSeconds: isSoak ? result.soakSeconds : null,
    rateCelsiusPerHour: isSoak ? null : result.meanRateCelsiusPerHour,
  };
}

/** Each figure less that of the reference; null where one of the two is not known. */
export function figuresLess(own: SegmentFigures, reference: SegmentFigures | undefined): SegmentFigures {
  const less = (figure: SegmentFigure) => {
    const [one, two] = [own[figure], reference?.[figure] ?? null];
    return one === null || two === null ? null : one - two;
  };
  return {
    soakMeanCelsius: less('soakMeanCelsius'),
    peakCelsius: less('peakCelsius'),
    soakSeconds: less('soakSeconds'),
    rateCelsiusPerHour: less('rateCelsiusPerHour'),
  };
}

/** Drift of every figure of one segment over firings in the order in which they began, three or more. */
export function driftsOf(segment: number, firings: readonly SegmentFigures[]): FigureDrift[] {
  return SEGMENT_FIGURES.flatMap((figure) => {
    const known = firings
      .map((figures, at) => ({ at, value: figures[figure] }))
      .flatMap(({ at, value }) => (value === null ? [] : [{ at, value }]));
    if (known.length < LEAST_FOR_DRIFT) return [];
    const { value, low, high, sure } = drift(
      known.map(({ at }) => at),
      known.map((one) => one.value),
    );
    return [{ segment, figure, firings: known.length, perFiring: value, low, high, sure }];
  });
}
