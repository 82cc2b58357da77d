/** What both furnaces have around them: the steel, the probes, the desk of firings, and the labels of the truth. */
import type { Attention, Conditions } from '../behaviours/conditions.ts';
import { type Agenda, FiringDesk, type FurnaceEvent, type PlannedFiring } from '../operators/firing-desk.ts';
import type { Watched } from '../operators/segment-walk.ts';
import type { FurnaceName } from '../plans.ts';
import { Probe } from '../plant/probe.ts';
import { ROOM_CELSIUS } from '../plant/room.ts';
import { SteelLoad } from '../plant/steel-load.ts';
import { type Random, seededRandom } from '../random.ts';
import { HeatLabels } from '../truth/heat-labels.ts';
import type { FurnaceTruth, Label } from '../truth/truth.ts';

/** What a bay is built from. */
export interface BayOptions {
  readonly furnace: FurnaceName;
  readonly seed: number;
  readonly startMs: number;
  readonly agenda: Agenda;
  readonly record: (event: FurnaceEvent) => void;
  readonly label: (label: Label) => void;
}

/** Thermocouples in quarter-degree steps, as a common digitiser chip answers. Lags and noise invented. */
export const CHAMBER_PROBE = { lagSeconds: 8, noise: 0.4, resolution: 0.25, floor: -250 };
const LOAD_PROBE = { lagSeconds: 5, noise: 0.3, resolution: 0.25, floor: -250 };
/** How far above the target a late smith of the plan notices, °C. */
const LATE_CELSIUS = { low: 30, high: 55 };

/** Steel, probes and work order of one furnace. */
export class Bay {
  readonly furnace: FurnaceName;
  readonly desk: FiringDesk;
  readonly chamberProbe: Probe;
  readonly loadProbe: Probe;
  load: SteelLoad | null = null;
  readonly #labels: HeatLabels;
  readonly #lateness: Random;
  #lateCelsius = 0;

  constructor(options: BayOptions) {
    const stream = (name: string) => seededRandom(options.seed, `${options.furnace}/${name}`);
    this.furnace = options.furnace;
    this.desk = new FiringDesk(options.furnace, options.agenda, options.startMs, options.record);
    this.chamberProbe = new Probe(CHAMBER_PROBE, stream('chamber'), ROOM_CELSIUS);
    this.loadProbe = new Probe(LOAD_PROBE, stream('load'), ROOM_CELSIUS);
    this.#labels = new HeatLabels(options.furnace, options.label);
    this.#lateness = stream('lateness');
  }

  get watched(): Watched {
    return { chamberCelsius: this.chamberProbe.reading, loadCelsius: this.loadProbe.reading };
  }

  /** Surface of the thickest piece, where the load thermocouple is wired on. */
  get loadCelsius(): number {
    return this.load?.thickest.surfaceCelsius ?? ROOM_CELSIUS;
  }

  get loadInside(): SteelLoad | null {
    return this.load?.place === 'furnace' ? this.load : null;
  }

  /** Moves the work order on and the steel to where the new segment wants it; true when a firing began. */
  order(nowMs: number, conditions: Conditions, seconds: number): boolean {
    const change = this.desk.step(nowMs, this.watched, seconds, conditions.habits[this.furnace]);
    const firing = this.desk.firing;
    if (change === 'started' && firing !== null) {
      this.load = new SteelLoad(firing.plan.load, ROOM_CELSIUS);
      this.#lateCelsius = this.#lateness.between(LATE_CELSIUS.low, LATE_CELSIUS.high);
      this.#labels.start();
      return true;
    }
    if (this.load === null) return false;
    const segment = this.desk.walk.segment;
    if (change === 'segment' && segment?.kind === 'cool') this.load.move(segment.medium);
    // A piece that is done lies on the bench, whatever it cooled in.
    if (change === 'ended') this.load.move('still-air');
    return false;
  }

  /** How far above the target the watch slips, °C, or null for a good watch. */
  slipCelsius(attention: Attention): number | null {
    if (attention === 'good') return null;
    if (attention !== 'as-planned') return attention.excessCelsius;
    return isLate(this.desk.firing) ? this.#lateCelsius : null;
  }

  /** Cools what lies outside, lets the probes follow, and labels what truly happened. */
  settle(nowMs: number, chamberCelsius: number, conditions: Conditions, seconds: number): void {
    this.load?.coolOutside(ROOM_CELSIUS, seconds);
    this.chamberProbe.step(chamberCelsius, seconds);
    const around = this.loadInside === null ? ROOM_CELSIUS : chamberCelsius;
    const share = conditions.loadProbeAirShare[this.furnace];
    this.loadProbe.step(this.loadCelsius + share * (around - this.loadCelsius), seconds);
    const inside = this.loadInside?.pieces ?? [];
    const heat = {
      atMs: nowMs,
      segment: this.desk.firing === null ? null : this.desk.walk.segment,
      chamberCelsius,
      hottestCelsius: Math.max(Number.NEGATIVE_INFINITY, ...inside.map((piece) => piece.surfaceCelsius)),
      coreCelsius: this.loadInside?.thickest.coreCelsius ?? Number.NaN,
    };
    this.#labels.step(heat, seconds);
  }

  truth(chamberCelsius: number): FurnaceTruth {
    return {
      chamberCelsius,
      loadCelsius: this.loadCelsius,
      segment: this.desk.firing === null ? null : this.desk.walk.index,
      thickestCoreCelsius: this.load?.thickest.coreCelsius ?? ROOM_CELSIUS,
      thinnestCoreCelsius: this.load?.thinnest.coreCelsius ?? ROOM_CELSIUS,
      pieces: this.load?.truth() ?? [],
      coreSoakSeconds: this.#labels.coreSoakSeconds,
    };
  }
}

function isLate(firing: PlannedFiring | null): boolean {
  return firing?.operator === 'late';
}
