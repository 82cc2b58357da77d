/**
 * Small dense matrices as rows of numbers: four by four, many times a second, kept in plain immutable states. A
 * matrix package would have to be filled and emptied at every step.
 */

export type Vector = readonly number[];
export type Matrix = readonly Vector[];

/** An n by m matrix from a rule. */
export function matrixOf(n: number, m: number, entry: (row: number, column: number) => number): number[][] {
  const rows: number[][] = [];
  for (let i = 0; i < n; i++) {
    const row: number[] = [];
    for (let j = 0; j < m; j++) row.push(entry(i, j));
    rows.push(row);
  }
  return rows;
}

export function identity(n: number): Matrix {
  return matrixOf(n, n, (i, j) => (i === j ? 1 : 0));
}

export function transposed(a: Matrix): Matrix {
  return (a[0] ?? []).map((_, j) => a.map((row) => row[j] ?? 0));
}

/** The product a b. */
export function times(a: Matrix, b: Matrix): Matrix {
  const width = b[0]?.length ?? 0;
  return a.map((row) => {
    const product = new Array<number>(width).fill(0);
    for (let k = 0; k < row.length; k++) {
      const factor = row[k] ?? 0;
      const other = b[k];
      if (factor === 0 || other === undefined) continue;
      for (let j = 0; j < width; j++) product[j] = (product[j] ?? 0) + factor * (other[j] ?? 0);
    }
    return product;
  });
}

/** The product a x. */
export function applied(a: Matrix, x: Vector): Vector {
  return a.map((row) => dot(row, x));
}

export function plus(a: Matrix, b: Matrix): Matrix {
  return a.map((row, i) => row.map((entry, j) => entry + (b[i]?.[j] ?? 0)));
}

export function scaled(a: Matrix, factor: number): Matrix {
  return a.map((row) => row.map((entry) => entry * factor));
}

/** The same matrix with the rounding that made it unequal to its mirror image spread over both halves. */
export function symmetric(a: Matrix): Matrix {
  return a.map((row, i) => row.map((entry, j) => (entry + (a[j]?.[i] ?? 0)) / 2));
}

export function dot(x: Vector, y: Vector): number {
  let total = 0;
  for (let i = 0; i < x.length; i++) total += (x[i] ?? 0) * (y[i] ?? 0);
  return total;
}
