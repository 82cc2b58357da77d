/**
 * Where a firing stands, as the person at the furnace sees it. This is the
 * simulated smith's own watch, not the hub's judge: the two must not share code.
 */
import type { Segment } from '../../hub/contract/schedule.ts';
import { type Habits, STEADY_HABITS } from './habits.ts';

/** What the smith's own instruments show, °C. */
export interface Watched {
  readonly chamberCelsius: number;
  readonly loadCelsius: number;
}

/** The smith keeps the steel in a little longer than the plan asks. */
const SPARE_SOAK_SECONDS = 45;

/** The smith calls it hot when it is this far inside the band: the needle trembles at the edge. */
const READY_CELSIUS = 1;

/** Goes through the segments of one firing. */
export class SegmentWalk {
  readonly #segments: readonly Segment[];
  #index = 0;
  #soakedSeconds = 0;
  #doneSeconds: number | null = null;

  constructor(segments: readonly Segment[]) {
    this.#segments = segments;
  }

  /** The segment under way, or null when the firing is over. */
  get segment(): Segment | null {
    return this.#segments[this.#index] ?? null;
  }

  get index(): number {
    return this.#index;
  }

  /** Looks at the instruments after some seconds; true when this began a new segment. */
  step(watched: Watched, seconds: number, habits: Habits = STEADY_HABITS): boolean {
    const segment = this.segment;
    if (segment === null || !this.#isOver(segment, watched, seconds, habits)) return false;
    this.#index += 1;
    this.#soakedSeconds = 0;
    this.#doneSeconds = null;
    return true;
  }

  /** Done, and the hand has had its time to do something about it. */
  #isOver(segment: Segment, watched: Watched, seconds: number, habits: Habits): boolean {
    if (this.#doneSeconds !== null) this.#doneSeconds += seconds;
    else if (this.#isDone(segment, watched, seconds, habits)) this.#doneSeconds = 0;
    return this.#doneSeconds !== null && this.#doneSeconds >= habits.reactionSeconds;
  }

  #isDone(segment: Segment, watched: Watched, seconds: number, habits: Habits): boolean {
    const byChamber = habits.goesBy === 'chamber';
    const { chamberCelsius, loadCelsius } = watched;
    const coldest = byChamber ? chamberCelsius : Math.min(chamberCelsius, loadCelsius);
    switch (segment.kind) {
      case 'ramp':
        return coldest >= segment.targetCelsius - segment.toleranceCelsius + READY_CELSIUS;
      case 'soak':
        if (Math.abs(coldest - segment.targetCelsius) <= segment.toleranceCelsius)
          this.#soakedSeconds += seconds;
        return this.#soakedSeconds >= habits.soakShare * segment.durationSeconds + SPARE_SOAK_SECONDS;
      case 'cool':
        return watched.loadCelsius <= segment.targetCelsius;
      default:
        return segment satisfies never;
    }
  }
}
