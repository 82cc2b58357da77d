/** The electric oven with its programme, its controller and its probes. */
import type { Conditions } from '../behaviours/conditions.ts';
import { OvenProgramme } from '../operators/oven-programme.ts';
import { Oven } from '../plant/oven.ts';
import { ROOM_CELSIUS } from '../plant/room.ts';
import type { TemperatureController } from '../plant/temperature-controller.ts';
import { Bay, type BayOptions } from './bay.ts';

/** An idle oven this hot is left ajar, so that the next piece does not wait till evening. */
const AJAR_ABOVE_CELSIUS = 60;

/** The oven, moved forward a step at a time. */
export class OvenBay {
  readonly bay: Bay;
  readonly oven = new Oven(ROOM_CELSIUS);
  readonly #programme: OvenProgramme;

  constructor(options: BayOptions, controller: TemperatureController) {
    this.bay = new Bay(options);
    this.#programme = new OvenProgramme(controller);
  }

  step(nowMs: number, conditions: Conditions, seconds: number): void {
    if (this.bay.order(nowMs, seconds)) this.#programme.start();
    const chamberCelsius = this.bay.chamberProbe.reading;
    const segment = this.bay.desk.firing === null ? null : this.bay.desk.walk.segment;
    const weldedUntilExcessCelsius = this.bay.slipCelsius(conditions.attention.oven);
    const powerShare = this.#programme.step({ segment, chamberCelsius, weldedUntilExcessCelsius }, seconds);
    const empty = this.bay.loadInside === null;
    const doorShare = empty && powerShare === 0 && chamberCelsius > AJAR_ABOVE_CELSIUS ? 1 : 0;
    const load = this.bay.loadInside;
    this.oven.step({ powerShare, doorShare, roomCelsius: ROOM_CELSIUS, load }, seconds);
    this.bay.settle(this.oven.chamberCelsius, seconds);
  }
}
