/**
 * The shop's own tempering curve: hardness measured after tempering against the tempering parameter, with the band
 * in which the next piece will fall. So the shop learns its own steel.
 */
import { PhysicsError, requireRange } from '../errors.ts';
import { type LeastSquaresFit, leastSquares, predict } from './least-squares.ts';

/** One tempered piece. */
export interface TemperedPiece {
  /** Tempering parameter `T (C + log10 hours)`, kelvin. The same constant C for every piece of a curve. */
  readonly parameter: number;
  readonly hardnessHrc: number;
}

/** A fitted curve, as plain data that may be kept. */
export interface HardnessCurve {
  readonly shape: 'line' | 'parabola';
  readonly fit: LeastSquaresFit;
  /** Parameters that were measured. Outside them the curve is a guess, and says so. */
  readonly from: number;
  readonly to: number;
}

/** Hardness to be expected at a parameter, HRC, for the next single piece. */
export interface ExpectedHardness {
  readonly hardnessHrc: number;
  readonly low: number;
  readonly high: number;
  /** True outside the parameters measured. */
  readonly extrapolated: boolean;
}

/** Parameter that gives a wanted hardness. */
export interface WantedParameter {
  readonly parameter: number;
  /** Where the band of single pieces holds the wanted hardness; null when it does so beyond what was measured. */
  readonly low: number | null;
  readonly high: number | null;
}

/** A line has two numbers and a parabola three; with fewer pieces than this the band is no use. */
const LEAST_PIECES = { line: 4, parabola: 6 } as const;
const BISECTIONS = 60;

/**
 * Fits a curve through tempered pieces of one steel.
 *
 * @param shape a line serves over the middle of the range, a parabola where both ends are in it
 * @throws PhysicsError `bad-input` for fewer than 4 pieces (parabola: 6); `out-of-range` for a hardness below 20 or
 *   above 70 HRC; `no-solution` when the pieces were all tempered alike
 */
export function fitHardnessCurve(
  pieces: readonly TemperedPiece[],
  shape: HardnessCurve['shape'] = 'line',
): HardnessCurve {
  if (pieces.length < LEAST_PIECES[shape]) {
    const message = `A ${shape} wants ${LEAST_PIECES[shape]} tempered pieces or more, got ${pieces.length}`;
    throw new PhysicsError('bad-input', message, { pieces: pieces.length });
  }
  for (const piece of pieces) requireRange('Hardness', piece.hardnessHrc, 20, 70, 'HRC');
  const parameters = pieces.map((piece) => piece.parameter);
  const y = pieces.map((piece) => piece.hardnessHrc);
  const fit = leastSquares({ rows: parameters.map((parameter) => rowOf(shape, parameter)), y });
  return { shape, fit, from: Math.min(...parameters), to: Math.max(...parameters) };
}

/**
 * Hardness of the next piece tempered to a parameter, with a band that holds `share` of such pieces.
 *
 * @throws PhysicsError `bad-input`, `out-of-range` (share)
 */
export function expectedHardness(curve: HardnessCurve, parameter: number, share = 0.8): ExpectedHardness {
  const { value, low, high } = predict(curve.fit, rowOf(curve.shape, parameter), share);
  const extrapolated = parameter < curve.from || parameter > curve.to;
  return { hardnessHrc: value, low, high, extrapolated };
}

/**
 * Parameter at which the curve has a wanted hardness, inside what was measured.
 *
 * @throws PhysicsError `no-solution` when the measured pieces do not reach from above it to below it: temper one
 *   piece softer or harder first
 */
export function parameterForHardness(curve: HardnessCurve, wantedHrc: number, share = 0.8): WantedParameter {
  const above = (pick: 'hardnessHrc' | 'low' | 'high') => (parameter: number) =>
    expectedHardness(curve, parameter, share)[pick] - wantedHrc;
  const parameter = zeroOf(above('hardnessHrc'), curve);
  if (parameter === null) {
    const message = `The pieces measured do not reach ${wantedHrc} HRC from both sides`;
    throw new PhysicsError('no-solution', message, { wantedHrc, from: curve.from, to: curve.to });
  }
  const ends = [zeroOf(above('low'), curve), zeroOf(above('high'), curve)];
  return {
    parameter,
    low: ends.find((end) => end !== null && end <= parameter) ?? null,
    high: ends.find((end) => end !== null && end >= parameter) ?? null,
  };
}

function rowOf(shape: HardnessCurve['shape'], parameter: number): readonly number[] {
  return shape === 'line' ? [parameter] : [parameter, parameter * parameter];
}

/** Where a function changes its sign between both ends of the curve, by halving; null when the ends agree. */
function zeroOf(above: (parameter: number) => number, { from, to }: HardnessCurve): number | null {
  let [left, right] = [from, to];
  const sign = Math.sign(above(left));
  if (sign === Math.sign(above(right))) return null;
  for (let i = 0; i < BISECTIONS; i++) {
    const middle = (left + right) / 2;
    if (Math.sign(above(middle)) === sign) left = middle;
    else right = middle;
  }
  return (left + right) / 2;
}
