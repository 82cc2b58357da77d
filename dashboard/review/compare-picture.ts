import type { ComparedSegment, FiringComparison } from '../../hub/contract/comparison.ts';
import type { DisplayUnit } from '../../hub/contract/schedule.ts';
import { fromBase } from '../../hub/contract/units.ts';
import type { PlotLine, PlotPicture } from '../heat/plot-types.ts';
import { number, temperature, unitNamed } from '../words/format.ts';
import { compareWords } from '../words/review.ts';
import { KIND_WORDS, segmentName } from '../words/segments.ts';
import { duration } from '../words/time.ts';

/** The overlay as a picture, and what it says at a place. Pure. */

/** A segment that takes less than this share of the axis is not named on it. */
const NARROW = 0.12;

/** The segment that a comparison is about when none is chosen: the hottest soak, else the first. */
export function mainSegment(segments: readonly ComparedSegment[]): ComparedSegment | null {
  const soaks = segments.filter(({ kind }) => kind === 'soak');
  const hottest = soaks.reduce<ComparedSegment | null>(
    (best, one) => (best === null || one.targetCelsius >= best.targetCelsius ? one : best),
    null,
  );
  return hottest ?? segments[0] ?? null;
}

/** The firing whose plan is drawn: the reference, else the first. */
export function planOf({ firings }: FiringComparison) {
  return firings.find(({ isReference }) => isReference) ?? firings[0] ?? null;
}

const scaled = (values: readonly (number | null)[], unit: DisplayUnit) =>
  values.map((celsius) => (celsius === null ? null : fromBase(celsius, unitNamed(unit))));

/** Envelope under everything, then plan, firings, and the reference on top. `shown` null: every segment. */
export function comparePicture(
  comparison: FiringComparison,
  unit: DisplayUnit,
  shown: ComparedSegment | null,
): PlotPicture {
  const { x, segments, firings, envelope } = comparison;
  const plan = planOf(comparison);
  const line = (look: PlotLine['look'], values: readonly (number | null)[]): PlotLine => ({
    look,
    words: '',
    y: scaled(values, unit),
  });
  const lines = [
    line('edge', envelope.highest),
    line('edge', envelope.lowest),
    line('furnace', plan?.planCelsius ?? x.map(() => null)),
    ...firings.filter(({ isReference }) => !isReference).map(({ celsius }) => line('other', celsius)),
    ...firings.filter(({ isReference }) => isReference).map(({ celsius }) => line('surface', celsius)),
  ];
  const [first, last] = [shown?.first ?? 0, shown?.last ?? x.length - 1];
  const width = (x[last] ?? 1) - (x[first] ?? 0);
  const edge = width * 0.01;
  return {
    x,
    lines,
    fills: [[0, 1]],
    xScale: { from: (x[first] ?? 0) - edge, to: (x[last] ?? 1) + edge },
    yScale: valueScale(lines, first, last),
    ticks: (shown === null ? segments : [shown]).flatMap((segment) => ticksOf(segment, shown === null)),
    tick: (at) => tickWords(comparison, at),
    marks: (shown === null ? segments : []).map((segment) => ({
      x: segment.from,
      // Words of a narrow segment would stand on those of the next.
      words: segment.to - segment.from > width * NARROW ? KIND_WORDS[segment.kind] : '',
    })),
  };
}

function valueScale(lines: readonly PlotLine[], first: number, last: number) {
  const known = lines.flatMap(({ y }) => y.slice(first, last + 1)).filter((value) => value !== null);
  if (known.length === 0) return { from: 0, to: 1 };
  const [low, high] = [Math.min(...known), Math.max(...known)];
  const room = Math.max(2, (high - low) * 0.08);
  return { from: low - room, to: high + room };
}

function ticksOf({ from, to }: ComparedSegment, narrow: boolean): number[] {
  const parts = narrow ? 1 : 4;
  // The end of one segment would stand on the beginning of the next: only the last place of a lone one is said.
  return Array.from({ length: narrow ? 1 : parts + 1 }, (_, i) => from + ((to - from) * i) / parts);
}

function segmentAt({ segments }: FiringComparison, at: number): ComparedSegment | null {
  return segments.find(({ from, to }) => at >= from && at <= to) ?? null;
}

/** How far into its segment a place is: a time, or a share of it. */
function placeWords({ by }: FiringComparison, segment: ComparedSegment, at: number): string {
  const within = at - segment.from;
  return by === 'share' ? `${number(100 * within)} %` : duration(Math.round(within));
}

function tickWords(comparison: FiringComparison, at: number): string {
  const segment = segmentAt(comparison, at);
  return segment === null ? '' : placeWords(comparison, segment, at);
}

/** The values at an entry of the axis as one line; empty between segments. */
export function compareReadout(comparison: FiringComparison, unit: DisplayUnit, index: number): string {
  const { x, firings, envelope } = comparison;
  const at = x[index] ?? 0;
  const segment = segmentAt(comparison, at);
  if (segment === null) return '';
  const shown = (celsius: number | null | undefined) =>
    celsius === null || celsius === undefined ? compareWords.unknown : temperature(celsius, unit);
  const reference = firings.find(({ isReference }) => isReference)?.celsius[index];
  return [
    compareWords.within(segmentName(segment, unit), placeWords(comparison, segment, at)),
    ...(reference === undefined ? [] : [compareWords.readReference(shown(reference))]),
    compareWords.readMedian(shown(envelope.median[index]), envelope.count[index] ?? 0),
    compareWords.readSpread(shown(envelope.lowest[index]), shown(envelope.highest[index])),
  ].join(' · ');
}
