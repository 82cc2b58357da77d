/**
 * A propane cylinder: boiling cools the liquid, the room warms it again through
 * the wetted wall, and the pressure is that of the liquid until none is left.
 */
import {
  propaneLatentHeatJoulesPerKilogram,
  propaneVapourPressurePascals,
  STANDARD_ATMOSPHERE_PASCALS,
} from '../../hub/physics/propane.ts';

const FULL_KILOGRAMS = 9;
/** Steel of a small cylinder, about 8 kg. */
const SHELL_JOULES_PER_KELVIN = 3800;
const LIQUID_JOULES_PER_KILOGRAM_KELVIN = 2500;
/** Heat pick-up of a full cylinder in still air, W/K. Invented; it shrinks with the wetted wall. */
const FULL_WATTS_PER_KELVIN = 4.5;
/** Below this nothing is liquid any more and the rest leaves as gas. */
const LAST_VAPOUR_KILOGRAMS = 0.05;
const COLDEST_CELSIUS = -60;
/** A wall is warmer than the liquid by this share of what the air is, and by no more than this. Invented. */
const WALL_WARMER_SHARE = 0.08;
const WALL_WARMER_CELSIUS = 2.5;

/** The contents of a cylinder. */
export interface CylinderStart {
  /** Contents, not counting the steel. */
  readonly massKilograms: number;
  readonly liquidCelsius: number;
}

/** A cylinder that is drawn from. */
export class Cylinder {
  massKilograms: number;
  liquidCelsius: number;
  /** All gas drawn since the start, kg. */
  drawnKilograms = 0;

  constructor(start: CylinderStart) {
    this.massKilograms = start.massKilograms;
    this.liquidCelsius = start.liquidCelsius;
  }

  /** Pressure in the head of the cylinder, Pa gauge. */
  get gaugePascals(): number {
    const full = propaneVapourPressurePascals(this.liquidCelsius) - STANDARD_ATMOSPHERE_PASCALS;
    return Math.max(0, full) * Math.min(1, this.massKilograms / LAST_VAPOUR_KILOGRAMS);
  }

  /** What a thermocouple on the wall shows: a little warmer than the liquid behind it. */
  wallCelsius(airCelsius: number): number {
    const warmer = Math.min(
      WALL_WARMER_CELSIUS,
      WALL_WARMER_SHARE * Math.abs(airCelsius - this.liquidCelsius),
    );
    return this.liquidCelsius + Math.sign(airCelsius - this.liquidCelsius) * warmer;
  }

  /** Draws gas for a time; gives what was really there, kg. */
  step(kilogramsPerSecond: number, airCelsius: number, seconds: number): number {
    const drawn = Math.min(kilogramsPerSecond * seconds, this.massKilograms);
    const latent = propaneLatentHeatJoulesPerKilogram(this.liquidCelsius) * drawn;
    const wetted = Math.max(0.05, (this.massKilograms / FULL_KILOGRAMS) ** (2 / 3));
    const gained = FULL_WATTS_PER_KELVIN * wetted * (airCelsius - this.liquidCelsius) * seconds;
    const capacity = SHELL_JOULES_PER_KELVIN + LIQUID_JOULES_PER_KILOGRAM_KELVIN * this.massKilograms;
    this.liquidCelsius = Math.max(COLDEST_CELSIUS, this.liquidCelsius + (gained - latent) / capacity);
    this.massKilograms -= drawn;
    this.drawnKilograms += drawn;
    return drawn;
  }
}
