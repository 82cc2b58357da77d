/** The steel in the fire: pieces of differing section, each with its own inside, and where they lie. */
import type { Exposure } from '../../hub/physics/heat/exposure.ts';
import type { Material } from '../../hub/physics/heat/material.ts';
import { SimError } from '../errors.ts';
import { type PieceSize, type PieceTruth, SteelPiece } from './steel-piece.ts';

/** Where the load lies: in a furnace, or out of it in something that takes its heat. */
export type LoadPlace = 'furnace' | 'still-air' | 'ash' | 'vermiculite' | 'quench';

const EMISSIVITY = 0.8;

/** Film coefficient W/(m² K) and temperature of each medium. Invented, except that ash and vermiculite
 * follow a conduction estimate (a 25 mm bar loses about 265 °C/h at 700 °C in vermiculite). */
const MEDIA = {
  'still-air': { film: 10, celsius: null, emissivity: EMISSIVITY },
  ash: { film: 5, celsius: null, emissivity: 0 },
  vermiculite: { film: 3.5, celsius: null, emissivity: 0 },
  quench: { film: 1200, celsius: 45, emissivity: 0 },
} as const;

/** Steel is slow: it is moved on in steps of this, and what it took is charged to the furnace in the next one. */
const STRIDE_SECONDS = 2;
/** Where it hardly changes: soaked through, or cooling in anything but a quench. */
const LONG_STRIDE_SECONDS = 5;
const NEARLY_SOAKED_CELSIUS = 12;
/** Nearer to its surroundings than this a piece outside the furnace is as cold as it gets. */
const SETTLED_CELSIUS = 0.3;
/** Where the model of the piece ends, °C. */
const HOTTEST_CELSIUS = 1340;

/** What surrounds the load in a furnace. */
export interface Surroundings {
  readonly wallCelsius: number;
  readonly gasCelsius: number;
  /** W/(m² K) from the gas. */
  readonly film: number;
  /** How much colder it is by the door, °C. Default 0. */
  readonly doorDropCelsius?: number;
}

/** Heat into the load, W. */
export interface HeatGain {
  readonly wall: number;
  readonly gas: number;
}

const NOTHING: HeatGain = { wall: 0, gas: 0 };

/** Pieces that are heated in a furnace and cooled outside it. */
export class SteelLoad {
  readonly pieces: readonly SteelPiece[];
  readonly squareMetres: number;
  #place: LoadPlace = 'furnace';
  #waited = 0;
  #gain: HeatGain = NOTHING;

  /** @throws SimError `bad-plan` for no piece at all */
  constructor(sizes: readonly PieceSize[], celsius: number, material?: Material) {
    if (sizes.length === 0) throw new SimError('bad-plan', 'A load needs at least one piece');
    this.pieces = sizes.map((size) => new SteelPiece(size, celsius, material));
    this.squareMetres = this.pieces.reduce((sum, piece) => sum + piece.squareMetres, 0);
  }

  get place(): LoadPlace {
    return this.#place;
  }

  /** Carries the load to another place. */
  move(place: LoadPlace): void {
    this.#place = place;
    this.#waited = 0;
    this.#gain = NOTHING;
  }

  /** The piece with the largest section: the last one to be hot inside. */
  get thickest(): SteelPiece {
    return this.#extreme((one, other) => one.size.sectionMetres > other.size.sectionMetres);
  }

  get thinnest(): SteelPiece {
    return this.#extreme((one, other) => one.size.sectionMetres < other.size.sectionMetres);
  }

  /** Mean over the surface, °C. */
  get surfaceCelsius(): number {
    const sum = this.pieces.reduce((total, each) => total + each.squareMetres * each.surfaceCelsius, 0);
    return sum / this.squareMetres;
  }

  /** Lies in a furnace for some seconds; gives the heat that the furnace pays for it meanwhile, W. */
  heat(around: Surroundings, seconds: number): HeatGain {
    this.#waited += seconds;
    const charged = this.#gain;
    const isFar = (piece: SteelPiece) =>
      Math.abs(around.wallCelsius - piece.surfaceCelsius) > NEARLY_SOAKED_CELSIUS;
    const stride = this.pieces.some(isFar) ? STRIDE_SECONDS : LONG_STRIDE_SECONDS;
    if (this.#waited >= stride - 1e-9) this.#gain = this.#stride(around);
    return charged;
  }

  #stride(around: Surroundings): HeatGain {
    const seconds = this.#waited;
    this.#waited = 0;
    let [wall, gas] = [0, 0];
    for (const piece of this.pieces) {
      const drop = piece.size.spot === 'door' ? (around.doorDropCelsius ?? 0) : 0;
      const gasCelsius = Math.min(HOTTEST_CELSIUS, around.gasCelsius - drop);
      const exposure: Exposure = {
        surroundingsCelsius: gasCelsius,
        wallsCelsius: Math.min(HOTTEST_CELSIUS, around.wallCelsius - drop),
        emissivity: EMISSIVITY,
        film: around.film,
      };
      const before = piece.surfaceCelsius;
      const joules = piece.soak(exposure, seconds);
      const surface = (before + piece.surfaceCelsius) / 2;
      const fromGas = around.film * piece.squareMetres * (gasCelsius - surface);
      gas += fromGas;
      wall += joules / seconds - fromGas;
    }
    return { wall, gas };
  }

  /** Cools outside the furnace; does nothing while the load lies inside it. */
  coolOutside(roomCelsius: number, seconds: number): void {
    if (this.#place === 'furnace') return;
    this.#waited += seconds;
    const stride = this.#place === 'quench' ? STRIDE_SECONDS : LONG_STRIDE_SECONDS;
    if (this.#waited < stride - 1e-9) return;
    const { film, celsius, emissivity } = MEDIA[this.#place];
    const sink = celsius ?? roomCelsius;
    for (const piece of this.pieces) {
      if (Math.abs(piece.meanCelsius - sink) > SETTLED_CELSIUS) {
        piece.soak({ surroundingsCelsius: sink, emissivity, film }, this.#waited);
      } else if (piece.meanCelsius !== sink) piece.settle(sink);
    }
    this.#waited = 0;
  }

  truth(): readonly PieceTruth[] {
    return this.pieces.map((piece) => piece.truth());
  }

  #extreme(isMore: (one: SteelPiece, other: SteelPiece) => boolean): SteelPiece {
    return this.pieces.reduce((best, each) => (isMore(each, best) ? each : best));
  }
}
