/**
 * The whole simulated shop: a gas forge, an electric oven, the air and the gas
 * cylinder. It knows no clock of its own: `step` is told how long a while was.
 */
import type { BayOptions } from './bays/bay.ts';
import { ForgeBay } from './bays/forge-bay.ts';
import { OvenBay } from './bays/oven-bay.ts';
import type { Behaviour } from './behaviours/behaviour.ts';
import { conditionsAt, cylinderChange } from './behaviours/conditions.ts';
import { SimError } from './errors.ts';
import type { NodeName } from './node-names.ts';
import type { Agenda, FurnaceEvent } from './operators/firing-desk.ts';
import { Cylinder, type CylinderStart } from './plant/cylinder.ts';
import { Probe } from './plant/probe.ts';
import { Room } from './plant/room.ts';
import { PidController, type TemperatureController } from './plant/temperature-controller.ts';
import { seededRandom } from './random.ts';

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

/** The truth at one moment, which no sensor knows. */
export interface Truth {
  readonly atMs: number;
  readonly forge: {
    readonly chamberCelsius: number;
    readonly loadCelsius: number;
    readonly segment: number | null;
  };
  readonly oven: {
    readonly chamberCelsius: number;
    readonly loadCelsius: number;
    readonly segment: number | null;
  };
  readonly supplyGaugePascals: number;
  readonly gasKilogramsPerSecond: number;
  readonly cylinderKilograms: number;
  readonly cylinderCelsius: number;
  readonly coPpm: number;
  /** CO that escapes into the room, kg/s. */
  readonly coKilogramsPerSecond: number;
  readonly airChangesPerHour: number;
}

const MOST_SECONDS = 1;
/** T90 of the CO cell 30 s. Invented, as are the noise figures. */
const CO_PROBE = { lagSeconds: 30 / Math.LN10, noise: 0.4, resolution: 0.1, floor: 0 };
const MASS_PROBE = { lagSeconds: 2, noise: 0.004, resolution: 0.01, floor: 0 };
const FRESH_CYLINDER: CylinderStart = { massKilograms: 8.2, liquidCelsius: 17 };

/** The shop, moved forward by the seconds that somebody else counts. */
export class Shop {
  readonly forgeBay: ForgeBay;
  readonly ovenBay: OvenBay;
  readonly room = new Room();
  readonly events: FurnaceEvent[] = [];
  cylinder: Cylinder;
  readonly #behaviours: readonly Behaviour[];
  readonly #behavioursFromMs: number;
  readonly #coProbe: Probe;
  readonly #massProbe: Probe;
  #nowMs: number;
  #coKilogramsPerSecond = 0;
  #airChangesPerHour = 0;

  constructor(options: ShopOptions) {
    const { seed, startMs, agenda } = options;
    const record = (event: FurnaceEvent) => this.events.push(event);
    const bay = (furnace: 'forge' | 'oven'): BayOptions => ({ furnace, seed, startMs, agenda, record });
    this.forgeBay = new ForgeBay(bay('forge'));
    this.ovenBay = new OvenBay(bay('oven'), options.ovenController ?? new PidController());
    this.cylinder = new Cylinder(options.cylinder ?? FRESH_CYLINDER);
    this.#behaviours = options.behaviours ?? [];
    this.#behavioursFromMs = options.behavioursFromMs ?? startMs;
    this.#coProbe = new Probe(CO_PROBE, seededRandom(seed, 'air/co'), this.room.coPpm);
    this.#massProbe = new Probe(MASS_PROBE, seededRandom(seed, 'gas/mass'), this.cylinder.massKilograms);
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
    const conditions = conditionsAt(this.#behaviours, this.elapsedSeconds);
    const until = (untilMs - this.#behavioursFromMs) / 1000;
    const change = cylinderChange(this.#behaviours, this.elapsedSeconds, until);
    if (change !== null) this.cylinder = new Cylinder(change);
    this.#nowMs = untilMs;
    const flame = this.forgeBay.step(untilMs, this.cylinder, conditions, seconds);
    this.ovenBay.step(untilMs, conditions, seconds);
    this.#coKilogramsPerSecond = flame.carbonMonoxideKilogramsPerSecond * conditions.escapeShare;
    this.#airChangesPerHour = conditions.airChangesPerHour;
    const { airChangesPerHour } = conditions;
    this.room.step(
      { airChangesPerHour, carbonMonoxideKilogramsPerSecond: this.#coKilogramsPerSecond },
      seconds,
    );
    this.#coProbe.step(this.room.coPpm, seconds);
    this.#massProbe.step(this.cylinder.massKilograms, seconds);
  }

  /** What the sensors of a node show now, in the order of {@link channelsOf}. */
  sense(node: NodeName): readonly number[] {
    switch (node) {
      case 'forge-node': {
        const { chamberCelsius, loadCelsius } = this.forgeBay.bay.watched;
        return [chamberCelsius, loadCelsius, this.forgeBay.pressureProbe.reading, this.#massProbe.reading];
      }
      case 'oven-node': {
        const { chamberCelsius, loadCelsius } = this.ovenBay.bay.watched;
        return [chamberCelsius, loadCelsius];
      }
      case 'air-node':
        return [this.#coProbe.reading];
      default:
        return node satisfies never;
    }
  }

  truth(): Truth {
    const { forgeBay, ovenBay } = this;
    return {
      atMs: this.#nowMs,
      forge: {
        chamberCelsius: forgeBay.forge.chamberCelsius,
        loadCelsius: forgeBay.bay.loadCelsius,
        segment: forgeBay.bay.desk.firing === null ? null : forgeBay.bay.desk.walk.index,
      },
      oven: {
        chamberCelsius: ovenBay.oven.chamberCelsius,
        loadCelsius: ovenBay.bay.loadCelsius,
        segment: ovenBay.bay.desk.firing === null ? null : ovenBay.bay.desk.walk.index,
      },
      supplyGaugePascals: forgeBay.gas.supplyGaugePascals,
      gasKilogramsPerSecond: forgeBay.gas.flowKilogramsPerSecond,
      cylinderKilograms: this.cylinder.massKilograms,
      cylinderCelsius: this.cylinder.liquidCelsius,
      coPpm: this.room.coPpm,
      coKilogramsPerSecond: this.#coKilogramsPerSecond,
      airChangesPerHour: this.#airChangesPerHour,
    };
  }
}
