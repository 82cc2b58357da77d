/**
 * A small gas forge: flame, chamber gas, a lining of three lumps, an opening that
 * radiates, and the steel inside. Every figure here is invented for a forge
 * about the size of a bread bin; no real forge was measured. Made so that turning
 * the gas fully up at working heat lifts the chamber by 10 to 40 °C a minute
 * (common practice, no source).
 */
import { burn, FLUE_JOULES_PER_KILOGRAM_KELVIN, type Flame, unlit } from './burner.ts';
import { radiatedWatts, radiativeConductance } from './heat.ts';
import { Lining, type LiningLayer } from './lining.ts';
import type { HeatGain, SteelLoad } from './steel-load.ts';

/** 0.3 m² of dense coat with a kiln shelf for a floor, over 50 mm of fibre in a sheet-steel shell. */
const LINING: readonly LiningLayer[] = [
  { joulesPerKelvin: 8600, wattsPerKelvinOutward: 3.2 },
  { joulesPerKelvin: 1500, wattsPerKelvinOutward: 3.2 },
  { joulesPerKelvin: 2500, wattsPerKelvinOutward: 9 },
];

const WALL_SQUARE_METRES = 0.3;
const GAS_EMISSIVITY = 0.3;
const GAS_FILM = 120;
const LOAD_FILM = 32;
const PORT_SQUARE_METRES = 0.045;
const DOOR_SQUARE_METRES = 0.03;

/** What the forge is given for one step. */
export interface ForgeInput {
  readonly fuelKilogramsPerSecond: number;
  readonly equivalenceRatio: number;
  /** False: the gas flows and nothing burns. Default true. */
  readonly lit?: boolean;
  /** 0 bricks in place, 1 wide open. */
  readonly doorShare: number;
  readonly roomCelsius: number;
  /** The steel, when it lies inside. */
  readonly load: SteelLoad | null;
}

/** Heat since the forge was built, J: released = flue + openings + shell + load + stored in the lining. */
export interface ForgeLedger {
  released: number;
  flue: number;
  openings: number;
  shell: number;
  load: number;
}

/** The forge's heat balance. */
export class Forge {
  readonly ledger: ForgeLedger = { released: 0, flue: 0, openings: 0, shell: 0, load: 0 };
  readonly #lining: Lining;
  #gasCelsius: number;

  constructor(celsius: number) {
    this.#lining = new Lining(LINING, celsius);
    this.#gasCelsius = celsius;
  }

  /** What a probe in the chamber would settle at: it sits in a closed-end tube that sees the wall alone. */
  get chamberCelsius(): number {
    return this.#lining.hotFaceCelsius;
  }

  get gasCelsius(): number {
    return this.#gasCelsius;
  }

  get storedJoules(): number {
    return this.#lining.storedJoules;
  }

  /** Moves the forge (and the load inside it) forward by at most a second. */
  step(input: ForgeInput, seconds: number): Flame {
    const { fuelKilogramsPerSecond, equivalenceRatio, lit = true } = input;
    const flame = lit ? burn(fuelKilogramsPerSecond, equivalenceRatio) : unlit(fuelKilogramsPerSecond);
    const wall = this.#lining.hotFaceCelsius;
    const around = { wallCelsius: wall, gasCelsius: this.#gasCelsius, film: LOAD_FILM };
    const gain = input.load?.heat(around, seconds) ?? { wall: 0, gas: 0 };
    const gasToWall = this.#gasExchange(input, flame, wall, gain);
    const opening = this.#openingWatts(input, wall);
    const shell = this.#lining.step(gasToWall - gain.wall - opening, input.roomCelsius, seconds);
    const flue = flame.watts - gasToWall - gain.gas;
    this.#book(
      { released: flame.watts, flue, openings: opening, shell, load: gain.wall + gain.gas },
      seconds,
    );
    return flame;
  }

  /** The gas holds next to no heat, so it settles at once: what the flame brings leaves by wall, load and flue. */
  #gasExchange(input: ForgeInput, flame: Flame, wall: number, gain: HeatGain): number {
    const flue = flame.flueKilogramsPerSecond * FLUE_JOULES_PER_KILOGRAM_KELVIN;
    const film = GAS_FILM * WALL_SQUARE_METRES;
    const toWall = film + radiativeConductance(GAS_EMISSIVITY, WALL_SQUARE_METRES, this.#gasCelsius, wall);
    const brought = flame.watts + flue * input.roomCelsius + toWall * wall - gain.gas;
    this.#gasCelsius = brought / (flue + toWall);
    return toWall * (this.#gasCelsius - wall);
  }

  #openingWatts(input: ForgeInput, wall: number): number {
    const area = PORT_SQUARE_METRES + DOOR_SQUARE_METRES * input.doorShare;
    const draught = 12 * DOOR_SQUARE_METRES * input.doorShare * (wall - input.roomCelsius);
    return radiatedWatts(0.9, area, wall, input.roomCelsius) + draught;
  }

  #book(watts: ForgeLedger, seconds: number): void {
    for (const key of ['released', 'flue', 'openings', 'shell', 'load'] as const) {
      this.ledger[key] += watts[key] * seconds;
    }
  }
}
