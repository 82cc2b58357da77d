/**
 * Exact solutions of transient conduction with constant properties and a film
 * coefficient, as eigenvalue series: Carslaw and Jaeger; Incropera chapter 5.
 * Bessel functions come from the `bessel` package.
 */
import { besselj } from 'bessel';

export type SeriesShape = 'plate' | 'bar' | 'sphere';

/** Eigenvalue condition, written without poles so that bisection finds every root. */
const CONDITION: Readonly<Record<SeriesShape, (z: number, bi: number) => number>> = {
  plate: (z, bi) => z * Math.sin(z) - bi * Math.cos(z),
  bar: (z, bi) => z * besselj(z, 1) - bi * besselj(z, 0),
  sphere: (z, bi) => (1 - bi) * Math.sin(z) - z * Math.cos(z),
};

const AMPLITUDE: Readonly<Record<SeriesShape, (z: number) => number>> = {
  plate: (z) => (4 * Math.sin(z)) / (2 * z + Math.sin(2 * z)),
  bar: (z) => (2 / z) * (besselj(z, 1) / (besselj(z, 0) ** 2 + besselj(z, 1) ** 2)),
  sphere: (z) => (4 * (Math.sin(z) - z * Math.cos(z))) / (2 * z - Math.sin(2 * z)),
};

const PROFILE: Readonly<Record<SeriesShape, (z: number, x: number) => number>> = {
  plate: (z, x) => Math.cos(z * x),
  bar: (z, x) => besselj(z * x, 0),
  sphere: (z, x) => (x === 0 ? 1 : Math.sin(z * x) / (z * x)),
};

/** The first `count` eigenvalues, found by scanning for sign changes and bisecting. */
export function eigenvalues(shape: SeriesShape, bi: number, count: number): number[] {
  const condition = (z: number): number => CONDITION[shape](z, bi);
  const roots: number[] = [];
  const stride = 0.01;
  for (let z = 1e-6; roots.length < count; z += stride) {
    if (condition(z) * condition(z + stride) < 0) roots.push(bisect(condition, z, z + stride));
  }
  return roots;
}

export function amplitude(shape: SeriesShape, z: number): number {
  return AMPLITUDE[shape](z);
}

/**
 * Dimensionless temperature (T - Tinf)/(Ti - Tinf).
 *
 * @param fo Fourier number with the half thickness or radius as length
 * @param x place, 0 the middle, 1 the surface
 */
export function exactTheta(shape: SeriesShape, bi: number, fo: number, x: number, terms = 30): number {
  return eigenvalues(shape, bi, terms).reduce(
    (sum, z) => sum + amplitude(shape, z) * Math.exp(-(z ** 2) * fo) * PROFILE[shape](z, x),
    0,
  );
}

function bisect(f: (z: number) => number, from: number, to: number): number {
  let [low, high] = [from, to];
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (f(low) * f(middle) <= 0) high = middle;
    else low = middle;
  }
  return (low + high) / 2;
}
