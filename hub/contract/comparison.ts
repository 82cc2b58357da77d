import { z } from 'zod';
import { FiringSummary } from './firing.ts';
import { Id } from './shop.ts';

/** Firings laid over each other, segment by segment: what `GET /api/v1/firings/compare` answers. */

/** More curves than this nobody tells apart. */
export const MOST_COMPARED = 12;

/** Within a segment, time counts in seconds from its start, or as a share of its length. */
export const ComparedBy = z.enum(['seconds', 'share']).meta({ id: 'ComparedBy' });
export type ComparedBy = z.infer<typeof ComparedBy>;

/** A stretch of the common axis that belongs to one segment. Each segment begins at its own zero. */
export const ComparedSegment = z
  .object({
    index: z.int(),
    kind: z.enum(['ramp', 'soak', 'cool']),
    targetCelsius: z.number(),
    toleranceCelsius: z.number().nullable(),
    from: z.number().describe('Where it begins on the common axis'),
    to: z.number(),
    seconds: z.number().describe('The longest that this segment took in any of the firings, seconds'),
    first: z.int().describe('First and last entry of `x` that belong to it'),
    last: z.int(),
  })
  .meta({ id: 'ComparedSegment' });
export type ComparedSegment = z.infer<typeof ComparedSegment>;

/** What a firing did in a segment; null: not known or not applicable. */
const figures = {
  soakMeanCelsius: z.number().nullable().describe('Mean of the coldest watched channel, soaks only'),
  peakCelsius: z.number().nullable(),
  soakSeconds: z.number().nullable().describe('Soak clock, soaks only'),
  rateCelsiusPerHour: z.number().nullable().describe('Mean rate, ramps and coolings only'),
};
export const SEGMENT_FIGURES = [
  'soakMeanCelsius',
  'peakCelsius',
  'soakSeconds',
  'rateCelsiusPerHour',
] as const;
export type SegmentFigure = (typeof SEGMENT_FIGURES)[number];
export const SegmentFigures = z.object(figures).meta({ id: 'SegmentFigures' });
export type SegmentFigures = z.infer<typeof SegmentFigures>;

/** How a curve lies to another over one segment, °C; null: no instant at which both are known. */
export const CurveDifference = z
  .object({
    meanCelsius: z.number().describe('Mean difference, signed'),
    largestCelsius: z.number().describe('The difference that is largest in size, signed'),
    points: z.int().describe('Points of the axis at which both are known'),
  })
  .meta({ id: 'CurveDifference' });
export type CurveDifference = z.infer<typeof CurveDifference>;

export const ComparedFiringSegment = z
  .object({
    index: z.int(),
    figures: SegmentFigures,
    toPlan: CurveDifference.nullable(),
    toReference: CurveDifference.nullable(),
    figuresToReference: SegmentFigures.describe('Each figure less that of the reference'),
  })
  .meta({ id: 'ComparedFiringSegment' });
export type ComparedFiringSegment = z.infer<typeof ComparedFiringSegment>;

const Curve = z.array(z.number().nullable()).describe('One entry for each of `x`, °C; null: not known');

export const ComparedFiring = z
  .object({
    firing: FiringSummary,
    isReference: z.boolean(),
    celsius: Curve.describe('The coldest watched channel; null in a gap or beyond the end of its segment'),
    planCelsius: Curve.describe('Its own plan as it was followed'),
    segments: z.array(ComparedFiringSegment),
    thinned: z.boolean().describe('Readings were left out: each slice keeps its lowest and highest'),
  })
  .meta({ id: 'ComparedFiring' });
export type ComparedFiring = z.infer<typeof ComparedFiring>;

/** What the chosen firings did together, entry by entry. `count` says of how many. */
export const Envelope = z
  .object({
    size: z.int().describe('How many firings are in the set'),
    count: z.array(z.int()).describe('How many of them are known at each entry'),
    lowest: Curve,
    lowerQuartile: Curve,
    median: Curve,
    upperQuartile: Curve,
    highest: Curve,
  })
  .meta({ id: 'Envelope' });
export type Envelope = z.infer<typeof Envelope>;

/** Straight drift of one figure over the firings in the order in which they began. */
export const FigureDrift = z
  .object({
    segment: z.int(),
    figure: z.enum(SEGMENT_FIGURES),
    firings: z.int(),
    perFiring: z.number().describe('Change from one firing to the next'),
    low: z.number(),
    high: z.number(),
    sure: z.boolean().describe('The 95 % band leaves zero out'),
  })
  .meta({ id: 'FigureDrift' });
export type FigureDrift = z.infer<typeof FigureDrift>;

/** Why a firing that was asked for is not in the overlay. */
export const LeftOut = z.object({
  firingId: Id,
  reason: z
    .enum(['other-segments', 'no-segment-over'])
    .describe('Its schedule has other kinds of segments; or none of its segments is over yet'),
});
export type LeftOut = z.infer<typeof LeftOut>;

export const FiringComparison = z
  .object({
    by: ComparedBy,
    x: z.array(z.number()).describe('The common axis, rising strictly: segments side by side'),
    segments: z.array(ComparedSegment),
    referenceId: Id.nullable(),
    firings: z.array(ComparedFiring).describe('In the order in which they began'),
    envelope: Envelope,
    drifts: z.array(FigureDrift).describe('Figures known of three firings or more'),
    leftOut: z.array(LeftOut),
  })
  .meta({ id: 'FiringComparison' });
export type FiringComparison = z.infer<typeof FiringComparison>;

export const ReferenceDraft = z.strictObject({ firingId: Id }).meta({ id: 'ReferenceDraft' });
/** The firing that a schedule is held against. */
export const ScheduleReference = z
  .object({ scheduleId: Id, firingId: Id, chosenAt: z.int() })
  .meta({ id: 'ScheduleReference' });
export type ScheduleReference = z.infer<typeof ScheduleReference>;
