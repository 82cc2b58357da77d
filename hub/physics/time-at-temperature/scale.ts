/**
 * Scale grown in air, and the metal it took.
 *
 * Parabolic growth of scale on iron in air or oxygen, two sources that agree at
 * 900 °C: Paidassi, x² = kp t with kp = 6.1 exp(-169452/RT) cm²/s (quoted by
 * Chen and Yuen, Oxid. Met. 59 (2003) 433), and the weight gain of Davies,
 * Simnad and Birchenall 1951, kw = 0.37 exp(-33000 cal/RT) g²/cm⁴/s. Both from
 * memory. Steel, chromium, silicon and how well the scale clings usually make it less;
 * damp furnace gas can make it more. So: a factor of two either way.
 */
import type { Band } from '../heat/standing.ts';
import { type CurvePoint, integrate } from './curve.ts';

const R_JOULE = 8.314462618;
const R_CALORIE = 1.987204;
const KELVIN = 273.15;
/** Where the laws were measured, °C. Below 570 there is no wuestite and hardly any scale. */
const RANGE = { low: 700, high: 1250 } as const;
/** Wuestite: g/cm³ and mass share of oxygen; iron: g/cm³. */
const FEO_DENSITY = 5.7;
const FEO_OXYGEN = 0.2227;
const IRON_DENSITY = 7.87;
const FACTOR = 2;

export type ScaleCaution =
  /** Hotter than 1250 °C for a while: the scale is at least this. */
  | 'above-range'
  /** Time between 570 and 700 °C grew some scale that is not counted. */
  | 'uncounted-below-700'
  | 'long-gap';

export interface Scale {
  /** Thickness of scale, m. */
  readonly thicknessMetres: Band;
  /** Metal gone from each face, m. */
  readonly metalLossMetres: Band;
  /** Oxygen taken up, kg/m². */
  readonly gainKgM2: Band;
  readonly secondsCounted: number;
  readonly cautions: readonly ScaleCaution[];
}

/**
 * Scale over a measured curve of surface temperature, in air, none knocked off
 * on the way.
 *
 * @throws PhysicsError `bad-input` for a malformed curve
 */
export function scaleGrown(curve: readonly CurvePoint[]): Scale {
  const paidassi = integrate(curve, RANGE, (celsius) => paidassiCm2S(celsius));
  const davies = integrate(curve, RANGE, (celsius) => daviesG2Cm4S(celsius));
  const fromThickness = Math.sqrt(paidassi.value);
  const fromGain = Math.sqrt(davies.value) / (FEO_OXYGEN * FEO_DENSITY);
  const thicknessCm = spread(fromThickness, fromGain);
  const gainFromThickness = fromThickness * FEO_OXYGEN * FEO_DENSITY;
  const gain = spread(gainFromThickness, Math.sqrt(davies.value));
  const warm = integrate(curve, { low: 570, high: RANGE.low }, () => 1);
  const cautions: ScaleCaution[] = [];
  if (paidassi.secondsAbove > 0) cautions.push('above-range');
  if (warm.secondsInRange > 60) cautions.push('uncounted-below-700');
  if (paidassi.longestGapSeconds > 300) cautions.push('long-gap');
  return {
    thicknessMetres: times(thicknessCm, 0.01),
    // g/cm² of oxygen to g/cm² of iron to cm of iron to m
    metalLossMetres: times(gain, (((1 - FEO_OXYGEN) / FEO_OXYGEN) * 0.01) / IRON_DENSITY),
    gainKgM2: times(gain, 10),
    secondsCounted: paidassi.secondsInRange,
    cautions,
  };
}

/** kp of Paidassi, cm²/s. */
function paidassiCm2S(celsius: number): number {
  return 6.1 * Math.exp(-169_452 / (R_JOULE * (celsius + KELVIN)));
}

/** kw of Davies, Simnad and Birchenall, g²/cm⁴/s. */
function daviesG2Cm4S(celsius: number): number {
  return 0.37 * Math.exp(-33_000 / (R_CALORIE * (celsius + KELVIN)));
}

/** Geometric mean of the two laws; the band is half the lesser to twice the greater. */
function spread(a: number, b: number): Band {
  return { low: Math.min(a, b) / FACTOR, value: Math.sqrt(a * b), high: Math.max(a, b) * FACTOR };
}

function times(band: Band, factor: number): Band {
  return { low: band.low * factor, value: band.value * factor, high: band.high * factor };
}
