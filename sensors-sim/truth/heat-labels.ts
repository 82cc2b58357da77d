/** Watches the true temperatures of one furnace and says when something happened that a judge should have told. */
import type { Segment } from '../../hub/contract/schedule.ts';
import type { FurnaceName } from '../plans.ts';
import type { Label } from './truth.ts';

/** Over the limit again only after it was this far under it: a hair's breadth is one overshoot, not ten. */
const CLEARED_CELSIUS = 1;

/** The true temperatures at one moment. */
export interface TrueHeat {
  readonly atMs: number;
  /** Of the firing under way; null without one. */
  readonly segment: Segment | null;
  readonly chamberCelsius: number;
  /** Hottest surface of any piece in the furnace. */
  readonly hottestCelsius: number;
  /** Core of the thickest piece in the furnace. */
  readonly coreCelsius: number;
}

/** The labels of one furnace. */
export class HeatLabels {
  readonly #furnace: FurnaceName;
  readonly #record: (label: Label) => void;
  readonly #over = { chamber: false, load: false };
  #arrived = false;
  coreSoakSeconds = 0;

  constructor(furnace: FurnaceName, record: (label: Label) => void) {
    this.#furnace = furnace;
    this.#record = record;
  }

  /** A new firing begins. */
  start(): void {
    this.#arrived = false;
    this.coreSoakSeconds = 0;
  }

  step(heat: TrueHeat, seconds: number): void {
    const { segment } = heat;
    const heated = segment !== null && segment.kind !== 'cool' ? segment : null;
    const limit = heated === null ? null : heated.targetCelsius + heated.toleranceCelsius;
    this.#watch('chamber', heat.chamberCelsius, limit, heat.atMs);
    this.#watch('load', heat.hottestCelsius, limit, heat.atMs);
    if (heated === null) return;
    const inside = Math.abs(heat.coreCelsius - heated.targetCelsius) <= heated.toleranceCelsius;
    if (inside && heated.kind === 'soak') this.coreSoakSeconds += seconds;
    if (!inside || this.#arrived) return;
    this.#arrived = true;
    this.#record({
      what: 'core-arrived',
      atMs: heat.atMs,
      furnace: this.#furnace,
      celsius: heat.coreCelsius,
    });
  }

  #watch(place: 'chamber' | 'load', celsius: number, limit: number | null, atMs: number): void {
    const was = this.#over[place];
    const isOver = limit !== null && celsius > (was ? limit - CLEARED_CELSIUS : limit);
    if (isOver === was) return;
    this.#over[place] = isOver;
    // The end of a heated segment ends the overshoot too: there is no limit any more.
    const limitCelsius = limit ?? celsius;
    const what = isOver ? 'overshoot-began' : 'overshoot-ended';
    this.#record({ what, atMs, furnace: this.#furnace, place, celsius, limitCelsius });
  }
}
