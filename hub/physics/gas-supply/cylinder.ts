/** A propane cylinder: what may be in it, what is in it, and how fast its own boiling chills it. */
import { PhysicsError, requireRange } from '../errors.ts';
import { propaneLatentHeatJoulesPerKilogram } from '../propane.ts';

/** A mass with the range that it may honestly lie in, kg. */
export interface MassBand {
  readonly low: number;
  readonly value: number;
  readonly high: number;
}

/** Liquid by weight over the water that the cylinder holds: 42 %, the rest is room to expand. Published. */
export const FILL_SHARE_OF_WATER = 0.42;

/**
 * Propane in a cylinder filled to the limit, kg.
 *
 * Source: LP-gas rule of 42 % of the water capacity by weight; 47.6 lb of water make 20 lb of gas.
 *
 * @param waterKilograms water capacity as stamped (WC), 1 to 500 kg
 * @throws PhysicsError `out-of-range`
 */
export function filledKilograms(waterKilograms: number): number {
  return FILL_SHARE_OF_WATER * requireRange('Water capacity', waterKilograms, 1, 500, 'kg');
}

/** What a filling by volume goes by. */
export interface VolumeFilling {
  /** Any volume unit: the answer comes in the same. */
  readonly waterVolume: number;
  /** Share by weight, above 0 to 0.6: 0.42. */
  readonly fillShare: number;
  /** Liquid against water at 60 °F, 0.3 to 0.8: 0.51 for propane. */
  readonly relativeDensity: number;
  /** Correction of the liquid's volume to its temperature, 0.8 to 1.2. */
  readonly temperatureFactor: number;
}

/**
 * Most liquid by volume at the liquid's temperature.
 *
 * Source: 29 CFR 1910.110(b)(19)(v)(d); 100 US gal, 42 %, 0.510 and 1.031 give 79.8 gal.
 *
 * @throws PhysicsError `out-of-range`
 */
export function mostLiquidVolume(filling: VolumeFilling): number {
  const volume = requireRange('Water volume', filling.waterVolume, 1e-6, 1e9, '');
  const share = requireRange('Fill share', filling.fillShare, 1e-3, 0.6, '');
  const density = requireRange('Relative density', filling.relativeDensity, 0.3, 0.8, '');
  const factor = requireRange('Temperature factor', filling.temperatureFactor, 0.8, 1.2, '');
  return (volume * share) / (density * factor);
}

/**
 * Contents by the scale: gross less the stamped tare (TW), never below nothing.
 *
 * @param grossKilograms what the scale shows
 * @param tareKilograms as stamped, 1 to 200 kg; a guessed tare may be 2 kg off
 * @param errorKilograms of scale and tare together, 0 or more
 * @throws PhysicsError `bad-input` when the scale shows far less than the tare: something is not on it;
 *   `out-of-range`
 */
export function contentsByScale(
  grossKilograms: number,
  tareKilograms: number,
  errorKilograms: number,
): MassBand {
  requireRange('Tare', tareKilograms, 1, 200, 'kg');
  requireRange('Error of the scale', errorKilograms, 0, 20, 'kg');
  requireRange('Scale', grossKilograms, -10, 500, 'kg');
  const net = grossKilograms - tareKilograms;
  if (net < -2 * errorKilograms - 0.5) {
    const message = `The scale shows ${grossKilograms} kg, less than the empty cylinder of ${tareKilograms} kg`;
    throw new PhysicsError('bad-input', message, { grossKilograms, tareKilograms });
  }
  return {
    low: Math.max(0, net - errorKilograms),
    value: Math.max(0, net),
    high: Math.max(0, net + errorKilograms),
  };
}

/** Steel and liquid near room temperature, J/kg/K; the liquid's rises with temperature. Handbook values, from memory. */
const STEEL_JOULES_PER_KILOGRAM_KELVIN = 480;
const LIQUID_JOULES_PER_KILOGRAM_KELVIN = 2500;

/** A cylinder that is drawn from. */
export interface DrawnCylinder {
  /** 0 to 100 kg/h. */
  readonly kilogramsPerHour: number;
  /** Gas left, 0 to 500 kg. */
  readonly contentsKilograms: number;
  /** Steel, 1 to 200 kg. */
  readonly tareKilograms: number;
  /** Of the liquid, -100 to 96 °C. */
  readonly liquidCelsius: number;
}

export interface Chill {
  /** Heat that the boiling takes, W. */
  readonly latentWatts: number;
  /** How fast the cylinder cools while no heat comes in from outside, K/h: the steepest it can be. */
  readonly kelvinPerHour: number;
}

/**
 * Chill of a cylinder by its own boiling.
 *
 * Source: latent heat over the heat capacity of steel and liquid; 1.5 kg/h takes 146 W and cools a half-full
 * 20 lb cylinder by about 34 K/h, so it settles where the air brings as much as the draw takes.
 *
 * @throws PhysicsError `out-of-range`
 */
export function chillOf(cylinder: DrawnCylinder): Chill {
  requireRange('Draw', cylinder.kilogramsPerHour, 0, 100, 'kg/h');
  requireRange('Gas left', cylinder.contentsKilograms, 0, 500, 'kg');
  requireRange('Empty cylinder', cylinder.tareKilograms, 1, 200, 'kg');
  const latent = propaneLatentHeatJoulesPerKilogram(cylinder.liquidCelsius);
  const latentWatts = (cylinder.kilogramsPerHour * latent) / 3600;
  const capacity =
    STEEL_JOULES_PER_KILOGRAM_KELVIN * cylinder.tareKilograms +
    LIQUID_JOULES_PER_KILOGRAM_KELVIN * cylinder.contentsKilograms;
  return { latentWatts, kelvinPerHour: (latentWatts * 3600) / capacity };
}
