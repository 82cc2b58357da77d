/**
 * The steel in the fire: one temperature, with the heat capacity of carbon
 * steel after EN 1993-1-2 (the slow-down at 735 °C is the heat of transformation).
 */
import { STEEL_DENSITY_KG_M3, specificHeat } from '../../hub/physics/heat/steel-properties.ts';
import { radiatedWatts } from './heat.ts';

/** A plate heated on both faces. */
export interface LoadSize {
  readonly massKilograms: number;
  readonly thicknessMetres: number;
}

/** Where the load lies: in a furnace, or out of it in something that takes its heat. */
export type LoadPlace = 'furnace' | 'still-air' | 'ash' | 'vermiculite' | 'quench';

const EMISSIVITY = 0.8;

/** Film coefficient W/(m² K) and temperature of each medium. Invented, except that ash and vermiculite
 * follow a conduction estimate (a 25 mm bar loses about 265 °C/h at 700 °C in vermiculite). */
const MEDIA = {
  'still-air': { film: 10, celsius: null, radiates: true },
  ash: { film: 5, celsius: null, radiates: false },
  vermiculite: { film: 3.5, celsius: null, radiates: false },
  quench: { film: 1200, celsius: 45, radiates: false },
} as const;

/** A lump of steel that is heated in a furnace and cooled outside it. */
export class SteelLoad {
  readonly massKilograms: number;
  readonly squareMetres: number;
  celsius: number;
  place: LoadPlace = 'furnace';

  constructor(size: LoadSize, celsius: number) {
    this.massKilograms = size.massKilograms;
    this.squareMetres = (2 * size.massKilograms) / (STEEL_DENSITY_KG_M3 * size.thicknessMetres);
    this.celsius = celsius;
  }

  get joulesPerKelvin(): number {
    return this.massKilograms * specificHeat(Math.min(Math.max(this.celsius, 20), 1200));
  }

  /** W into the load from hot walls around it (radiation) and gas along it (film, W/(m² K)). */
  heatGainWatts(wallCelsius: number, gasCelsius: number, film: number): { wall: number; gas: number } {
    return {
      wall: radiatedWatts(EMISSIVITY, this.squareMetres, wallCelsius, this.celsius),
      gas: film * this.squareMetres * (gasCelsius - this.celsius),
    };
  }

  /** Takes heat in (or gives it off when negative). */
  take(watts: number, seconds: number): void {
    this.celsius += (watts * seconds) / this.joulesPerKelvin;
  }

  /** Cools outside the furnace; does nothing while the load lies inside it. */
  coolOutside(roomCelsius: number, seconds: number): void {
    if (this.place === 'furnace') return;
    const medium = MEDIA[this.place];
    const sink = medium.celsius ?? roomCelsius;
    const radiated = medium.radiates ? radiatedWatts(EMISSIVITY, this.squareMetres, this.celsius, sink) : 0;
    const excess = this.celsius - sink;
    // A quench is faster than a step: the exact exponential cannot shoot past the bath.
    const film = medium.film * this.squareMetres + (Math.abs(excess) > 1e-9 ? radiated / excess : 0);
    this.celsius = sink + excess * Math.exp((-film * seconds) / this.joulesPerKelvin);
  }
}
