/**
 * The shape of a piece, cut into control volumes around nodes that run from its
 * middle to its skin. Nodes sit on the middle and on the surface themselves, so
 * core and surface are computed and not extrapolated.
 */
import { PhysicsError, requireRange } from '../errors.ts';
import type { Chain } from './chain.ts';
import type { Material } from './material.ts';

/**
 * - `plate`: heated from both faces; section = thickness
 * - `bar`: long round bar; section = diameter. A square bar heats like a round
 *   bar of the same width (equal volume over surface)
 * - `sphere`: section = diameter; also the nearest to a short lump or cube
 */
export type Shape = 'plate' | 'bar' | 'sphere';

export interface Piece {
  readonly shape: Shape;
  /** Thickness or diameter, m: 0.0002 to 1. */
  readonly sectionMetres: number;
  readonly material: Material;
  /** Control volumes from middle to skin. Default 20, 2 to 400. */
  readonly intervals?: number;
}

/** A piece made ready for stepping. */
export interface Body {
  readonly piece: Piece;
  readonly chain: Chain;
  /** Whole mass on the chain: per m² of face pair half, per m of bar, or of the sphere. kg. */
  readonly massKg: number;
  /** Heated surface a kg, m²/kg. */
  readonly surfacePerMassM2Kg: number;
}

const DEFAULT_INTERVALS = 20;

/**
 * Cuts a piece into control volumes.
 *
 * @throws PhysicsError `out-of-range` for a section outside 0.2 mm to 1 m,
 *   `bad-input` when `intervals` is not a whole number of 2 to 400
 */
export function makeBody(piece: Piece): Body {
  const section = requireRange('section', piece.sectionMetres, 0.0002, 1, 'm');
  const intervals = piece.intervals ?? DEFAULT_INTERVALS;
  if (!Number.isInteger(intervals) || intervals < 2 || intervals > 400) {
    throw new PhysicsError('bad-input', `intervals is ${intervals}, must be a whole number of 2 to 400`);
  }
  const chain = cut(piece.shape, section / 2, intervals, piece.material);
  const massKg = chain.massKg.reduce((sum, mass) => sum + mass, 0);
  return { piece, chain, massKg, surfacePerMassM2Kg: chain.outerAreaM2 / massKg };
}

function cut(shape: Shape, half: number, intervals: number, material: Material): Chain {
  const step = half / intervals;
  const faces = Array.from({ length: intervals }, (_, i) => (i + 0.5) * step);
  const inner = [0, ...faces];
  const outer = [...faces, half];
  return {
    massKg: inner.map(
      (from, i) => material.densityKgM3 * (content(shape, outer[i] ?? half) - content(shape, from)),
    ),
    pathMetres: faces.map((face) => area(shape, face) / step),
    material: inner.map(() => material),
    pathMaterial: faces.map(() => material),
    outerAreaM2: area(shape, half),
  };
}

/** Area of the surface at a distance from the middle: of 1 m² of plate, of 1 m of bar, of the sphere. */
function area(shape: Shape, metres: number): number {
  if (shape === 'plate') return 1;
  return shape === 'bar' ? 2 * Math.PI * metres : 4 * Math.PI * metres ** 2;
}

/** Volume within a distance from the middle, m³, counted as in {@link area}. */
function content(shape: Shape, metres: number): number {
  if (shape === 'plate') return metres;
  return shape === 'bar' ? Math.PI * metres ** 2 : (4 / 3) * Math.PI * metres ** 3;
}
