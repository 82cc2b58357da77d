/** One piece of steel with conduction inside it and the heat of transformation, after the hub's own heat model. */
import { type Body, makeBody, type Shape } from '../../hub/physics/heat/body.ts';
import type { Exposure } from '../../hub/physics/heat/exposure.ts';
import type { Material } from '../../hub/physics/heat/material.ts';
import { austeniteShare, type PieceState, startPiece, stepPiece } from '../../hub/physics/heat/piece.ts';
import { transformingSteel } from '../../hub/physics/heat/transforming-steel.ts';

/** A piece as it is put into the fire. */
export interface PieceSize {
  /** What the smith calls it. */
  readonly mark: string;
  readonly shape: Shape;
  /** Thickness of a plate heated on both faces, diameter of a bar or a lump, m. */
  readonly sectionMetres: number;
  readonly massKilograms: number;
  /** Where it lies: by the door it is colder. Default the middle. */
  readonly spot?: 'middle' | 'door';
}

/** What no thermocouple knows of a piece. */
export interface PieceTruth {
  readonly mark: string;
  readonly sectionMetres: number;
  readonly coreCelsius: number;
  readonly surfaceCelsius: number;
  readonly meanCelsius: number;
  /** Share of it that is austenite, 0 to 1. */
  readonly austenite: number;
}

/** Few lumps: their error is far below what a thermocouple shows, and a day of the shop has to run in seconds. */
const INTERVALS = 6;
/** Eutectoid tool steel; made once, its tables are large. */
let toolSteel: Material | undefined;

/** A piece whose temperatures are moved on by what surrounds it. */
export class SteelPiece {
  readonly size: PieceSize;
  readonly squareMetres: number;
  readonly #body: Body;
  #state: PieceState;

  constructor(size: PieceSize, celsius: number, material?: Material) {
    toolSteel ??= transformingSteel();
    this.size = size;
    const { shape, sectionMetres } = size;
    this.#body = makeBody({ shape, sectionMetres, material: material ?? toolSteel, intervals: INTERVALS });
    this.squareMetres = this.#body.surfacePerMassM2Kg * size.massKilograms;
    this.#state = startPiece(this.#body, celsius);
  }

  get surfaceCelsius(): number {
    return this.#state.surfaceCelsius;
  }

  get coreCelsius(): number {
    return this.#state.coreCelsius;
  }

  get meanCelsius(): number {
    return this.#state.meanCelsius;
  }

  /** Stays in these surroundings for some seconds; gives the heat that it took in, J. */
  soak(exposure: Exposure, seconds: number): number {
    const before = this.#state.heatInJKg;
    this.#state = stepPiece(this.#state, { ...exposure, seconds });
    return (this.#state.heatInJKg - before) * this.size.massKilograms;
  }

  /** Rest at one temperature, for a piece that has lain long enough. */
  settle(celsius: number): void {
    this.#state = startPiece(this.#body, celsius);
  }

  truth(): PieceTruth {
    const { mark, sectionMetres } = this.size;
    const { coreCelsius, surfaceCelsius, meanCelsius } = this.#state;
    return {
      mark,
      sectionMetres,
      coreCelsius,
      surfaceCelsius,
      meanCelsius,
      austenite: austeniteShare(this.#state),
    };
  }
}
