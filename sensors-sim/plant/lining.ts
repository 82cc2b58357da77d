/** A furnace wall as a row of lumps from the hot face to the shell. */

/** One lump, and how well it conducts to the next one outward (the last: to the room). */
export interface LiningLayer {
  readonly joulesPerKelvin: number;
  readonly wattsPerKelvinOutward: number;
}

/** The wall's temperatures, moved forward by the heat that enters its hot face. */
export class Lining {
  readonly #layers: readonly LiningLayer[];
  readonly #celsius: number[];

  constructor(layers: readonly LiningLayer[], celsius: number) {
    this.#layers = layers;
    this.#celsius = layers.map(() => celsius);
  }

  get hotFaceCelsius(): number {
    return this.#celsius[0] ?? Number.NaN;
  }

  /** Heat held above 0 °C, J. */
  get storedJoules(): number {
    return this.#layers.reduce((sum, layer, index) => sum + layer.joulesPerKelvin * this.#at(index), 0);
  }

  /**
   * Moves the wall forward; every layer's time constant must be far above `seconds`.
   *
   * @returns W given to the room through the shell
   */
  step(hotFaceWatts: number, roomCelsius: number, seconds: number): number {
    let inward = hotFaceWatts;
    const before = [...this.#celsius, roomCelsius];
    this.#layers.forEach((layer, index) => {
      const outward = layer.wattsPerKelvinOutward * ((before[index] ?? 0) - (before[index + 1] ?? 0));
      this.#celsius[index] = this.#at(index) + ((inward - outward) * seconds) / layer.joulesPerKelvin;
      inward = outward;
    });
    return inward;
  }

  #at(index: number): number {
    return this.#celsius[index] ?? Number.NaN;
  }
}
