/**
 * Dormand and Prince's 5(4) pair with step control: an integration of the equation that shares nothing with
 * the closed forms under test. SOURCE of the coefficients: Dormand and Prince 1980, from memory; checked on
 * x' = -x and on the circle in runge-kutta.test.ts.
 */

const NODES = [0, 1 / 5, 3 / 10, 4 / 5, 8 / 9, 1, 1];
const STAGES: readonly (readonly number[])[] = [
  [],
  [1 / 5],
  [3 / 40, 9 / 40],
  [44 / 45, -56 / 15, 32 / 9],
  [19372 / 6561, -25360 / 2187, 64448 / 6561, -212 / 729],
  [9017 / 3168, -355 / 33, 46732 / 5247, 49 / 176, -5103 / 18656],
  [35 / 384, 0, 500 / 1113, 125 / 192, -2187 / 6784, 11 / 84],
];
const FIFTH = [35 / 384, 0, 500 / 1113, 125 / 192, -2187 / 6784, 11 / 84, 0];
const FOURTH = [5179 / 57600, 0, 7571 / 16695, 393 / 640, -92097 / 339200, 187 / 2100, 1 / 40];

const dot = (weights: readonly number[], slopes: readonly number[]): number =>
  weights.reduce((sum, weight, i) => sum + weight * (slopes[i] ?? 0), 0);

/** x at the end of [from, to], for x' = slope(t, x). */
export function integrateOde(
  slope: (t: number, x: number) => number,
  x0: number,
  [from, to]: readonly [number, number],
  tolerance = 1e-11,
): number {
  let [t, x, h] = [from, x0, (to - from) / 100];
  while (t < to) {
    h = Math.min(h, to - t);
    const k: number[] = [];
    for (const [i, stage] of STAGES.entries()) k.push(slope(t + (NODES[i] ?? 0) * h, x + h * dot(stage, k)));
    const next = x + h * dot(FIFTH, k);
    const error =
      Math.abs(h * (dot(FIFTH, k) - dot(FOURTH, k))) / (tolerance * Math.max(1e-3, Math.abs(next)));
    if (error <= 1) [t, x] = [t + h, next];
    h *= Math.min(4, Math.max(0.2, 0.9 * Math.max(error, 1e-10) ** -0.2));
  }
  return x;
}
