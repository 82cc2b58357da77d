/**
 * Austenite grain size after a firing: a trend, not a measurement.
 *
 * Lee and Lee, ISIJ Int. 48 (2008) 1755 (in transcription):
 * d = 76671 exp(-(89098 + 3581 C + 1211 Ni + 1443 Cr + 4031 Mo)/(8.314 T)) t^0.211, µm, K, s.
 * It knows nothing of what pins grains: it is a factor of two too low for one
 * measured 4140 and up to five times too high for aluminium-killed steel held
 * for hours below 950 °C. Compare with the measured sets beside it.
 */
import { PhysicsError, requireRange } from '../errors.ts';
import type { Band } from '../heat/standing.ts';
import { type CurvePoint, integrate } from './curve.ts';
import { GRAIN_SETS, type GrainSet } from './grain-sets.ts';

const KELVIN = 273.15;
const EXPONENT = 0.211;
const RANGE = { low: 800, high: 1200 } as const;
/** The formula against every measured row: measured lies between these multiples of it. */
const MEASURED_LEAST = 0.17;
const MEASURED_MOST = 2.5;

export interface GrainSteel {
  /** mass %; carbon 0.1 to 1.2, the rest 0 to 6 */
  readonly carbonPercent: number;
  readonly ni?: number;
  readonly cr?: number;
  readonly mo?: number;
}

export interface GrainTrend {
  /** Mean grain size, m; the band spans every measured set. Absent when the curve never reached 800 °C. */
  readonly sizeMetres: Band | null;
  readonly secondsCounted: number;
  /** Time above 1200 °C, s: not counted, so the grain is coarser than this. */
  readonly secondsAbove: number;
  /**
   * Time above 950 °C, s. From here to 1000 °C grains grow 2 to 5 times within
   * minutes, as what pinned them dissolves.
   */
  readonly secondsCoarsening: number;
}

/**
 * Grain size that a measured curve leads to. Growth at changing temperature:
 * each moment grows the grain by the law of its temperature from the size it has.
 *
 * @throws PhysicsError `bad-input` for a malformed curve, `out-of-range` for a
 *   composition outside the ranges of {@link GrainSteel}
 */
export function grainTrend(curve: readonly CurvePoint[], steel: GrainSteel): GrainTrend {
  const energy = activationEnergy(steel);
  // d^(1/n) grows by (A exp(-Q/RT))^(1/n) a second, whatever the size: the law made additive.
  const grown = integrate(curve, RANGE, (celsius) => prefactor(celsius, energy) ** (1 / EXPONENT));
  const coarsening = integrate(curve, { low: 950, high: 2000 }, () => 1);
  const micrometres = grown.value ** EXPONENT;
  const sizeMetres = {
    low: micrometres * 1e-6 * MEASURED_LEAST,
    value: micrometres * 1e-6,
    high: micrometres * 1e-6 * MEASURED_MOST,
  };
  return {
    sizeMetres: grown.secondsInRange > 0 ? sizeMetres : null,
    secondsCounted: grown.secondsInRange,
    secondsAbove: grown.secondsAbove,
    secondsCoarsening: coarsening.secondsInRange,
  };
}

function prefactor(celsius: number, energy: number): number {
  return 76_671 * Math.exp(-energy / (8.314 * (celsius + KELVIN)));
}

function activationEnergy(steel: GrainSteel): number {
  const carbon = requireRange('carbon', steel.carbonPercent, 0.1, 1.2, '%');
  const of = (name: 'ni' | 'cr' | 'mo'): number => requireRange(name, steel[name] ?? 0, 0, 6, '%');
  return 89_098 + 3_581 * carbon + 1_211 * of('ni') + 1_443 * of('cr') + 4_031 * of('mo');
}

/**
 * What was measured on a steel at a temperature and time, m: straight between
 * the measured temperatures, straight in log time between the measured times.
 *
 * @param setId id of one of the measured sets
 * @throws PhysicsError `bad-input` for an unknown set, `out-of-range` outside
 *   what was measured: nothing is extrapolated
 */
export function measuredGrain(setId: string, celsius: number, seconds: number): number {
  const set = GRAIN_SETS.find((one) => one.id === setId);
  if (set === undefined) {
    const known = GRAIN_SETS.map((one) => one.id).join(', ');
    throw new PhysicsError('bad-input', `no measured set ${setId}; there are ${known}`, { setId });
  }
  const temperatures = set.rows.map((row) => row.celsius);
  requireRange('temperature', celsius, temperatures[0] ?? 0, temperatures.at(-1) ?? 0, '°C');
  requireRange('time', seconds, set.seconds[0] ?? 0, set.seconds.at(-1) ?? 0, 's');
  const sizes = set.rows.map((row) => along(set.seconds.map(Math.log), row.micrometres, Math.log(seconds)));
  return along(temperatures, sizes, celsius) * 1e-6;
}

/** The measured sets by id and steel, for a list to choose from. */
export function measuredGrainSets(): readonly Pick<GrainSet, 'id' | 'steel' | 'probableSource'>[] {
  return GRAIN_SETS.map(({ id, steel, probableSource }) => ({ id, steel, probableSource }));
}

function along(xs: readonly number[], ys: readonly number[], x: number): number {
  const next = Math.max(
    1,
    xs.findIndex((at) => at >= x - 1e-9),
  );
  const [x0 = 0, x1 = 1] = [xs[next - 1], xs[next]];
  const [y0 = 0, y1 = 0] = [ys[next - 1], ys[next]];
  return y0 + ((y1 - y0) * (x - x0)) / (x1 - x0);
}

/**
 * ASTM grain-size number from mean lineal intercept: G = -3.2877 - 6.6439 log10(mm)
 * (from memory: ASTM E112).
 *
 * @param interceptMetres 1 µm to 1 mm
 * @throws PhysicsError `out-of-range` outside that
 */
export function astmGrainNumber(interceptMetres: number): number {
  const metres = requireRange('mean intercept', interceptMetres, 1e-6, 1e-3, 'm');
  return -3.2877 - 6.6439 * Math.log10(metres * 1000);
}
