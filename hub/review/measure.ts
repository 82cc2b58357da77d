import type { Measure } from '../contract/batch-statistics.ts';
import type { SegmentResult } from '../contract/firing.ts';
import type { Segment, SoakSegment } from '../contract/schedule.ts';
import type { ToleranceLimits } from '../physics/statistics/capability.ts';

/** Which number of a firing is charted, and which tolerance the schedule sets it. */

export interface IndexedSoak {
  readonly index: number;
  readonly soak: SoakSegment;
}

/** The soaks of a schedule. */
export function soaksOf(segments: readonly Segment[]): IndexedSoak[] {
  return segments.flatMap((segment, index) => (segment.kind === 'soak' ? [{ index, soak: segment }] : []));
}

/** The soak that a schedule is about, when nobody says which: the hottest, and of those the last. */
export function mainSoak(segments: readonly Segment[]): IndexedSoak | null {
  return soaksOf(segments).reduce<IndexedSoak | null>(
    (best, one) => (best === null || one.soak.targetCelsius >= best.soak.targetCelsius ? one : best),
    null,
  );
}

type Figures = Pick<SegmentResult, 'meanCelsius' | 'peakCelsius' | 'soakSeconds' | 'state'>;

/** The charted number of a soak: °C, or seconds of the soak clock; null when it is not over or not known. */
export function measured(measure: Exclude<Measure, 'hardness'>, soak: Figures): number | null {
  if (soak.state !== 'done') return null;
  switch (measure) {
    case 'soak-mean':
      return soak.meanCelsius;
    case 'peak':
      return soak.peakCelsius;
    case 'soak-time':
      return soak.soakSeconds;
    default:
      throw measure satisfies never;
  }
}

/** What the schedule allows: a band for the mean, a ceiling for the peak, a least time. Null: it says nothing. */
export function toleranceOf(measure: Measure, soak: SoakSegment | null): ToleranceLimits | null {
  if (soak === null) return null;
  const { targetCelsius, toleranceCelsius, durationSeconds } = soak;
  switch (measure) {
    case 'soak-mean':
      return { lower: targetCelsius - toleranceCelsius, upper: targetCelsius + toleranceCelsius };
    case 'peak':
      return { lower: null, upper: targetCelsius + toleranceCelsius };
    case 'soak-time':
      return { lower: durationSeconds, upper: null };
    case 'hardness':
      return null;
    default:
      throw measure satisfies never;
  }
}
