/** What both furnaces have around them: the steel, the probes, the desk of firings. */
import type { Attention } from '../behaviours/conditions.ts';
import { type Agenda, FiringDesk, type FurnaceEvent, type PlannedFiring } from '../operators/firing-desk.ts';
import type { Watched } from '../operators/segment-walk.ts';
import type { FurnaceName } from '../plans.ts';
import { Probe } from '../plant/probe.ts';
import { ROOM_CELSIUS } from '../plant/room.ts';
import { SteelLoad } from '../plant/steel-load.ts';
import { type Random, seededRandom } from '../random.ts';

/** What a bay is built from. */
export interface BayOptions {
  readonly furnace: FurnaceName;
  readonly seed: number;
  readonly startMs: number;
  readonly agenda: Agenda;
  readonly record: (event: FurnaceEvent) => void;
}

/** Thermocouples in quarter-degree steps, as a common digitiser chip answers. Lags and noise invented. */
const CHAMBER_PROBE = { lagSeconds: 8, noise: 0.4, resolution: 0.25, floor: -250 };
const LOAD_PROBE = { lagSeconds: 5, noise: 0.3, resolution: 0.25, floor: -250 };
/** How far above the target a late smith of the plan notices, °C. */
const LATE_CELSIUS = { low: 30, high: 55 };

/** Steel, probes and work order of one furnace. */
export class Bay {
  readonly desk: FiringDesk;
  readonly chamberProbe: Probe;
  readonly loadProbe: Probe;
  load: SteelLoad | null = null;
  readonly #lateness: Random;
  #lateCelsius = 0;

  constructor(options: BayOptions) {
    const stream = (name: string) => seededRandom(options.seed, `${options.furnace}/${name}`);
    this.desk = new FiringDesk(options.furnace, options.agenda, options.startMs, options.record);
    this.chamberProbe = new Probe(CHAMBER_PROBE, stream('chamber'), ROOM_CELSIUS);
    this.loadProbe = new Probe(LOAD_PROBE, stream('load'), ROOM_CELSIUS);
    this.#lateness = stream('lateness');
  }

  get watched(): Watched {
    return { chamberCelsius: this.chamberProbe.reading, loadCelsius: this.loadProbe.reading };
  }

  get loadCelsius(): number {
    return this.load?.celsius ?? ROOM_CELSIUS;
  }

  get loadInside(): SteelLoad | null {
    return this.load?.place === 'furnace' ? this.load : null;
  }

  /** Moves the work order on and the steel to where the new segment wants it; true when a firing began. */
  order(nowMs: number, seconds: number): boolean {
    const change = this.desk.step(nowMs, this.watched, seconds);
    const firing = this.desk.firing;
    if (change === 'started' && firing !== null) {
      this.load = new SteelLoad(firing.plan.load, ROOM_CELSIUS);
      this.#lateCelsius = this.#lateness.between(LATE_CELSIUS.low, LATE_CELSIUS.high);
      return true;
    }
    if (this.load === null) return false;
    const segment = this.desk.walk.segment;
    if (change === 'segment' && segment?.kind === 'cool') this.load.place = segment.medium;
    // A piece that is done lies on the bench, whatever it cooled in.
    if (change === 'ended') this.load.place = 'still-air';
    return false;
  }

  /** How far above the target the watch slips, °C, or null for a good watch. */
  slipCelsius(attention: Attention): number | null {
    if (attention === 'good') return null;
    if (attention !== 'as-planned') return attention.excessCelsius;
    return isLate(this.desk.firing) ? this.#lateCelsius : null;
  }

  /** Cools what lies outside and lets the probes follow. */
  settle(chamberCelsius: number, seconds: number): void {
    this.load?.coolOutside(ROOM_CELSIUS, seconds);
    this.chamberProbe.step(chamberCelsius, seconds);
    this.loadProbe.step(this.loadCelsius, seconds);
  }
}

function isLate(firing: PlannedFiring | null): boolean {
  return firing?.operator === 'late';
}
