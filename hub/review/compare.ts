import type {
  ComparedBy,
  ComparedFiring,
  ComparedFiringSegment,
  FiringComparison,
  LeftOut,
} from '../contract/comparison.ts';
import type { FiringDetail, FiringSummary } from '../contract/firing.ts';
import type { Segment } from '../contract/schedule.ts';
import { type Axis, axisOf, instantsOn, secondsOf } from './align.ts';
import { differenceOver, driftsOf, figuresLess, figuresOf } from './difference.ts';
import { envelopeOf } from './envelope.ts';
import { type Curve, coldest, resample } from './resample.ts';

/** A firing with its curves, one a watched channel. */
export interface ReviewedFiring {
  readonly summary: FiringSummary;
  readonly detail: FiringDetail;
  readonly curves: readonly (Curve & { readonly thinned: boolean })[];
}

export interface CompareQuestion {
  /** The reference, where it is among the firings, is the base whose segments count; else the first is. */
  readonly firings: readonly ReviewedFiring[];
  readonly referenceId: string | null;
  readonly by: ComparedBy;
  /** Entries of the axis for each segment. */
  readonly points: number;
}

/** Lays firings over each other. Pure: the same firings always give the same answer. */
export function compareFirings({ firings, referenceId, by, points }: CompareQuestion): FiringComparison {
  const sorted = [...firings].sort(
    (a, b) => a.detail.startedAt - b.detail.startedAt || a.detail.id.localeCompare(b.detail.id),
  );
  const base = sorted.find(({ detail }) => detail.id === referenceId) ?? sorted[0];
  const segments = base?.detail.schedule.segments ?? [];
  const leftOut = sorted.flatMap((one) => reasonToLeaveOut(one, segments) ?? []);
  const kept = sorted.filter(({ detail }) => leftOut.every(({ firingId }) => firingId !== detail.id));
  const spans = kept.map(({ detail }) => detail.judgement.segments);
  const axis = axisOf(segments, spans, by, points);
  const drawn = kept.map((one) => draw(one, axis));
  const reference = drawn.find(({ firing }) => firing.id === referenceId);
  const held = drawn.map((one) => holdAgainst(one, reference, axis));
  return {
    by,
    x: [...axis.x],
    segments: [...axis.segments],
    referenceId: reference?.firing.id ?? null,
    firings: held,
    envelope: envelopeOf(held.map(({ celsius }) => celsius)),
    drifts: axis.segments.flatMap(({ index }) =>
      driftsOf(
        index,
        held.flatMap((one) => one.segments.find((segment) => segment.index === index)?.figures ?? []),
      ),
    ),
    leftOut,
  };
}

const kindsOf = (segments: readonly Segment[]): string => segments.map(({ kind }) => kind).join();

function reasonToLeaveOut({ detail }: ReviewedFiring, segments: readonly Segment[]): LeftOut | null {
  if (kindsOf(detail.schedule.segments) !== kindsOf(segments)) {
    return { firingId: detail.id, reason: 'other-segments' };
  }
  const over = detail.judgement.segments.some((span) => secondsOf(span) !== null);
  return over ? null : { firingId: detail.id, reason: 'no-segment-over' };
}

function draw({ summary, detail, curves }: ReviewedFiring, axis: Axis): ComparedFiring {
  const results = detail.judgement.segments;
  const instants = instantsOn(axis, results);
  const planned = detail.judgement.plan.map(({ at, celsius }) => ({
    at,
    value: celsius,
    quality: 'good' as const,
  }));
  const celsius = coldest(curves.map((curve) => resample(curve, instants)));
  const planCelsius = resample({ readings: planned, gaps: [] }, instants);
  return {
    firing: summary,
    isReference: false,
    celsius,
    planCelsius,
    thinned: curves.some(({ thinned }) => thinned),
    segments: axis.segments.flatMap(({ index, first, last }): ComparedFiringSegment[] => {
      const [segment, result] = [detail.schedule.segments[index], results[index]];
      if (segment === undefined || result === undefined || result.endedAt === null) return [];
      const figures = figuresOf(segment, result);
      const toPlan = differenceOver(celsius, planCelsius, first, last);
      return [
        { index, figures, toPlan, toReference: null, figuresToReference: figuresLess(figures, undefined) },
      ];
    }),
  };
}

function holdAgainst(one: ComparedFiring, reference: ComparedFiring | undefined, axis: Axis): ComparedFiring {
  if (reference === undefined) return one;
  return {
    ...one,
    isReference: one.firing.id === reference.firing.id,
    segments: one.segments.map((segment) => {
      const place = axis.segments.find(({ index }) => index === segment.index);
      const other = reference.segments.find(({ index }) => index === segment.index);
      return {
        ...segment,
        toReference: place ? differenceOver(one.celsius, reference.celsius, place.first, place.last) : null,
        figuresToReference: figuresLess(segment.figures, other?.figures),
      };
    }),
  };
}
