/**
 * Linear least squares by QR on centred and scaled columns, one step of refinement after it.
 *
 * The normal equations lose half the digits where columns resemble each other (NIST StRD Longley).
 */
import { Matrix, QrDecomposition } from 'ml-matrix';
import { PhysicsError } from '../errors.ts';
import { meanOf, requireValues, sum } from './describe.ts';
import { studentHalfWidth } from './distributions.ts';

export interface LeastSquaresQuestion {
  /** One row of explaining numbers for every value of `y`. */
  readonly rows: readonly (readonly number[])[];
  readonly y: readonly number[];
  /** False: the fit goes through the origin. Default true. */
  readonly constant?: boolean;
}

/** A fit, as plain data that may be kept. */
export interface LeastSquaresFit {
  /** The constant first, where there is one; then one for each column. */
  readonly coefficients: readonly number[];
  readonly standardErrors: readonly number[];
  /** Standard deviation of what is left, unit of `y`. */
  readonly residualDeviation: number;
  /** Share of the variation explained; without a constant, of the sum of squares about zero. */
  readonly rSquared: number;
  readonly count: number;
  /** Values less coefficients. */
  readonly freedom: number;
  readonly hasConstant: boolean;
  /** How the columns were centred and scaled, and the inverse of their cross products: for bands. */
  readonly centre: readonly number[];
  readonly scale: readonly number[];
  readonly spread: readonly (readonly number[])[];
}

/** What a fit says at one place. */
export interface Prediction {
  readonly value: number;
  /** Where the next single value will lie, with the probability asked for. */
  readonly low: number;
  readonly high: number;
  /** Where the curve itself lies. */
  readonly curveLow: number;
  readonly curveHigh: number;
}

/** A column this near to being made of the others cannot be told from them. */
const LEAST_INDEPENDENCE = 1e-9;

/**
 * Fits coefficients.
 *
 * @throws PhysicsError `bad-input` for rows that do not fit each other or `y`, or too few of them;
 *   `no-solution` when one column is made of the others
 */
export function leastSquares(question: LeastSquaresQuestion): LeastSquaresFit {
  const hasConstant = question.constant ?? true;
  const { rows, y } = question;
  const width = requireRows(rows, y, hasConstant);
  const columns = Array.from({ length: width }, (_, j) => rows.map((row) => row[j] ?? 0));
  const centre = columns.map((column) => (hasConstant ? meanOf(column) : 0));
  const scale = columns.map((column, j) => lengthOf(column.map((x) => x - (centre[j] ?? 0))));
  const yCentre = hasConstant ? meanOf(y) : 0;
  const x = new Matrix(rows.map((row) => standardised(row, centre, scale)));
  const target = y.map((value) => value - yCentre);
  const { beta, left, spread } = solve(x, target);
  const freedom = y.length - width - (hasConstant ? 1 : 0);
  const residual = sum(left.map((r) => r * r));
  const slopes = beta.map((b, j) => b / (scale[j] ?? 1));
  const constant = yCentre - sum(slopes.map((slope, j) => slope * (centre[j] ?? 0)));
  const variance = residual / freedom;
  const slopeErrors = slopes.map((_, j) => Math.sqrt(variance * (spread[j]?.[j] ?? 0)) / (scale[j] ?? 1));
  const atOrigin = standardised(new Array<number>(width).fill(0), centre, scale);
  const constantError = Math.sqrt(variance * (1 / y.length + quadratic(spread, atOrigin)));
  return {
    coefficients: hasConstant ? [constant, ...slopes] : slopes,
    standardErrors: hasConstant ? [constantError, ...slopeErrors] : slopeErrors,
    residualDeviation: Math.sqrt(variance),
    rSquared: 1 - residual / sum(target.map((value) => value * value)),
    count: y.length,
    freedom,
    hasConstant,
    centre,
    scale,
    spread,
  };
}

/**
 * What the fit says at a row of explaining numbers, with bands that hold `share` of the cases.
 *
 * Source: NIST/SEMATECH e-Handbook 4.5.1 and 4.5.2 (Student's t, residual standard deviation, leverage).
 *
 * @throws PhysicsError `bad-input` for a row of another width; `out-of-range` for the share
 */
export function predict(fit: LeastSquaresFit, row: readonly number[], share: number): Prediction {
  if (row.length !== fit.scale.length) {
    throw new PhysicsError('bad-input', `This fit wants ${fit.scale.length} numbers, got ${row.length}`);
  }
  requireValues(row, 1);
  const slopes = fit.hasConstant ? fit.coefficients.slice(1) : fit.coefficients;
  const constant = fit.hasConstant ? (fit.coefficients[0] ?? 0) : 0;
  const value = constant + sum(slopes.map((slope, j) => slope * (row[j] ?? 0)));
  const leverage =
    (fit.hasConstant ? 1 / fit.count : 0) + quadratic(fit.spread, standardised(row, fit.centre, fit.scale));
  const half = studentHalfWidth(share, fit.freedom) * fit.residualDeviation;
  const next = half * Math.sqrt(1 + leverage);
  const curve = half * Math.sqrt(leverage);
  return {
    value,
    low: value - next,
    high: value + next,
    curveLow: value - curve,
    curveHigh: value + curve,
  };
}

function solve(x: Matrix, target: readonly number[]) {
  const qr = new QrDecomposition(x);
  requireIndependent(qr);
  const once = (values: readonly number[]): number[] => qr.solve(Matrix.columnVector(values)).to1DArray();
  const rest = (beta: readonly number[]): number[] =>
    target.map((value, i) => value - sum(beta.map((b, j) => b * x.get(i, j))));
  const first = once(target);
  const correction = once(rest(first));
  const beta = first.map((b, j) => b + (correction[j] ?? 0));
  return { beta, left: rest(beta), spread: inverseCrossProducts(qr.upperTriangularMatrix) };
}

/** (R' R)^-1 from the triangle R: the columns' covariance, short of the variance. */
function inverseCrossProducts(r: Matrix): number[][] {
  const inverse = Matrix.zeros(r.rows, r.rows);
  for (let column = 0; column < r.rows; column++) {
    for (let row = column; row >= 0; row--) {
      let rest = row === column ? 1 : 0;
      for (let k = row + 1; k <= column; k++) rest -= r.get(row, k) * inverse.get(k, column);
      inverse.set(row, column, rest / r.get(row, row));
    }
  }
  return inverse.mmul(inverse.transpose()).to2DArray();
}

function requireIndependent(qr: QrDecomposition): void {
  const triangle = qr.upperTriangularMatrix;
  // Columns have length 1, so a diagonal entry is the sine of the angle to the columns before.
  const weakest = triangle.diagonal().findIndex((entry) => !(Math.abs(entry) > LEAST_INDEPENDENCE));
  if (weakest < 0) return;
  throw new PhysicsError('no-solution', `Column ${weakest} does not vary by itself`, { column: weakest });
}

function requireRows(rows: LeastSquaresQuestion['rows'], y: readonly number[], constant: boolean): number {
  const width = rows[0]?.length ?? 0;
  const least = width + (constant ? 2 : 1);
  requireValues(y, least);
  if (width === 0 || rows.length !== y.length) {
    const message = `A fit wants a row for each of ${y.length} values, got ${rows.length} of width ${width}`;
    throw new PhysicsError('bad-input', message);
  }
  for (const row of rows) {
    requireValues(row, width);
    if (row.length === width) continue;
    throw new PhysicsError('bad-input', `Every row has ${width} numbers, one has ${row.length}`);
  }
  return width;
}

function standardised(row: readonly number[], centre: readonly number[], scale: readonly number[]): number[] {
  return row.map((x, j) => (x - (centre[j] ?? 0)) / (scale[j] || 1));
}

function lengthOf(column: readonly number[]): number {
  return Math.sqrt(sum(column.map((x) => x * x)));
}

function quadratic(matrix: readonly (readonly number[])[], z: readonly number[]): number {
  return sum(matrix.map((row, i) => (z[i] ?? 0) * sum(row.map((entry, j) => entry * (z[j] ?? 0)))));
}
