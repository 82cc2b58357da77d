import type { SegmentResult } from '../../hub/contract/firing.ts';
import type { Segment } from '../../hub/contract/schedule.ts';
import { findGrade } from '../../hub/physics/steel/catalogue.ts';
import { steelOfGrade } from '../../hub/physics/steel/own-steel.ts';
import type { PlanPiece } from '../../hub/planning/types.ts';
import { judgePieces } from '../../hub/record/judge.ts';
import type { BodyPoint, FiringCurves, JudgedPiece, RecordQuestion } from '../../hub/record/types.ts';

/** Firings written down by hand: a curve, a schedule and what the judge of segments said. */

export const HOUR = 3_600_000;

/** A piece equally hot throughout; `band` on both sides. Instants in hours. */
export function points(curve: readonly (readonly [hours: number, celsius: number])[], band = 0): BodyPoint[] {
  return curve.map(([hours, value]) => {
    const at = { low: value - band, value, high: value + band };
    return { atMs: hours * HOUR, core: at, surface: at, inFurnace: true };
  });
}

export function planPiece(name: string, step: PlanPiece['step'], thicknessMm = 12): PlanPiece {
  const grade = findGrade(name);
  if (grade === null) throw new Error(`no grade ${name}`);
  const steel = { ...steelOfGrade(grade), quench: grade.quench, notRecommended: grade.notRecommended };
  return { id: 'p1', mark: 'K-1', steel, shape: 'plate', thicknessMm, step };
}

export function soak(celsius: number, seconds: number, tolerance = 10): Segment {
  return { kind: 'soak', targetCelsius: celsius, toleranceCelsius: tolerance, durationSeconds: seconds };
}

/** A segment that ran between two instants, in hours, and was met unless said otherwise. */
export function result(
  index: number,
  from: number,
  to: number,
  extra: Partial<SegmentResult> = {},
): SegmentResult {
  return {
    index,
    state: 'done',
    startedAt: from * HOUR,
    endedAt: to * HOUR,
    startCelsius: null,
    endCelsius: null,
    soakSeconds: 0,
    soakSecondsCore: null,
    soakSecondsAir: (to - from) * 3600,
    elapsedSeconds: (to - from) * 3600,
    blindSeconds: 0,
    peakCelsius: null,
    lowestCelsius: null,
    meanCelsius: null,
    overshootCelsius: null,
    secondsAboveTolerance: 0,
    meanRateCelsiusPerHour: null,
    steepestRateCelsiusPerHour: null,
    verdict: 'met',
    reasons: [],
    ...extra,
  };
}

export function reason(code: string, params: Record<string, number> = {}): SegmentResult['reasons'][number] {
  return { code, params, text: code };
}

const NO_CURVES: FiringCurves = { bodies: [], air: [], airIsLoad: false, corrected: false };

export function computed(curve: BodyPoint[], pieceId = 'p1'): FiringCurves {
  return { ...NO_CURVES, bodies: [{ pieceId, likeness: 'plate 12', points: curve }] };
}

interface Asked extends Partial<Omit<RecordQuestion, 'schedule' | 'pieces'>> {
  readonly plan: PlanPiece | null;
  readonly schedule: RecordQuestion['schedule'];
}

/** The one piece of a firing, judged. */
export function judged({ plan, ...asked }: Asked): JudgedPiece {
  const pieces = [{ pieceId: 'p1', mark: 'K-1', plan, likeness: 'plate 12' }];
  const question = { status: 'finished' as const, segments: [], curves: NO_CURVES, ...asked, pieces };
  const [piece] = judgePieces(question);
  if (piece === undefined) throw new Error('no piece was judged');
  return piece;
}

export function codes(piece: JudgedPiece): string[] {
  return piece.reasons.map(({ weight, code }) => `${weight}: ${code}`);
}

export function figure(piece: JudgedPiece, kind: string) {
  const found = piece.figures.find((each) => each.kind === kind);
  if (found === undefined) throw new Error(`no figure ${kind}`);
  return found;
}
