/**
 * A small electric oven: elements of limited power, circulating air, a brick
 * wall of three lumps, and the steel inside. Every figure is invented.
 */
import { radiatedWatts, radiativeConductance } from './heat.ts';
import { Lining, type LiningLayer } from './lining.ts';
import type { SteelLoad } from './steel-load.ts';

/** 0.2 m² of insulating brick, 100 mm thick. */
const LINING: readonly LiningLayer[] = [
  { joulesPerKelvin: 1900, wattsPerKelvinOutward: 2.4 },
  { joulesPerKelvin: 2900, wattsPerKelvinOutward: 1.5 },
  { joulesPerKelvin: 5000, wattsPerKelvinOutward: 1.4 },
];

/** Full power of the elements, W. */
export const OVEN_FULL_WATTS = 3000;

const ELEMENT_JOULES_PER_KELVIN = 250;
const ELEMENT_SQUARE_METRES = 0.06;
const ELEMENT_EMISSIVITY = 0.8;
const WALL_SQUARE_METRES = 0.2;
const DOOR_SQUARE_METRES = 0.0225;
const FILM = 25;
/** The control probe hangs in the air and sees the wall: half of each. */
const PROBE_AIR_SHARE = 0.5;

/** What the oven is given for one step. */
export interface OvenInput {
  /** 0 to 1 of full power. */
  readonly powerShare: number;
  readonly doorShare: number;
  readonly roomCelsius: number;
  readonly load: SteelLoad | null;
}

/** Heat since the oven was built, J: electric = door + shell + load + stored. */
export interface OvenLedger {
  electric: number;
  door: number;
  shell: number;
  load: number;
}

/** The oven's heat balance. */
export class Oven {
  readonly ledger: OvenLedger = { electric: 0, door: 0, shell: 0, load: 0 };
  readonly #lining: Lining;
  #elementCelsius: number;
  #airCelsius: number;

  constructor(celsius: number) {
    this.#lining = new Lining(LINING, celsius);
    this.#elementCelsius = celsius;
    this.#airCelsius = celsius;
  }

  /** What a probe in the chamber would settle at. */
  get chamberCelsius(): number {
    return PROBE_AIR_SHARE * this.#airCelsius + (1 - PROBE_AIR_SHARE) * this.#lining.hotFaceCelsius;
  }

  get storedJoules(): number {
    return this.#lining.storedJoules + ELEMENT_JOULES_PER_KELVIN * this.#elementCelsius;
  }

  /** Moves the oven (and the load inside it) forward by at most a second. */
  step(input: OvenInput, seconds: number): void {
    const wall = this.#lining.hotFaceCelsius;
    const electric = OVEN_FULL_WATTS * Math.min(Math.max(input.powerShare, 0), 1);
    const doorAir = 12 * DOOR_SQUARE_METRES * input.doorShare;
    this.#settleAir(input, wall, doorAir);
    const elementToAir = FILM * ELEMENT_SQUARE_METRES * (this.#elementCelsius - this.#airCelsius);
    const elementToWall = this.#elementRadiation(wall);
    const airToWall = FILM * WALL_SQUARE_METRES * (this.#airCelsius - wall);
    const gain = input.load?.heatGainWatts(wall, this.#airCelsius, FILM) ?? { wall: 0, gas: 0 };
    const opening = radiatedWatts(0.9, DOOR_SQUARE_METRES * input.doorShare, wall, input.roomCelsius);
    const draught = doorAir * (this.#airCelsius - input.roomCelsius);
    this.#elementCelsius += ((electric - elementToAir - elementToWall) * seconds) / ELEMENT_JOULES_PER_KELVIN;
    input.load?.take(gain.wall + gain.gas, seconds);
    const toFace = elementToWall + airToWall - gain.wall - opening;
    const shell = this.#lining.step(toFace, input.roomCelsius, seconds);
    this.#book({ electric, door: opening + draught, shell, load: gain.wall + gain.gas }, seconds);
  }

  /** Air holds next to no heat: it settles at once between what touches it. */
  #settleAir(input: OvenInput, wall: number, doorAir: number): void {
    const element = FILM * ELEMENT_SQUARE_METRES;
    const face = FILM * WALL_SQUARE_METRES;
    const load = FILM * (input.load?.squareMetres ?? 0);
    const brought =
      element * this.#elementCelsius +
      face * wall +
      load * (input.load?.celsius ?? 0) +
      doorAir * input.roomCelsius;
    this.#airCelsius = brought / (element + face + load + doorAir);
  }

  #elementRadiation(wall: number): number {
    const conductance = radiativeConductance(
      ELEMENT_EMISSIVITY,
      ELEMENT_SQUARE_METRES,
      this.#elementCelsius,
      wall,
    );
    return conductance * (this.#elementCelsius - wall);
  }

  #book(watts: OvenLedger, seconds: number): void {
    for (const key of ['electric', 'door', 'shell', 'load'] as const) {
      this.ledger[key] += watts[key] * seconds;
    }
  }
}
