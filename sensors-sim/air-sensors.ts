/** The sensors in the room. T90 of a CO cell 30 s, of an infrared cell 60 s; these and the noise are invented. */
import { Probe } from './plant/probe.ts';
import type { Room } from './plant/room.ts';
import { seededRandom } from './random.ts';

const CO = { lagSeconds: 30 / Math.LN10, noise: 0.4, resolution: 0.1, floor: 0 };
const CARBON_DIOXIDE = { lagSeconds: 60 / Math.LN10, noise: 8, resolution: 1, floor: 0 };
/** As a share of the air. */
const OXYGEN = { lagSeconds: 25 / Math.LN10, noise: 0.0002, resolution: 0.0001, floor: 0 };
const HUMIDITY = { lagSeconds: 20, noise: 0.2, resolution: 0.1, floor: 0 };
const THERMOMETER = { lagSeconds: 60, noise: 0.05, resolution: 0.1, floor: -40 };

/** Everything that a shop may hang on its wall. */
export class AirSensors {
  readonly #probes: Readonly<Record<string, Probe>>;

  constructor(seed: number, room: Room) {
    const stream = (name: string) => seededRandom(seed, `air/${name}`);
    this.#probes = {
      co: new Probe(CO, stream('co'), room.coPpm),
      'co-corner': new Probe(CO, stream('co-corner'), room.cornerCoPpm),
      co2: new Probe(CARBON_DIOXIDE, stream('co2'), room.carbonDioxidePpm),
      o2: new Probe(OXYGEN, stream('o2'), room.oxygenPpm / 1e6),
      humidity: new Probe(HUMIDITY, stream('humidity'), room.relativeHumidity),
      room: new Probe(THERMOMETER, stream('room'), room.celsius),
    };
  }

  step(room: Room, seconds: number): void {
    this.#probes.co?.step(room.coPpm, seconds);
    this.#probes['co-corner']?.step(room.cornerCoPpm, seconds);
    this.#probes.co2?.step(room.carbonDioxidePpm, seconds);
    this.#probes.o2?.step(room.oxygenPpm / 1e6, seconds);
    this.#probes.humidity?.step(room.relativeHumidity, seconds);
    this.#probes.room?.step(room.celsius, seconds);
  }

  /** By channel. */
  get readings(): Readonly<Record<string, number>> {
    return Object.fromEntries(Object.entries(this.#probes).map(([name, probe]) => [name, probe.reading]));
  }
}
