/**
 * Tempered hardness where no measured curve of the grade is at hand: master
 * curves of plain carbon steel, a regression over all measured sets, Maynier.
 *
 * x stands for the Hollomon-Jaffe parameter over 1000, with C = 21.3 - 5.8 %C.
 */
import { type Composition, type ElementRanges, percentOf } from './composition.ts';
import type { Provenance } from './estimate.ts';
import { interpolate } from './interpolate.ts';

const STEP_X = 0.25;
/** Steel at room temperature and steel just quenched both lie below this. */
const START_X = 5;

/**
 * The curve `hrcAt`, kept from rising where a polynomial bends the wrong way:
 * its lowest value so far at every step, straight lines between the steps (at
 * this step width less than 0.01 HRC off the curve itself). Below the start it
 * is level: that is steel as quenched.
 */
function neverRising(hrcAt: (x: number) => number, x: number): number {
  const steps = Math.max(0, x - START_X) / STEP_X;
  let lowest = hrcAt(START_X);
  for (let step = 1; step <= steps; step += 1) lowest = Math.min(lowest, hrcAt(START_X + step * STEP_X));
  const next = Math.min(lowest, hrcAt(START_X + (Math.floor(steps) + 1) * STEP_X));
  return lowest + (next - lowest) * (steps - Math.floor(steps));
}

interface MasterCurve {
  readonly carbon: number;
  readonly fromX: number;
  readonly toX: number;
  /** Coefficients of x⁴, x³, x², x, 1. */
  readonly a: readonly [number, number, number, number, number];
}

/** Quartics through the 1945 Hollomon-Jaffe measurements; not to be extrapolated. */
const MASTER_CURVES: readonly MasterCurve[] = [
  { carbon: 0.56, fromX: 5.8, toX: 18.9, a: [-0.0046705, 0.22424, -4.0808, 29.016, -6.6035] },
  { carbon: 0.74, fromX: 5.4, toX: 17.9, a: [-0.0040113, 0.18311, -3.2297, 21.359, 21.116] },
  { carbon: 0.89, fromX: 5.1, toX: 17, a: [-0.0052655, 0.24414, -4.2515, 27.813, 7.7923] },
  { carbon: 0.98, fromX: 4.9, toX: 16.5, a: [-0.0040884, 0.19903, -3.7605, 26.096, 7.7697] },
];

export const MASTER_FROM: Provenance = {
  standing: 'derived-here',
  source: 'quartics through the plain carbon data of Hollomon & Jaffe 1945',
};

/** Plain carbon steel between the lowest and the highest curve. */
export const MASTER_RANGE: ElementRanges = {
  C: [0.56, 0.98],
  Mn: [0, 1],
  Si: [0, 0.4],
  Cr: [0, 0.2],
  Ni: [0, 0.3],
  Mo: [0, 0.06],
  V: [0, 0.05],
  W: [0, 0.1],
};

function masterHrc(curve: MasterCurve, x: number): number {
  const [a4, a3, a2, a1, a0] = curve.a;
  return neverRising((at) => {
    const held = Math.min(Math.max(at, curve.fromX), curve.toX);
    return (((a4 * held + a3) * held + a2) * held + a1) * held + a0;
  }, x);
}

/**
 * HRC of tempered plain carbon steel, curves joined by carbon content at equal x.
 * Measured against Grange & Baughman's 1080: bias -1.2, rms 1.6 HRC.
 */
export function masterCurveHrc(carbonPercent: number, x: number): number | null {
  return interpolate(
    MASTER_CURVES.map((curve) => [curve.carbon, masterHrc(curve, x)] as const),
    carbonPercent,
  );
}

export const REGRESSION_FROM: Provenance = {
  standing: 'derived-here',
  source:
    'least squares over 365 measured pairs of Hollomon & Jaffe 1945, Grange & Baughman 1956 and Penha 2010; a steel left out of the fit is met to 3.1 HRC rms',
};

/** What the 365 pairs span. */
export const REGRESSION_RANGE: ElementRanges = {
  C: [0.31, 1.15],
  Mn: [0.3, 0.9],
  Si: [0, 1.65],
  Cr: [0, 1.45],
  Mo: [0, 0.25],
  V: [0, 0.2],
  Ni: [0, 0.3],
  W: [0, 0.1],
};

/** How far it is used, flagged: nickel hardly changes tempering (Grange, Hribal & Porter 1977). */
export const REGRESSION_REACH: ElementRanges = {
  C: [0.25, 1.35],
  Mn: [0, 1.5],
  Si: [0, 2.2],
  Cr: [0, 1.7],
  Mo: [0, 0.35],
  V: [0, 0.25],
  Ni: [0, 2.2],
  W: [0, 0.6],
};

/** Above this the carbon no longer raises martensite hardness; the highest measured steel. */
const REGRESSION_MAX_CARBON = 1.15;
const USUAL_SILICON = 0.2;

function bell(x: number, centre: number, width: number): number {
  return Math.exp(-(((x - centre) / width) ** 2));
}

function ramp(x: number, centre: number): number {
  return 1 / (1 + Math.exp(centre - x));
}

/** Least-squares coefficients of {@link regressionTerms}, HRC. */
export const REGRESSION_COEFFICIENTS: readonly number[] = [
  44.939, -18.872, -1.643, 0.024, -0.651, -4.565, -16.823, -3.073, -41.535, 0.358, 5.854, 3.505, 28.582,
  44.78,
];

/**
 * The terms of the regression: a surface in carbon and x, then what silicon,
 * chromium, molybdenum and vanadium hold back and where in x each does so.
 */
export function regressionTerms(composition: Composition, x: number): readonly number[] {
  const d = Math.min(composition.C, REGRESSION_MAX_CARBON) - 0.7;
  const z = (x - 12) / 4;
  const si = composition.Si ?? USUAL_SILICON;
  return [
    1,
    z,
    z ** 2,
    z ** 3,
    z ** 4,
    d,
    d * z,
    d * z ** 2,
    d ** 2,
    d ** 2 * z,
    (si - USUAL_SILICON) * ramp(x, 9),
    percentOf(composition, 'Cr') * bell(x, 14, 3),
    percentOf(composition, 'Mo') * ramp(x, 13),
    percentOf(composition, 'V') * ramp(x, 13),
  ];
}

/**
 * HRC by the regression. Fit: rms 2.1, worst 9.3 HRC (0.31 % C at 500 °C), then
 * 8.5 (5160 at 300 °C, where the measurements scatter by 6).
 */
export function regressionHrc(composition: Composition, x: number): number {
  return neverRising(
    (at) =>
      regressionTerms(composition, at).reduce(
        (sum, term, index) => sum + term * (REGRESSION_COEFFICIENTS[index] ?? 0),
        0,
      ),
    x,
  );
}
