import type { PieceBasis } from '../contract/firing-record-piece.ts';
import type { CurvePoint } from '../physics/time-at-temperature/curve.ts';
import type { AirPoint, BodyCurve, BodyPoint, RecordedPiece, RecordQuestion } from './types.ts';

/** Which curve speaks for a piece: its own computed core, that of a like or slower piece, or what the probes said. */
export interface PieceHeat {
  readonly basis: PieceBasis;
  /** Whose core it is, when it is another piece's. */
  readonly coreOf: string | null;
  /** True: the piece lies between the slowest and the quickest, so its core is at least the slowest one's. */
  readonly between: boolean;
  readonly points: readonly BodyPoint[];
}

export type Side = 'low' | 'value' | 'high';

/** The heat that a piece is judged by. Without a computed core it is what was measured around it. */
export function heatOf({ curves }: Pick<RecordQuestion, 'curves'>, piece: RecordedPiece): PieceHeat {
  const [slowest, second] = curves.bodies;
  if (slowest === undefined || slowest.points.length < 2) {
    const basis = curves.airIsLoad ? 'probe-on-load' : 'air';
    return { basis, coreOf: null, between: false, points: curves.air.map(asPoint) };
  }
  const own = curves.bodies.find(({ pieceId }) => pieceId === piece.pieceId);
  if (own !== undefined) return { basis: 'core', coreOf: null, between: false, points: own.points };
  const like = curves.bodies.find((body) => body.likeness === piece.likeness);
  if (like !== undefined) {
    return { basis: 'core', coreOf: like.pieceId, between: false, points: like.points };
  }
  return {
    basis: 'core',
    coreOf: slowest.pieceId,
    between: true,
    points: spanned(slowest, second ?? slowest),
  };
}

function asPoint({ atMs, coldest, hottest }: AirPoint): BodyPoint {
  const band = { low: coldest, value: coldest, high: hottest };
  return { atMs, core: band, surface: band, inFurnace: true };
}

/** Not slower than the slowest, not quicker than the quickest: both curves were taken at the same instants. */
function spanned(slowest: BodyCurve, quickest: BodyCurve): BodyPoint[] {
  return slowest.points.map((slow, i) => {
    const quick = quickest.points[i] ?? slow;
    const span = (a: BodyPoint['core'], b: BodyPoint['core']) => ({
      low: Math.min(a.low, b.low),
      value: a.value,
      high: Math.max(a.high, b.high),
    });
    return { ...slow, core: span(slow.core, quick.core), surface: span(slow.surface, quick.surface) };
  });
}

/** The middle or the skin of a piece over time, by one of the assumptions. */
export function curveOf(
  points: readonly BodyPoint[],
  part: 'core' | 'surface',
  side: Side,
): readonly CurvePoint[] {
  return points.map((point) => ({ atMs: point.atMs, celsius: point[part][side] }));
}

/** The part of a curve within [fromMs, toMs], its ends found on the straight line between points. */
export function clipped(curve: readonly CurvePoint[], fromMs: number, toMs: number): CurvePoint[] {
  const inside = curve.filter(({ atMs }) => atMs >= fromMs && atMs <= toMs);
  const first = at(curve, fromMs);
  const last = at(curve, toMs);
  return [
    ...(first === null || inside[0]?.atMs === fromMs ? [] : [first]),
    ...inside,
    ...(last === null || inside.at(-1)?.atMs === toMs || toMs === fromMs ? [] : [last]),
  ];
}

function at(curve: readonly CurvePoint[], atMs: number): CurvePoint | null {
  const next = curve.findIndex((point) => point.atMs >= atMs);
  const after = curve[next];
  const before = curve[next - 1];
  if (after === undefined || before === undefined) return null;
  const share = (atMs - before.atMs) / (after.atMs - before.atMs);
  return { atMs, celsius: before.celsius + share * (after.celsius - before.celsius) };
}
