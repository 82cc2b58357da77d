/**
 * The whole simulated shop: a gas forge, an electric oven, the air and the gas
 * cylinder. It knows no clock of its own: `step` is told how long a while was.
 */
import { AirSensors } from './air-sensors.ts';
import type { BayOptions } from './bays/bay.ts';
import { ForgeBay, type ForgeOutput } from './bays/forge-bay.ts';
import { OvenBay } from './bays/oven-bay.ts';
import type { Behaviour } from './behaviours/behaviour.ts';
import { type Conditions, conditionsAt } from './behaviours/conditions.ts';
import { cylinderChange } from './behaviours/gas-conditions.ts';
import { CylinderSensors } from './cylinder-sensors.ts';
import { SimError } from './errors.ts';
import type { NodeName } from './node-names.ts';
import type { Agenda, FurnaceEvent } from './operators/firing-desk.ts';
import { Cylinder, type CylinderStart } from './plant/cylinder.ts';
import { Room } from './plant/room.ts';
import { PidController, type TemperatureController } from './plant/temperature-controller.ts';
import { behaviourLabels } from './truth/behaviour-labels.ts';
import type { Label, Truth } from './truth/truth.ts';

/** What a shop is made of. */
export interface ShopOptions {
  readonly seed: number;
  /** Where the shop's clock stands at first, epoch ms. */
  readonly startMs: number;
  readonly agenda: Agenda;
  readonly behaviours?: readonly Behaviour[];
  /** Start of the behaviours' time, epoch ms; `startMs` unless a past comes first. */
  readonly behavioursFromMs?: number;
  readonly cylinder?: CylinderStart;
  /** A PID unless told otherwise. */
  readonly ovenController?: TemperatureController;
}

const MOST_SECONDS = 1;
const FRESH_CYLINDER: CylinderStart = { massKilograms: 8.2, liquidCelsius: 17 };

/** The shop, moved forward by the seconds that somebody else counts. */
export class Shop {
  readonly forgeBay: ForgeBay;
  readonly ovenBay: OvenBay;
  readonly room = new Room();
  readonly events: FurnaceEvent[] = [];
  /** What truly happened, oldest first. */
  readonly labels: Label[] = [];
  cylinder: Cylinder;
  readonly #behaviours: readonly Behaviour[];
  readonly #behavioursFromMs: number;
  readonly #air: AirSensors;
  readonly #gauges: CylinderSensors;
  #nowMs: number;
  #coKilogramsPerSecond = 0;
  #airChangesPerHour = 0;
  #unburntKilogramsPerSecond = 0;

  constructor(options: ShopOptions) {
    const { seed, startMs, agenda } = options;
    const record = (event: FurnaceEvent) => this.events.push(event);
    const label = (each: Label) => this.labels.push(each);
    const bay = (furnace: 'forge' | 'oven'): BayOptions => ({
      furnace,
      seed,
      startMs,
      agenda,
      record,
      label,
    });
    this.forgeBay = new ForgeBay(bay('forge'));
    this.ovenBay = new OvenBay(bay('oven'), options.ovenController ?? new PidController());
    this.cylinder = new Cylinder(options.cylinder ?? FRESH_CYLINDER);
    this.#behaviours = options.behaviours ?? [];
    this.#behavioursFromMs = options.behavioursFromMs ?? startMs;
    this.#air = new AirSensors(seed, this.room);
    this.#gauges = new CylinderSensors(seed, this.cylinder);
    this.#nowMs = startMs;
  }

  get nowMs(): number {
    return this.#nowMs;
  }

  /** Seconds since the behaviours' time began; below 0 in the past before it. */
  get elapsedSeconds(): number {
    return (this.#nowMs - this.#behavioursFromMs) / 1000;
  }

  /**
   * Moves the shop forward in equal parts of at most a second.
   *
   * @param seconds above 0
   * @throws SimError `bad-option`
   */
  step(seconds: number): void {
    if (!(seconds > 0 && Number.isFinite(seconds))) {
      throw new SimError('bad-option', `A shop moves forward by seconds above 0, not by ${seconds}`);
    }
    const parts = Math.ceil(seconds / MOST_SECONDS);
    const startMs = this.#nowMs;
    for (let part = 1; part <= parts; part += 1) {
      this.#part(seconds / parts, startMs + Math.round((seconds * 1000 * part) / parts));
    }
  }

  #part(seconds: number, untilMs: number): void {
    const from = this.elapsedSeconds;
    const conditions = conditionsAt(this.#behaviours, from);
    const until = (untilMs - this.#behavioursFromMs) / 1000;
    const change = cylinderChange(this.#behaviours, from, until);
    if (change !== null) this.cylinder = new Cylinder(change);
    this.labels.push(...behaviourLabels(this.#behaviours, from, until, untilMs));
    this.#nowMs = untilMs;
    const forge = this.forgeBay.step(untilMs, this.cylinder, conditions, seconds);
    this.ovenBay.step(untilMs, conditions, seconds);
    this.#foul(forge, conditions, seconds);
    this.#air.step(this.room, seconds);
    this.#gauges.step(this.cylinder, conditions.gas, seconds);
  }

  #foul(forge: ForgeOutput, { air }: Conditions, seconds: number): void {
    const escaped = forge.flame.carbonMonoxideKilogramsPerSecond * air.escapeShare;
    this.#coKilogramsPerSecond = escaped + air.otherKilogramsPerSecond;
    this.#airChangesPerHour = air.airChangesPerHour;
    this.#unburntKilogramsPerSecond = forge.unburntKilogramsPerSecond;
    this.room.step(
      {
        airChangesPerHour: air.airChangesPerHour,
        carbonMonoxideKilogramsPerSecond: this.#coKilogramsPerSecond,
        burntKilogramsPerSecond: forge.burntKilogramsPerSecond,
        propaneKilogramsPerSecond: forge.unburntKilogramsPerSecond,
        heatWatts: forge.flame.watts,
      },
      seconds,
    );
  }

  /** What the sensors of a node show now, by channel, fitted or not. */
  sense(node: NodeName): Readonly<Record<string, number>> {
    const { forgeBay, ovenBay } = this;
    switch (node) {
      case 'forge-node': {
        const { chamberCelsius: chamber, loadCelsius: load } = forgeBay.bay.watched;
        return { chamber, load, 'supply-pressure': forgeBay.pressureProbe.reading, ...this.#gauges.readings };
      }
      case 'oven-node': {
        const { chamberCelsius: chamber, loadCelsius: load } = ovenBay.bay.watched;
        const [front, back] = [ovenBay.frontProbe.reading, ovenBay.backProbe.reading];
        return { chamber, load, 'chamber-front': front, 'chamber-back': back };
      }
      case 'air-node':
        return this.#air.readings;
      default:
        return node satisfies never;
    }
  }

  truth(): Truth {
    const { forgeBay, ovenBay, room, cylinder } = this;
    const { forge, gas } = forgeBay;
    const { oven } = ovenBay;
    return {
      atMs: this.#nowMs,
      forge: { ...forgeBay.bay.truth(forge.chamberCelsius), burning: forgeBay.isBurning },
      oven: {
        ...ovenBay.bay.truth(oven.chamberCelsius),
        frontCelsius: oven.frontCelsius,
        backCelsius: oven.backCelsius,
      },
      supplyGaugePascals: gas.supplyGaugePascals,
      gasKilogramsPerSecond: gas.flowKilogramsPerSecond,
      escapedGasKilogramsPerSecond: this.#unburntKilogramsPerSecond,
      cylinderKilograms: cylinder.massKilograms,
      cylinderCelsius: cylinder.liquidCelsius,
      cylinderGaugePascals: cylinder.gaugePascals,
      coPpm: room.coPpm,
      coKilogramsPerSecond: this.#coKilogramsPerSecond,
      carbonDioxidePpm: room.carbonDioxidePpm,
      oxygenPpm: room.oxygenPpm,
      propanePpm: room.propanePpm,
      roomCelsius: room.celsius,
      relativeHumidity: room.relativeHumidity,
      airChangesPerHour: this.#airChangesPerHour,
    };
  }
}
