/** What drives the oven's elements towards a set point: a PID with limits, or a plain thermostat. */

/** Gives the share of full power, 0 to 1, for a set point and a measured temperature. */
export interface TemperatureController {
  step(setCelsius: number, measuredCelsius: number, seconds: number): number;
  reset(): void;
}

/** Tuning of the PID. Shares of full power per °C, per °C·s and per °C/s. */
export interface PidTuning {
  readonly proportional: number;
  readonly integral: number;
  readonly derivative: number;
}

/** Invented; found by trying it on the simulated oven from 200 to 850 °C. */
export const OVEN_PID: PidTuning = { proportional: 0.07, integral: 0.0001, derivative: 4 };

/** A PID whose derivative looks at the measurement only (a new set point is no kick). */
export class PidController implements TemperatureController {
  readonly #tuning: PidTuning;
  #sum = 0;
  #smooth: number | null = null;
  #lastSet: number | null = null;

  constructor(tuning: PidTuning = OVEN_PID) {
    this.#tuning = tuning;
  }

  step(setCelsius: number, measuredCelsius: number, seconds: number): number {
    const before = this.#smooth ?? measuredCelsius;
    // Quarter-degree steps would make the raw derivative a row of spikes.
    this.#smooth = before + (measuredCelsius - before) * Math.min(1, seconds / 20);
    const slope = (this.#smooth - before) / seconds;
    const error = setCelsius - measuredCelsius;
    const { proportional, integral, derivative } = this.#tuning;
    const wanted = proportional * error + this.#sum - derivative * slope;
    const share = Math.min(1, Math.max(0, wanted));
    // A climbing set point always runs ahead, and an output at a stop cannot do more: neither may
    // wind up the sum, which would be paid back as overshoot.
    if (setCelsius === this.#lastSet && share === wanted) {
      this.#sum = Math.min(1, Math.max(-0.2, this.#sum + integral * error * seconds));
    }
    this.#lastSet = setCelsius;
    return share;
  }

  reset(): void {
    this.#sum = 0;
    this.#smooth = null;
    this.#lastSet = null;
  }
}

/** On below the set point less half the band, off above it plus half the band. */
export class HysteresisController implements TemperatureController {
  readonly #bandCelsius: number;
  #on = false;

  constructor(bandCelsius: number) {
    this.#bandCelsius = bandCelsius;
  }

  step(setCelsius: number, measuredCelsius: number): number {
    if (measuredCelsius <= setCelsius - this.#bandCelsius / 2) this.#on = true;
    if (measuredCelsius >= setCelsius + this.#bandCelsius / 2) this.#on = false;
    return this.#on ? 1 : 0;
  }

  reset(): void {
    this.#on = false;
  }
}
