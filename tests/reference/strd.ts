import regression from './strd-regression.json' with { type: 'json' };
import univariate from './strd-univariate.json' with { type: 'json' };

/** NIST Statistical Reference Datasets (SRD 140); the files name the source of every set. */
export interface UnivariateSet {
  readonly name: string;
  readonly data: readonly number[];
  readonly certified: { readonly mean: number; readonly deviation: number; readonly lagOne: number };
}

export interface RegressionSet {
  readonly name: string;
  readonly rows: readonly (readonly number[])[];
  readonly y: readonly number[];
  readonly constant: boolean;
  readonly certified: {
    readonly coefficients: readonly number[];
    readonly standardErrors: readonly number[];
    readonly residualDeviation: number;
    readonly rSquared: number;
  };
}

/** Log relative error: how many digits agree, at most 16. Source: B. D. McCullough, 1998 (from memory). */
export function digits(computed: number, certified: number): number {
  const error = Math.abs(computed - certified);
  if (error === 0) return 16;
  return Math.min(16, -Math.log10(error / (certified === 0 ? 1 : Math.abs(certified))));
}

/** The first digits of pi after J. Machin's formula, the leading 3 among them. */
export function piDigits(count: number): number[] {
  const unit = 10n ** BigInt(count + 10);
  const arctanOfInverse = (x: bigint): bigint => {
    let power = unit / x;
    let total = power;
    for (let n = 3n; power !== 0n; n += 2n) {
      power = -power / (x * x);
      total += power / n;
    }
    return total;
  };
  const pi = 4n * (4n * arctanOfInverse(5n) - arctanOfInverse(239n));
  return [...pi.toString().slice(0, count)].map(Number);
}

type Univariate = (typeof univariate)[keyof typeof univariate];

function dataOf(set: Univariate): readonly number[] {
  if ('data' in set) return set.data;
  if ('digits' in set.rule) {
    const { digits: count, changedIndex, changedTo } = set.rule;
    return piDigits(count).map((digit, i) => (i === changedIndex ? changedTo : digit));
  }
  const { first, pair, pairs } = set.rule;
  return [first, ...Array.from({ length: pairs }, () => pair).flat()];
}

export const UNIVARIATE: readonly UnivariateSet[] = Object.entries(univariate).map(([name, set]) => ({
  name,
  data: dataOf(set),
  certified: {
    mean: Number(set.certified.mean),
    deviation: Number(set.certified.standardDeviation),
    lagOne: Number(set.certified.lagOneAutocorrelation),
  },
}));

export const REGRESSION: readonly RegressionSet[] = Object.entries(regression).map(([name, set]) => ({
  name,
  // Pontius is a parabola in one column.
  rows: name === 'Pontius' ? set.rows.map(([x = 0]) => [x, x * x]) : set.rows,
  y: set.y,
  constant: !name.startsWith('NoInt'),
  certified: {
    coefficients: set.certified.coefficients.map(Number),
    standardErrors: set.certified.standardErrors.map(Number),
    residualDeviation: Number(set.certified.residualDeviation),
    rSquared: Number(set.certified.rSquared),
  },
}));
