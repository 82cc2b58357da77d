/** Measured tempering hardness of one steel, and the curve drawn through it. */
import type { Composition } from './composition.ts';
import type { Provenance } from './estimate.ts';
import { hollomonJaffe, hollomonJaffeConstant } from './hollomon-jaffe.ts';
import { interpolate, type Point } from './interpolate.ts';

/** Hardness after one length of time at several temperatures. */
export interface TemperRun {
  readonly hours: number;
  readonly celsius: readonly number[];
  readonly hrc: readonly number[];
}

export interface TemperSet {
  readonly id: string;
  readonly title: string;
  readonly composition: Composition;
  /** Hardness before tempering, HRC, where the source gives it. */
  readonly quenchedHrc: number | null;
  /** False when the source states no time and 1.5 h was assumed. */
  readonly timeStated: boolean;
  /** True for steels that harden again near 500 °C: their curve may rise. */
  readonly secondaryHardening: boolean;
  readonly runs: readonly TemperRun[];
  readonly from: Provenance;
}

/** One measured pair. */
export interface TemperPair {
  readonly celsius: number;
  readonly hours: number;
  readonly hrc: number;
}

/** A set's hardness against the Hollomon-Jaffe parameter. */
export interface TemperCurve {
  readonly set: TemperSet;
  /** Constant for hours that the parameters are stated with. */
  readonly constant: number;
  readonly points: readonly Point[];
  /** Scatter of the measured points about the curve, root mean square, HRC. */
  readonly scatterHrc: number;
}

/** Every measured pair of a set. */
export function pairsOf(set: TemperSet): readonly TemperPair[] {
  return set.runs.flatMap((run) =>
    run.celsius.map((celsius, index) => ({ celsius, hours: run.hours, hrc: run.hrc[index] ?? Number.NaN })),
  );
}

/** For secondary-hardening steels the carbon rule of C is meaningless; 20 is the engineering default. */
const ENGINEERING_CONSTANT = 20;

/**
 * The curve of a set: points ordered by parameter, averaged so that hardness
 * never rises with tempering, save where the steel does so itself.
 */
export function temperCurve(set: TemperSet): TemperCurve {
  const constant = set.secondaryHardening ? ENGINEERING_CONSTANT : hollomonJaffeConstant(set.composition.C);
  const measured = pairsOf(set)
    .map((pair): Point => [hollomonJaffe(pair.celsius, pair.hours, constant), pair.hrc])
    .sort((a, b) => a[0] - b[0]);
  const points = set.secondaryHardening ? measured : pooled(measured);
  const misses = measured.map(([x, hrc]) => (interpolate(points, x) ?? hrc) - hrc);
  const scatterHrc = Math.sqrt(misses.reduce((sum, miss) => sum + miss * miss, 0) / misses.length);
  return { set, constant, points, scatterHrc };
}

interface Pool {
  readonly xs: readonly number[];
  readonly mean: number;
}

/** Pool-adjacent-violators: the closest curve, least squares, that never rises. */
function pooled(points: readonly Point[]): Point[] {
  const pools: Pool[] = [];
  for (const [x, hrc] of points) {
    let pool: Pool = { xs: [x], mean: hrc };
    let last = pools.at(-1);
    while (last !== undefined && last.mean < pool.mean) {
      pools.pop();
      pool = merge(last, pool);
      last = pools.at(-1);
    }
    pools.push(pool);
  }
  return pools.flatMap((pool) => pool.xs.map((x): Point => [x, pool.mean]));
}

function merge(left: Pool, right: Pool): Pool {
  const count = left.xs.length + right.xs.length;
  const mean = (left.mean * left.xs.length + right.mean * right.xs.length) / count;
  return { xs: [...left.xs, ...right.xs], mean };
}
