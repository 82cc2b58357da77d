/** The oven's programme: moves the set point along the segments and lets a controller follow it. */
import type { Segment } from '../../hub/contract/schedule.ts';
import type { TemperatureController } from '../plant/temperature-controller.ts';

/** Even "as fast as possible" climbs no faster than this, so that the elements do not run away. Invented. */
const FASTEST_CELSIUS_PER_HOUR = 500;
/** The last stretch is taken ever more gently: hot elements go on giving heat after they are switched off. */
const EASE_IN_CELSIUS = 30;

/** Before this the programme keeps its rate, welded or not. */
const WELDS_WITHIN_CELSIUS = 25;

/** What the programme goes by at one moment. */
export interface OvenView {
  readonly segment: Segment | null;
  readonly chamberCelsius: number;
  /** A contactor that welds shut near the target: full power until the chamber is this far above it. */
  readonly weldedUntilExcessCelsius: number | null;
}

/** Set point and power of the oven. */
export class OvenProgramme {
  readonly #controller: TemperatureController;
  #setCelsius: number | null = null;
  #cameFree = false;

  constructor(controller: TemperatureController) {
    this.#controller = controller;
  }

  /** Starts a new programme from wherever the oven is. */
  start(): void {
    this.#controller.reset();
    this.#setCelsius = null;
    this.#cameFree = false;
  }

  /** Share of full power for the next seconds. */
  step(view: OvenView, seconds: number): number {
    if (view.segment === null) return 0;
    if (this.#isWelded(view, view.segment)) return 1;
    const set = this.#moveSetPoint(view.segment, view.chamberCelsius, seconds);
    return set === null ? 0 : this.#controller.step(set, view.chamberCelsius, seconds);
  }

  #isWelded(view: OvenView, segment: Segment): boolean {
    const excess = view.weldedUntilExcessCelsius;
    if (excess === null || segment.kind === 'cool') {
      this.#cameFree = false;
      return false;
    }
    if (view.chamberCelsius >= segment.targetCelsius + excess) this.#cameFree = true;
    return !this.#cameFree && view.chamberCelsius >= segment.targetCelsius - WELDS_WITHIN_CELSIUS;
  }

  #moveSetPoint(segment: Segment, chamberCelsius: number, seconds: number): number | null {
    const from = this.#setCelsius ?? chamberCelsius;
    switch (segment.kind) {
      case 'ramp': {
        const rate = segment.rateCelsiusPerHour ?? FASTEST_CELSIUS_PER_HOUR;
        const eased = rate * Math.min(1, Math.max(0.1, (segment.targetCelsius - from) / EASE_IN_CELSIUS));
        this.#setCelsius = Math.min(segment.targetCelsius, from + (eased * seconds) / 3600);
        return this.#setCelsius;
      }
      case 'soak':
        this.#setCelsius = segment.targetCelsius;
        return this.#setCelsius;
      case 'cool': {
        const rate = segment.maximumRateCelsiusPerHour;
        if (segment.medium !== 'furnace' || rate === null) return null;
        this.#setCelsius = Math.max(segment.targetCelsius, from - (rate * seconds) / 3600);
        return this.#setCelsius;
      }
      default:
        return segment satisfies never;
    }
  }
}
