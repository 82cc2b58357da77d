/**
 * Thermal properties of carbon steel after EN 1993-1-2:2005, clauses 3.4.1.1 to 3.4.1.3.
 *
 * The curve is that of a low-carbon structural steel. Its specific heat carries
 * the heat of transformation as a tall peak at 735 °C: 84.8 kJ/kg above the
 * straight line from 600 to 900 °C.
 */
import { requireRange } from '../errors.ts';

/** kg/m³, EN 1993-1-2 clause 3.2.2, taken as independent of temperature. */
export const STEEL_DENSITY_KG_M3 = 7850;

const LOW = 20;
const HIGH = 1200;

/**
 * Specific heat of carbon steel, J/(kg K), 20 to 1200 °C.
 *
 * @throws PhysicsError `out-of-range` outside 20 to 1200 °C
 */
export function specificHeat(celsius: number): number {
  const t = requireRange('steel temperature', celsius, LOW, HIGH, '°C');
  if (t < 600) return 425 + 0.773 * t - 1.69e-3 * t ** 2 + 2.22e-6 * t ** 3;
  if (t < 735) return 666 + 13002 / (738 - t);
  if (t < 900) return 545 + 17820 / (t - 731);
  return 650;
}

/**
 * Thermal conductivity of carbon steel, W/(m K), 20 to 1200 °C.
 *
 * @throws PhysicsError `out-of-range` outside 20 to 1200 °C
 */
export function conductivity(celsius: number): number {
  const t = requireRange('steel temperature', celsius, LOW, HIGH, '°C');
  return t < 800 ? 54 - 3.33e-2 * t : 27.3;
}

/**
 * Thermal elongation relative to the length at 20 °C, dimensionless, 20 to 1200 °C.
 *
 * @throws PhysicsError `out-of-range` outside 20 to 1200 °C
 */
export function elongation(celsius: number): number {
  const t = requireRange('steel temperature', celsius, LOW, HIGH, '°C');
  if (t < 750) return 1.2e-5 * t + 0.4e-8 * t ** 2 - 2.416e-4;
  if (t <= 860) return 1.1e-2;
  return 2e-5 * t - 6.2e-3;
}

/**
 * Heat content above 20 °C, J/kg, 20 to 1200 °C: the exact integral of
 * {@link specificHeat}, so that the peak is neither missed nor counted twice.
 *
 * @throws PhysicsError `out-of-range` outside 20 to 1200 °C
 */
export function specificEnthalpy(celsius: number): number {
  const t = requireRange('steel temperature', celsius, LOW, HIGH, '°C');
  if (t < 600) return polynomialPart(t) - polynomialPart(20);
  if (t < 735) return AT_600 + risingPart(t) - risingPart(600);
  if (t < 900) return AT_735 + fallingPart(t) - fallingPart(735);
  return AT_900 + 650 * (t - 900);
}

/** Antiderivatives of the three branches of the specific heat, J/kg. */
function polynomialPart(t: number): number {
  return 425 * t + (0.773 * t ** 2) / 2 - (1.69e-3 * t ** 3) / 3 + (2.22e-6 * t ** 4) / 4;
}

function risingPart(t: number): number {
  return 666 * t - 13002 * Math.log(738 - t);
}

function fallingPart(t: number): number {
  return 545 * t + 17820 * Math.log(t - 731);
}

const AT_600 = polynomialPart(600) - polynomialPart(20);
const AT_735 = AT_600 + risingPart(735) - risingPart(600);
const AT_900 = AT_735 + fallingPart(900) - fallingPart(735);
