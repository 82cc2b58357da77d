/**
 * A small electric oven: elements of limited power around a ceramic muffle, a
 * brick wall behind it, the air inside and the steel. Every figure is invented.
 * Made so that full power at 800 °C lifts the chamber by 5 to 25 °C a minute
 * (common practice, no source): the muffle has to be heated before the air is.
 */
import { radiatedWatts, radiativeConductance } from './heat.ts';
import { Lining, type LiningLayer } from './lining.ts';
import type { SteelLoad } from './steel-load.ts';

/** A muffle of some kilograms with the face of the brick, then insulating brick, 100 mm thick, 0.2 m². */
const LINING: readonly LiningLayer[] = [
  { joulesPerKelvin: 8500, wattsPerKelvinOutward: 2.2 },
  { joulesPerKelvin: 2900, wattsPerKelvinOutward: 1.5 },
  { joulesPerKelvin: 5000, wattsPerKelvinOutward: 1.4 },
];

/** Full power of the elements, W. */
export const OVEN_FULL_WATTS = 3000;

const ELEMENT_JOULES_PER_KELVIN = 250;
const ELEMENT_SQUARE_METRES = 0.06;
const ELEMENT_EMISSIVITY = 0.8;
/** The coils lie in grooves of the muffle's shell, W/K. */
const ELEMENT_CONTACT = 4;
const WALL_SQUARE_METRES = 0.2;
const DOOR_SQUARE_METRES = 0.0225;
const FILM = 25;
/** The air is stirred along the steel. */
const LOAD_FILM = 45;
/** The control probe hangs in the air and sees the wall: half of each. */
const PROBE_AIR_SHARE = 0.5;
/** Steady drop by the door and rise at the back, as shares of what the oven is above the room. */
const FRONT_DROP_SHARE = 0.006;
const BACK_RISE_SHARE = 0.002;
/** The corners follow the middle by this. */
const CORNER_LAG_SECONDS = 120;

/** What the oven is given for one step. */
export interface OvenInput {
  /** 0 to 1 of full power. */
  readonly powerShare: number;
  readonly doorShare: number;
  readonly roomCelsius: number;
  readonly load: SteelLoad | null;
  /** How uneven the oven is, as a multiple of an ordinary one. Default 1. */
  readonly unevenness?: number;
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
  #frontDrop = 0;
  #backRise = 0;

  constructor(celsius: number) {
    this.#lining = new Lining(LINING, celsius);
    this.#elementCelsius = celsius;
    this.#airCelsius = celsius;
  }

  /** What a probe in the middle of the chamber would settle at. */
  get chamberCelsius(): number {
    return PROBE_AIR_SHARE * this.#airCelsius + (1 - PROBE_AIR_SHARE) * this.#lining.hotFaceCelsius;
  }

  /** The corner by the door. */
  get frontCelsius(): number {
    return this.chamberCelsius - this.#frontDrop;
  }

  get backCelsius(): number {
    return this.chamberCelsius + this.#backRise;
  }

  get storedJoules(): number {
    return this.#lining.storedJoules + ELEMENT_JOULES_PER_KELVIN * this.#elementCelsius;
  }

  /** Moves the oven (and the load inside it) forward by at most a second. */
  step(input: OvenInput, seconds: number): void {
    const wall = this.#lining.hotFaceCelsius;
    const electric = OVEN_FULL_WATTS * Math.min(Math.max(input.powerShare, 0), 1);
    const doorAir = 12 * DOOR_SQUARE_METRES * input.doorShare;
    const around = { wallCelsius: wall, gasCelsius: this.#airCelsius, film: LOAD_FILM };
    const gain = input.load?.heat({ ...around, doorDropCelsius: this.#frontDrop }, seconds) ?? NO_GAIN;
    this.#airCelsius = this.#settledAir(input, wall, doorAir, gain.gas);
    const elementToWall = this.#elementWatts(wall);
    const airToWall = FILM * WALL_SQUARE_METRES * (this.#airCelsius - wall);
    const opening = radiatedWatts(0.9, DOOR_SQUARE_METRES * input.doorShare, wall, input.roomCelsius);
    const draught = doorAir * (this.#airCelsius - input.roomCelsius);
    this.#elementCelsius += ((electric - elementToWall) * seconds) / ELEMENT_JOULES_PER_KELVIN;
    const toFace = elementToWall + airToWall - gain.wall - opening;
    const shell = this.#lining.step(toFace, input.roomCelsius, seconds);
    this.#moveCorners(input, seconds);
    this.#book({ electric, door: opening + draught, shell, load: gain.wall + gain.gas }, seconds);
  }

  /** The air holds next to no heat: it settles at once between what touches it. */
  #settledAir(input: OvenInput, wall: number, doorAir: number, loadWatts: number): number {
    const face = FILM * WALL_SQUARE_METRES;
    return (face * wall + doorAir * input.roomCelsius - loadWatts) / (face + doorAir);
  }

  #elementWatts(wall: number): number {
    const radiation = radiativeConductance(
      ELEMENT_EMISSIVITY,
      ELEMENT_SQUARE_METRES,
      this.#elementCelsius,
      wall,
    );
    return (radiation + ELEMENT_CONTACT) * (this.#elementCelsius - wall);
  }

  /** Corners are how the heat lies in the chamber, no store of their own: they stand outside the ledger. */
  #moveCorners(input: OvenInput, seconds: number): void {
    const above = (input.unevenness ?? 1) * (this.chamberCelsius - input.roomCelsius);
    const share = -Math.expm1(-seconds / CORNER_LAG_SECONDS);
    this.#frontDrop += share * (FRONT_DROP_SHARE * above - this.#frontDrop);
    this.#backRise += share * (BACK_RISE_SHARE * above - this.#backRise);
  }

  #book(watts: OvenLedger, seconds: number): void {
    for (const key of ['electric', 'door', 'shell', 'load'] as const) {
      this.ledger[key] += watts[key] * seconds;
    }
  }
}

const NO_GAIN = { wall: 0, gas: 0 };
