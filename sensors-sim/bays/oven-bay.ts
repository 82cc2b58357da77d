/** The electric oven with its programme, its controller and its probes. */
import type { Conditions } from '../behaviours/conditions.ts';
import { OvenProgramme } from '../operators/oven-programme.ts';
import { Oven } from '../plant/oven.ts';
import { Probe } from '../plant/probe.ts';
import { ROOM_CELSIUS } from '../plant/room.ts';
import type { TemperatureController } from '../plant/temperature-controller.ts';
import { seededRandom } from '../random.ts';
import { Bay, type BayOptions, CHAMBER_PROBE } from './bay.ts';

/** An idle oven this hot is left ajar, so that the next piece does not wait till evening. */
const AJAR_ABOVE_CELSIUS = 60;

/** The oven, moved forward a step at a time. */
export class OvenBay {
  readonly bay: Bay;
  readonly oven = new Oven(ROOM_CELSIUS);
  readonly frontProbe: Probe;
  readonly backProbe: Probe;
  readonly #programme: OvenProgramme;

  constructor(options: BayOptions, controller: TemperatureController) {
    this.bay = new Bay(options);
    const corner = (name: string) =>
      new Probe(CHAMBER_PROBE, seededRandom(options.seed, `oven/${name}`), ROOM_CELSIUS);
    this.frontProbe = corner('front');
    this.backProbe = corner('back');
    this.#programme = new OvenProgramme(controller);
  }

  step(nowMs: number, conditions: Conditions, seconds: number): void {
    if (this.bay.order(nowMs, conditions, seconds)) this.#programme.start();
    const chamberCelsius = this.bay.chamberProbe.reading;
    const segment = this.bay.desk.firing === null ? null : this.bay.desk.walk.segment;
    const weldedUntilExcessCelsius = this.bay.slipCelsius(conditions.attention.oven);
    const powerShare = this.#programme.step({ segment, chamberCelsius, weldedUntilExcessCelsius }, seconds);
    const load = this.bay.loadInside;
    const doorShare = load === null && powerShare === 0 && chamberCelsius > AJAR_ABOVE_CELSIUS ? 1 : 0;
    const unevenness = conditions.ovenUnevenness;
    this.oven.step({ powerShare, doorShare, roomCelsius: ROOM_CELSIUS, load, unevenness }, seconds);
    this.frontProbe.step(this.oven.frontCelsius, seconds);
    this.backProbe.step(this.oven.backCelsius, seconds);
    this.bay.settle(nowMs, this.oven.chamberCelsius, conditions, seconds);
  }
}
