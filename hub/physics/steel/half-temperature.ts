/**
 * When the centre of a bar or plate has come half-way down from the hardening
 * heat to the bath: the measure by which Grossmann compared quenches.
 *
 * Exact series for a body at one temperature put into a bath with a constant
 * film coefficient; three terms suffice at half temperature (the fourth is
 * below 1e-9 there).
 */

/** Round bar (length does not matter) or plate cooled on both faces. */
export type SectionShape = 'bar' | 'plate';

const TERMS = 3;
const BISECTIONS = 60;
/** Series length of the Bessel functions: exact to 1e-12 for arguments below 10. */
const BESSEL_TERMS = 30;

/** Bessel functions of the first kind, order 0 and 1, by their power series; |x| below 10. */
export function besselJ(order: 0 | 1, x: number): number {
  let term = order === 0 ? 1 : x / 2;
  let sum = term;
  for (let k = 1; k < BESSEL_TERMS; k += 1) {
    term *= -(x * x) / 4 / (k * (k + order));
    sum += term;
  }
  return sum;
}

/** Zeros of J1 and of J0 that enclose the roots of `z J1(z) = Bi J0(z)`. */
const BAR_BRACKETS = [
  [0, 2.404825557695773],
  [3.831705970207512, 5.520078110286311],
  [7.015586669815619, 8.653727912911013],
] as const;

function bisect(low: number, high: number, isBelow: (x: number) => boolean): number {
  let [a, b] = [low, high];
  for (let step = 0; step < BISECTIONS; step += 1) {
    const middle = (a + b) / 2;
    if (isBelow(middle)) a = middle;
    else b = middle;
  }
  return (a + b) / 2;
}

interface Term {
  readonly root: number;
  readonly amplitude: number;
}

function barTerm(biot: number, index: number): Term {
  const [low, high] = BAR_BRACKETS[index] ?? [0, 0];
  const root =
    biot === Number.POSITIVE_INFINITY
      ? high
      : bisect(low, high, (z) => {
          // J0 changes sign from bracket to bracket; dividing by it keeps one rule for all.
          const ratio = (z * besselJ(1, z)) / besselJ(0, z);
          return ratio < biot;
        });
  const [j0, j1] = [besselJ(0, root), besselJ(1, root)];
  return { root, amplitude: (2 / root) * (j1 / (j0 * j0 + j1 * j1)) };
}

function plateTerm(biot: number, index: number): Term {
  const low = index * Math.PI;
  const high = low + Math.PI / 2;
  const root = biot === Number.POSITIVE_INFINITY ? high : bisect(low, high, (z) => z * Math.tan(z) < biot);
  return { root, amplitude: (4 * Math.sin(root)) / (2 * root + Math.sin(2 * root)) };
}

/**
 * Fourier number at which the centre is half-way to the bath, dimensionless:
 * `alpha t / L²` with L the radius of a bar or half the thickness of a plate.
 *
 * @param biot `film coefficient * L / conductivity`, above 0; infinity for the ideal quench
 */
export function halfTemperatureFourier(shape: SectionShape, biot: number): number {
  const terms = Array.from({ length: TERMS }, (_, index) =>
    shape === 'bar' ? barTerm(biot, index) : plateTerm(biot, index),
  );
  const centre = (fourier: number): number =>
    terms.reduce((sum, { root, amplitude }) => sum + amplitude * Math.exp(-root * root * fourier), 0);
  // The first term alone ends below one half here, whatever the Biot number.
  const first = terms[0];
  const last = first === undefined ? 1 : 1 / (first.root * first.root);
  return bisect(0.05, Math.max(1, last), (fourier) => centre(fourier) > 0.5);
}
