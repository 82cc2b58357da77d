/** The scale under the cylinder, and the gauge and thermocouple on it. Lags and noise invented. */
import type { GasConditions } from './behaviours/gas-conditions.ts';
import type { Cylinder } from './plant/cylinder.ts';
import { Probe } from './plant/probe.ts';
import { ROOM_CELSIUS } from './plant/room.ts';
import { seededRandom } from './random.ts';

const SCALE = { lagSeconds: 2, noise: 0.004, resolution: 0.01, floor: 0 };
const GAUGE = { lagSeconds: 0.5, noise: 800, resolution: 1000, floor: 0 };
const WALL = { lagSeconds: 40, noise: 0.1, resolution: 0.25, floor: -60 };

/** What can be read of a cylinder from outside. */
export class CylinderSensors {
  readonly #scale: Probe;
  readonly #gauge: Probe;
  readonly #wall: Probe;

  constructor(seed: number, cylinder: Cylinder) {
    const stream = (name: string) => seededRandom(seed, `gas/${name}`);
    this.#scale = new Probe(SCALE, stream('mass'), cylinder.massKilograms);
    this.#gauge = new Probe(GAUGE, stream('cylinder-pressure'), cylinder.gaugePascals);
    this.#wall = new Probe(WALL, stream('cylinder-wall'), cylinder.wallCelsius(ROOM_CELSIUS));
  }

  step(cylinder: Cylinder, gas: GasConditions, seconds: number): void {
    this.#scale.step(cylinder.massKilograms, seconds);
    // The gauge sits behind the cylinder valve: with that shut it shows nothing, whatever is in the cylinder.
    this.#gauge.step(gas.faults.valveOpen ? cylinder.gaugePascals : 0, seconds);
    this.#wall.step(cylinder.wallCelsius(gas.cylinderAirCelsius), seconds);
  }

  /** By channel. */
  get readings(): Readonly<Record<string, number>> {
    return {
      'cylinder-mass': this.#scale.reading,
      'cylinder-pressure': this.#gauge.reading,
      'cylinder-wall': this.#wall.reading,
    };
  }
}
