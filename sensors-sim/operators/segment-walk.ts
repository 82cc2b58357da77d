/**
 * Where a firing stands, as the person at the furnace sees it. This is the
 * simulated smith's own watch, not the hub's judge: the two must not share code.
 */
import type { Segment } from '../../hub/contract/schedule.ts';

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
  step(watched: Watched, seconds: number): boolean {
    const segment = this.segment;
    if (segment === null || !this.#isDone(segment, watched, seconds)) return false;
    this.#index += 1;
    this.#soakedSeconds = 0;
    return true;
  }

  #isDone(segment: Segment, watched: Watched, seconds: number): boolean {
    const coldest = Math.min(watched.chamberCelsius, watched.loadCelsius);
    switch (segment.kind) {
      case 'ramp':
        return coldest >= segment.targetCelsius - segment.toleranceCelsius + READY_CELSIUS;
      case 'soak':
        if (Math.abs(coldest - segment.targetCelsius) <= segment.toleranceCelsius)
          this.#soakedSeconds += seconds;
        return this.#soakedSeconds >= segment.durationSeconds + SPARE_SOAK_SECONDS;
      case 'cool':
        return watched.loadCelsius <= segment.targetCelsius;
      default:
        return segment satisfies never;
    }
  }
}
