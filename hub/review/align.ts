import type { ComparedBy, ComparedSegment } from '../contract/comparison.ts';
import type { SegmentResult } from '../contract/firing.ts';
import type { Segment } from '../contract/schedule.ts';

/**
 * One axis for many firings. Segments stand side by side in the order of the schedule, and each is its own zero:
 * a firing that heated slowly still begins its soak where the others begin theirs.
 */

/** A segment of one firing as it was: epoch milliseconds. Null: not begun, or not over. */
export type SegmentSpan = Pick<SegmentResult, 'startedAt' | 'endedAt'>;

export interface Axis {
  readonly by: ComparedBy;
  readonly x: readonly number[];
  readonly segments: readonly ComparedSegment[];
  /** One an entry of `x`: the segment, and seconds or share within it; null between segments. */
  readonly places: readonly (AxisPlace | null)[];
}

export interface AxisPlace {
  readonly segment: number;
  /** Seconds from the start of the segment, or its share 0 to 1, as the axis counts. */
  readonly within: number;
}

/** Room between segments, as a share of the whole axis, so that the jump back to zero is seen. */
const ROOM = 0.02;

/** How long a segment took, seconds; null when it has not begun or is not over. */
export function secondsOf({ startedAt, endedAt }: SegmentSpan): number | null {
  return startedAt === null || endedAt === null ? null : (endedAt - startedAt) / 1000;
}

/**
 * The common axis of firings of one schedule.
 *
 * @param segments the plan that all of them share
 * @param firings the spans of each firing, by index of the segment
 * @param points entries for each segment, 2 or more
 */
export function axisOf(
  segments: readonly Segment[],
  firings: readonly (readonly SegmentSpan[])[],
  by: ComparedBy,
  points: number,
): Axis {
  const longest = segments.map((_, index) => {
    const known = firings.map((spans) => spans[index]).map((span) => (span ? secondsOf(span) : null));
    return Math.max(0, ...known.filter((seconds) => seconds !== null));
  });
  // A segment that nobody has finished, or that took no time, has no width: it is not on the axis.
  const shown = segments.flatMap((segment, index) => ((longest[index] ?? 0) > 0 ? [{ segment, index }] : []));
  const widths = shown.map(({ index }) => (by === 'share' ? 1 : (longest[index] ?? 0)));
  const room = ROOM * widths.reduce((total, width) => total + width, 0);
  const axis: { x: number[]; places: (AxisPlace | null)[]; segments: ComparedSegment[] } = {
    x: [],
    places: [],
    segments: [],
  };
  let from = 0;
  shown.forEach(({ segment, index }, at) => {
    const width = widths[at] ?? 0;
    if (at > 0) {
      axis.x.push(from - room / 2);
      axis.places.push(null);
    }
    const first = axis.x.length;
    for (let i = 0; i < points; i += 1) {
      const within = (width * i) / (points - 1);
      axis.x.push(from + within);
      axis.places.push({ segment: index, within });
    }
    const seconds = longest[index] ?? 0;
    axis.segments.push({
      ...planned(segment, index),
      from,
      to: from + width,
      seconds,
      first,
      last: axis.x.length - 1,
    });
    from += width + room;
  });
  return { by, ...axis };
}

function planned(segment: Segment, index: number) {
  const { kind, targetCelsius } = segment;
  return { index, kind, targetCelsius, toleranceCelsius: kind === 'cool' ? null : segment.toleranceCelsius };
}

/** The instants (epoch ms) at which a firing stands at each entry of the axis; null where it does not. */
export function instantsOn(axis: Axis, spans: readonly SegmentSpan[]): (number | null)[] {
  return axis.places.map((place) => {
    const span = place === null ? undefined : spans[place.segment];
    const seconds = span === undefined ? null : secondsOf(span);
    if (place === null || seconds === null || span === undefined || span.startedAt === null) return null;
    const within = axis.by === 'share' ? place.within * seconds : place.within;
    return within > seconds ? null : span.startedAt + within * 1000;
  });
}
