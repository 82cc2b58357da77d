import type { Params } from '../contract/alarm.ts';
import type { FiringVerdict, SegmentResult } from '../contract/firing.ts';
import type {
  FigureCautionCode,
  NoClaimCode,
  PieceFigure,
  PieceReasonCode,
  PieceReasonWeight,
  RecordPiece,
} from '../contract/firing-record-piece.ts';
import type { Schedule } from '../contract/schedule.ts';
import type { PlanPiece } from '../planning/types.ts';

/** What the record is made from: curves gathered while the firing was judged, and what was planned. Pure. */

export interface Band {
  readonly low: number;
  readonly value: number;
  readonly high: number;
}

/** A piece as it is computed at one instant, °C. `inFurnace` is false once it was taken out. */
export interface BodyPoint {
  readonly atMs: number;
  readonly core: Band;
  readonly surface: Band;
  readonly inFurnace: boolean;
}

export interface BodyCurve {
  readonly pieceId: string;
  /** Pieces of the same section and steel take heat alike. */
  readonly likeness: string;
  readonly points: readonly BodyPoint[];
}

/** Coldest and hottest watched channel at one instant, °C. Absent while blind. */
export interface AirPoint {
  readonly atMs: number;
  readonly coldest: number;
  readonly hottest: number;
}

/** What one judging of a firing saw on the way. */
export interface FiringCurves {
  /** The slowest first, then the quickest, then others; taken at the same instants. Empty: no core could be computed. */
  readonly bodies: readonly BodyCurve[];
  readonly air: readonly AirPoint[];
  /** Every watched channel sits on the load: its reading is the piece's own. */
  readonly airIsLoad: boolean;
  /** A thermocouple on the load drew the computed core to itself. */
  readonly corrected: boolean;
}

/** A piece of the load with its steel as it is known when it is judged; null: no formula answers for it. */
export interface RecordedPiece {
  readonly pieceId: string;
  readonly mark: string;
  readonly plan: PlanPiece | null;
  readonly likeness: string;
}

export interface RecordQuestion {
  readonly status: 'running' | 'finished' | 'abandoned';
  readonly schedule: Pick<Schedule, 'segments' | 'basis'>;
  readonly segments: readonly SegmentResult[];
  readonly curves: FiringCurves;
  readonly pieces: readonly RecordedPiece[];
}

/** A reason before its words. */
export interface Reason {
  readonly code: PieceReasonCode;
  readonly weight: PieceReasonWeight;
  readonly params: Params;
}

/** A figure before its words. */
export type Figure = Omit<PieceFigure, 'text' | 'cautions' | 'noClaim'> & {
  readonly cautions: readonly FigureCautionCode[];
  readonly noClaim: NoClaimCode | null;
};

/** A piece judged, before its words. This is what is kept. */
export type JudgedPiece = Omit<RecordPiece, 'text' | 'reasons' | 'figures'> & {
  readonly verdict: FiringVerdict;
  readonly reasons: readonly Reason[];
  readonly figures: readonly Figure[];
};

export const good = (code: PieceReasonCode, params: Params = {}): Reason => ({
  code,
  weight: 'good',
  params,
});
export const note = (code: PieceReasonCode, params: Params = {}): Reason => ({
  code,
  weight: 'note',
  params,
});
export const doubt = (code: PieceReasonCode, params: Params = {}): Reason => ({
  code,
  weight: 'doubt',
  params,
});
export const wrong = (code: PieceReasonCode, params: Params = {}): Reason => ({
  code,
  weight: 'wrong',
  params,
});
