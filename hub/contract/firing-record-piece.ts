import { z } from 'zod';
import { Params } from './alarm.ts';
import { FiringVerdict } from './firing.ts';
import { EpochMs } from './reading.ts';
import { Id } from './shop.ts';

/** What a firing did to each piece of its load: verdict with reasons, and figures each with its limits. */

export const PIECE_REASONS = [
  'not-judged-yet',
  'abandoned',
  'segment-not-met',
  'segment-doubtful',
  'overshoot-not-in-piece',
  'core-soaked',
  'core-short',
  'core-not-reached',
  'core-unsure',
  'core-of-slower',
  'probe-on-load',
  'judged-by-air',
  'nothing-measured',
  'step-not-said',
  'steel-not-known',
  'no-window-known',
  'step-not-recommended',
  'in-window',
  'too-cold-for-step',
  'harden-below-window',
  'normalise-below-upper-critical',
  'too-hot-for-steel',
  'harden-above-window',
  'above-ac1',
  'section-does-not-harden',
  'temper-as-wanted',
  'temper-too-hard',
  'temper-too-soft',
  'temper-unsure',
  'temper-not-known',
  'cooling-met',
  'cooling-too-fast',
  'cooling-not-followed',
  'cooling-computed',
] as const;
export const PieceReasonCode = z.enum(PIECE_REASONS);
export type PieceReasonCode = z.infer<typeof PieceReasonCode>;

/** `wrong` makes a piece not met, `doubt` met with doubts; `good` and `note` change nothing. */
export const PieceReasonWeight = z.enum(['good', 'note', 'doubt', 'wrong']);
export type PieceReasonWeight = z.infer<typeof PieceReasonWeight>;

const PieceReason = z.object({
  code: PieceReasonCode,
  weight: PieceReasonWeight,
  params: Params,
  text: z.string(),
});

export const PIECE_FIGURES = [
  'decarburised-depth',
  'scale',
  'metal-loss',
  'grain',
  'temper-parameter',
  'temper-hours',
  'temper-hardness',
] as const;
export const PieceFigureKind = z.enum(PIECE_FIGURES);
export type PieceFigureKind = z.infer<typeof PieceFigureKind>;

export const FIGURE_CAUTIONS = [
  'above-range',
  'ferrite-rim',
  'long-gap',
  'uncounted-below-700',
  'air-no-flame',
  'coarsening',
  'trend-only',
  'hardened-through',
  'below-scale',
] as const;
export type FigureCautionCode = (typeof FIGURE_CAUTIONS)[number];

export const NO_CLAIMS = [
  'never-austenite',
  'never-hot-enough',
  'steel-not-covered',
  'too-few-points',
] as const;
export type NoClaimCode = (typeof NO_CLAIMS)[number];

const Said = z.object({ code: z.string().describe('Stable, kebab-case'), text: z.string() });

/** One figure of a piece. Where nothing is claimed, all three numbers are null and `noClaim` says why. */
export const PieceFigure = z
  .object({
    kind: PieceFigureKind,
    nature: z
      .enum(['upper-bound', 'estimate', 'trend'])
      .describe('upper-bound: the true value is less; trend: for comparing firings, not for a drawing'),
    low: z.number().nullable(),
    value: z.number().nullable(),
    high: z.number().nullable(),
    unit: z.enum(['mm', 'um', 'h', 'HRC', 'K']).describe('K: of the Hollomon-Jaffe parameter with hours'),
    cautions: z.array(Said),
    noClaim: Said.nullable(),
    source: z.string(),
    text: z.string().describe('The figure in words, with its band'),
  })
  .meta({ id: 'PieceFigure' });
export type PieceFigure = z.infer<typeof PieceFigure>;

const Band = z.object({ low: z.number(), value: z.number(), high: z.number() });

/** What the temperatures of a piece were taken from. */
export const PieceBasis = z.enum(['core', 'probe-on-load', 'air']);
export type PieceBasis = z.infer<typeof PieceBasis>;

export const RecordPiece = z
  .object({
    pieceId: Id,
    mark: z.string(),
    verdict: FiringVerdict,
    text: z.string().describe('The verdict in words, with the reason that made it'),
    reasons: z.array(PieceReason).describe('The gravest first'),
    basis: PieceBasis.describe('core: computed from the readings; air: no core could be computed'),
    coreOf: Id.nullable().describe(
      'The piece whose computed core stands for this one; null: its own, or none',
    ),
    segment: z.int().nullable().describe('The soak that this heat was for: the hottest; null: none'),
    heldCelsius: z.number().nullable().describe('Mean while it was inside the tolerance of that soak'),
    soakSeconds: z.number().nullable().describe('Time that it was inside that tolerance'),
    airSoakSeconds: z.number().nullable().describe('The same by the coldest watched channel'),
    peakCelsius: Band.nullable().describe(
      'Highest temperature of its middle, with the assumptions on both sides',
    ),
    surfacePeakCelsius: z.number().nullable(),
    window: z
      .object({
        lowCelsius: z.number(),
        highCelsius: z.number(),
        uncertaintyCelsius: z.number(),
        source: z.string(),
      })
      .nullable()
      .describe('Recommended for this step of this steel; null: none is known'),
    secondsAboveWindow: z
      .number()
      .nullable()
      .describe('Time of its surface above that window and its uncertainty'),
    coolingCelsiusPerHour: z
      .number()
      .nullable()
      .describe(
        'Mean over the range that the anneal has a rule for; null: no rule, or not followed that far',
      ),
    figures: z.array(PieceFigure),
    curve: z
      .array(z.object({ at: EpochMs, celsius: z.number(), low: z.number(), high: z.number() }))
      .describe('Temperature of its middle, thinned for a chart; the band is what furnace and start may be'),
  })
  .meta({ id: 'RecordPiece' });
export type RecordPiece = z.infer<typeof RecordPiece>;
