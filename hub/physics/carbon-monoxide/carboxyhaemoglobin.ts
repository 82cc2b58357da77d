/**
 * Carboxyhaemoglobin after time in a constant level of carbon monoxide, by the
 * Coburn-Forster-Kane equation.
 *
 *     dx/dt = VCO/Vb + (PICO - x PcO2 / (M O)) / (Vb beta)
 *     beta  = 1/DL + PL/VA,   PICO = ppm 1e-6 (PB - 47)
 *     O = O2Hb_max - x (nonlinear) or O2Hb_max (linear)
 *
 * Source: Coburn, Forster and Kane, J Clin Invest 1965;44:1899 (abstract and
 * public copies of the equation). Measured blood was within about 1 % COHb after
 * exercise (Tikuisis 1992), single persons up to 3.8 % off (Benignus 1994).
 *
 * An estimate for a typical adult, not a medical statement. It may only make a
 * warning earlier: a low figure never cancels, delays or quietens anything, and
 * never says that someone is well.
 */
import { requireRange } from '../errors.ts';
import type { CohbConstants } from './carboxyhaemoglobin-constants.ts';

/** Resistance of the way from breath to blood, mmHg min/ml. */
export function uptakeResistance(constants: CohbConstants): number {
  const { diffusionMlPerMinMmHg, ventilationMlPerMin, barometricMmHg, waterVapourMmHg } = constants;
  return 1 / diffusionMlPerMinMmHg + (barometricMmHg - waterVapourMmHg) / ventilationMlPerMin;
}

function inspiredMmHg(constants: CohbConstants, ppm: number): number {
  return ppm * 1e-6 * (constants.barometricMmHg - constants.waterVapourMmHg);
}

/** `a` fills the blood, `b` empties it: dx/dt = a - b x / (K - x), x in ml/ml, per minute. */
interface Rates {
  readonly a: number;
  readonly b: number;
  readonly capacity: number;
}

function rates(constants: CohbConstants, ppm: number): Rates {
  const { bloodMl, endogenousMlPerMin, capillaryOxygenMmHg, haldaneRatio } = constants;
  const resistance = bloodMl * uptakeResistance(constants);
  return {
    a: endogenousMlPerMin / bloodMl + inspiredMmHg(constants, ppm) / resistance,
    b: capillaryOxygenMmHg / (haldaneRatio * resistance),
    capacity: constants.oxygenCapacityMlPerMl,
  };
}

/** A time at one level. */
export interface ConstantExposure {
  /** 0 to 99.9 % at the start. */
  readonly startPercent: number;
  /** 0 to 1e6. */
  readonly ppm: number;
  /** 0 or more. */
  readonly minutes: number;
}

function requireExposure({ startPercent, ppm, minutes }: ConstantExposure): void {
  requireRange('Carboxyhaemoglobin at the start', startPercent, 0, 99.9, '%');
  requireRange('Carbon monoxide', ppm, 0, 1e6, 'ppm');
  requireRange('Time', minutes, 0, Number.MAX_VALUE, 'min');
}

/**
 * Percent after the exposure, nonlinear form, 0 to below 100.
 *
 * The equation's own implicit solution, t = (x - x0)/q - (K b/q²) ln((aK - qx)/(aK - qx0)) with
 * q = a + b, is solved for x; so one long step and many short ones give the same.
 *
 * @throws PhysicsError `out-of-range`
 */
export function cohbPercentAfter(constants: CohbConstants, exposure: ConstantExposure): number {
  requireExposure(exposure);
  const { a, b, capacity } = rates(constants, exposure.ppm);
  const q = a + b;
  const start = (exposure.startPercent / 100) * capacity;
  const way = (a * capacity) / q - start;
  const gone = 1 - Math.exp(-wayTravelled(way / q, (capacity * b) / (q * q), exposure.minutes));
  return (100 * (start + way * gone)) / capacity;
}

/**
 * Solves (1 - e^-w) d + c w = t for w, where 1 - e^-w is the share of the way to equilibrium.
 *
 * Newton from the side that the curve's bend leads to the root without passing it: below it when the
 * blood fills (d > 0, concave), above it when it empties (convex; c + d stays positive there).
 */
function wayTravelled(d: number, c: number, t: number): number {
  let w = d > 0 ? Math.max(t / (c + d), (t - d) / c) : (t - d) / c;
  for (let turn = 0; turn < 100; turn += 1) {
    const left = Math.exp(-w);
    const change = ((1 - left) * d + c * w - t) / (left * d + c);
    w -= change;
    if (Math.abs(change) <= 1e-14 * Math.max(1, w)) break;
  }
  return Math.max(0, w);
}

/**
 * Percent that a level leads to in the end, nonlinear form.
 *
 * @throws PhysicsError `out-of-range`
 */
export function cohbEquilibriumPercent(constants: CohbConstants, ppm: number): number {
  requireRange('Carbon monoxide', ppm, 0, 1e6, 'ppm');
  const { a, b } = rates(constants, ppm);
  return (100 * a) / (a + b);
}

/** Time constant of the linear form, minutes; its half-life is ln 2 of it. */
export function linearTimeConstantMinutes(constants: CohbConstants): number {
  const { b, capacity } = rates(constants, 0);
  return capacity / b;
}

/** Percent that the linear form leads to; above 100 where that form has lost all meaning. */
export function linearEquilibriumPercent(constants: CohbConstants, ppm: number): number {
  requireRange('Carbon monoxide', ppm, 0, 1e6, 'ppm');
  const { a, b } = rates(constants, ppm);
  return (100 * a) / b;
}

/**
 * Percent by the linear form, a check on the other below 10 %.
 *
 * It reads high: by 1 % of the value at 3 % COHb, 5 % at 11 %, 11 % at 21 %,
 * and passes 100 % at high levels.
 *
 * @throws PhysicsError `out-of-range`
 */
export function linearCohbPercentAfter(constants: CohbConstants, exposure: ConstantExposure): number {
  requireExposure(exposure);
  const end = linearEquilibriumPercent(constants, exposure.ppm);
  const kept = Math.exp(-exposure.minutes / linearTimeConstantMinutes(constants));
  return end + (exposure.startPercent - end) * kept;
}

/**
 * Minutes for the nonlinear form to go from one percent to another at a level.
 *
 * @returns null when the level does not lead there
 * @throws PhysicsError `out-of-range`
 */
export function cohbMinutesBetween(
  constants: CohbConstants,
  ppm: number,
  fromPercent: number,
  toPercent: number,
): number | null {
  requireExposure({ startPercent: fromPercent, ppm, minutes: 0 });
  requireRange('Carboxyhaemoglobin at the end', toPercent, 0, 99.9, '%');
  const { a, b, capacity } = rates(constants, ppm);
  const q = a + b;
  const way = a / q - fromPercent / 100;
  const share = (toPercent - fromPercent) / 100 / way;
  if (fromPercent === toPercent) return 0;
  if (!(share > 0 && share < 1)) return null;
  return (capacity * way * share) / q - ((capacity * b) / (q * q)) * Math.log1p(-share);
}
