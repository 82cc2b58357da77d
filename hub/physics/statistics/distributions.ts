/**
 * Normal and Student quantiles, from the Cephes library (S. L. Moshier), which is compiled to WebAssembly.
 *
 * On Node the package is compiled when it is loaded; the wait below is for runtimes that do it later.
 */
import { compiled, incbi, ndtr, ndtri } from 'cephes';
import { PhysicsError, requireRange } from '../errors.ts';

await compiled;

/** Share of a standard normal variable below `z`, 0 to 1. */
export function normalShareBelow(z: number): number {
  return ndtr(z);
}

/**
 * Value below which a standard normal variable lies with probability `share`.
 *
 * @throws PhysicsError `out-of-range` unless 0 < share < 1
 */
export function normalQuantile(share: number): number {
  return ndtri(openShare(share));
}

/**
 * Value below which Student's t lies with probability `share`.
 *
 * @param freedom degrees of freedom, 1 or more; need not be whole (Welch)
 * @throws PhysicsError `out-of-range`
 */
export function studentQuantile(share: number, freedom: number): number {
  requireRange('Degrees of freedom', freedom, 1, Number.MAX_VALUE, '');
  const tail = 2 * Math.min(openShare(share), 1 - share);
  if (tail >= 1) return 0;
  // Abramowitz and Stegun 26.5.27: the tails of t are an incomplete beta function of freedom / (freedom + t²).
  const x = incbi(freedom / 2, 0.5, tail);
  return Math.sign(share - 0.5) * Math.sqrt((freedom * (1 - x)) / x);
}

/**
 * Half width, in standard errors, of a band that holds `share` of the cases in its middle.
 *
 * @param share e.g. 0.8 for an 80 % band
 */
export function studentHalfWidth(share: number, freedom: number): number {
  return studentQuantile((1 + openShare(share)) / 2, freedom);
}

function openShare(share: number): number {
  if (share > 0 && share < 1) return share;
  throw new PhysicsError('out-of-range', `A share lies between 0 and 1, both ends left out, not ${share}`, {
    share,
  });
}
