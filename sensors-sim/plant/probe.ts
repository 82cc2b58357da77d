/** A sensor: it lags behind the truth, trembles, and answers in steps. */
import type { Random } from '../random.ts';

/** How a sensor falls short of the truth, in the unit of what it measures. */
export interface ProbeTraits {
  /** First-order lag. A T90 is 2.303 of these. */
  readonly lagSeconds: number;
  /** Standard deviation of the noise. */
  readonly noise: number;
  /** Least difference that it can show. */
  readonly resolution: number;
  /** It never reads below this. */
  readonly floor: number;
}

/** A sensor following one quantity. */
export class Probe {
  readonly #traits: ProbeTraits;
  readonly #random: Random;
  #lagged: number;
  #shown: number;

  constructor(traits: ProbeTraits, random: Random, start: number) {
    this.#traits = traits;
    this.#random = random;
    this.#lagged = start;
    this.#shown = start;
  }

  /** The newest reading. */
  get reading(): number {
    return this.#shown;
  }

  step(truth: number, seconds: number): void {
    const { lagSeconds, noise, resolution, floor } = this.#traits;
    const share = lagSeconds > 0 ? -Math.expm1(-seconds / lagSeconds) : 1;
    this.#lagged += share * (truth - this.#lagged);
    const trembling = this.#lagged + noise * this.#random.normal();
    this.#shown = Math.max(floor, Math.round(trembling / resolution) * resolution);
  }
}
