/** Which firing is on at a furnace, and which comes next. */
import type { FurnaceName, Plan } from '../plans.ts';
import { type Habits, STEADY_HABITS } from './habits.ts';
import { SegmentWalk, type Watched } from './segment-walk.ts';

/** A firing that somebody means to run. */
export interface PlannedFiring {
  readonly plan: Plan;
  /** Not before this; a furnace that is still too hot starts later. */
  readonly startMs: number;
  /** `late`: turns the heat down only far above the target. */
  readonly operator: 'good' | 'late';
  /** What differs from a steady hand. */
  readonly habits?: Partial<Habits>;
}

/** Where the next firing of a furnace comes from. */
export interface Agenda {
  /** The next firing that is due, or null; a firing is handed out once. */
  take(furnace: FurnaceName, nowMs: number, idleSinceMs: number): PlannedFiring | null;
}

/** Something that happened at a furnace, for the record of truth. */
export interface FurnaceEvent {
  readonly atMs: number;
  readonly furnace: FurnaceName;
  readonly plan: string;
  readonly what: 'started' | 'segment' | 'ended';
  readonly segmentIndex: number;
}

/** A firing may only start this far below its first target. */
const COOL_ENOUGH_CELSIUS = 40;

/** Keeps the order of work at one furnace. */
export class FiringDesk {
  readonly #furnace: FurnaceName;
  readonly #agenda: Agenda;
  readonly #record: (event: FurnaceEvent) => void;
  #firing: PlannedFiring | null = null;
  #waiting: PlannedFiring | null = null;
  #walk = new SegmentWalk([]);
  #idleSinceMs: number;

  constructor(furnace: FurnaceName, agenda: Agenda, startMs: number, record: (event: FurnaceEvent) => void) {
    this.#furnace = furnace;
    this.#agenda = agenda;
    this.#record = record;
    this.#idleSinceMs = startMs;
  }

  get firing(): PlannedFiring | null {
    return this.#firing;
  }

  get walk(): SegmentWalk {
    return this.#walk;
  }

  /** Moves on by some seconds; tells what began. */
  step(
    nowMs: number,
    watched: Watched,
    seconds: number,
    forced: Partial<Habits> = {},
  ): 'started' | 'segment' | 'ended' | 'nothing' {
    if (this.#firing === null) return this.#startNext(nowMs, watched) ? 'started' : 'nothing';
    const habits = { ...STEADY_HABITS, ...this.#firing.habits, ...forced };
    if (!this.#walk.step(watched, seconds, habits)) return 'nothing';
    if (this.#walk.segment !== null) {
      this.#note('segment', nowMs);
      return 'segment';
    }
    this.#note('ended', nowMs);
    this.#firing = null;
    this.#idleSinceMs = nowMs;
    return 'ended';
  }

  #startNext(nowMs: number, watched: Watched): boolean {
    this.#waiting ??= this.#agenda.take(this.#furnace, nowMs, this.#idleSinceMs);
    const first = this.#waiting?.plan.segments[0];
    if (this.#waiting === null || first === undefined) return false;
    if (watched.chamberCelsius > first.targetCelsius - COOL_ENOUGH_CELSIUS) return false;
    this.#firing = this.#waiting;
    this.#waiting = null;
    this.#walk = new SegmentWalk(this.#firing.plan.segments);
    this.#note('started', nowMs);
    return true;
  }

  #note(what: FurnaceEvent['what'], atMs: number): void {
    const plan = this.#firing?.plan.name ?? '';
    this.#record({ atMs, furnace: this.#furnace, plan, what, segmentIndex: this.#walk.index });
  }
}
