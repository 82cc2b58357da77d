/** The list of planned firings, and what an idle shop thinks up when the list is done. */
import { SimError } from '../errors.ts';
import { EVERYDAY_PLANS, type FurnaceName } from '../plans.ts';
import type { Random } from '../random.ts';
import type { Agenda, PlannedFiring } from './firing-desk.ts';

/** Runs a list, in the order of its starts, and nothing after it. */
export class ListedAgenda implements Agenda {
  readonly #left: PlannedFiring[];

  constructor(planned: readonly PlannedFiring[]) {
    this.#left = [...planned].sort((one, two) => one.startMs - two.startMs);
  }

  /** True while something is left to do at a furnace. */
  has(furnace: FurnaceName): boolean {
    return this.#left.some((each) => each.plan.furnace === furnace);
  }

  take(furnace: FurnaceName, nowMs: number): PlannedFiring | null {
    const index = this.#left.findIndex((each) => each.plan.furnace === furnace);
    const next = this.#left[index];
    if (next === undefined || next.startMs > nowMs) return null;
    this.#left.splice(index, 1);
    return next;
  }
}

/** A pause between two invented firings. */
const LEAST_PAUSE_SECONDS = 600;
const MOST_PAUSE_SECONDS = 1500;
/** One invented firing in so many is run by somebody whose mind is elsewhere. */
const LATE_SHARE = 0.2;

/** Runs a list first, then goes on inventing: for a shop that never closes. */
export class EndlessAgenda implements Agenda {
  readonly #listed: ListedAgenda;
  readonly #random: Random;
  readonly #invented = new Map<FurnaceName, PlannedFiring>();

  constructor(planned: readonly PlannedFiring[], random: Random) {
    this.#listed = new ListedAgenda(planned);
    this.#random = random;
  }

  take(furnace: FurnaceName, nowMs: number, idleSinceMs: number): PlannedFiring | null {
    if (this.#listed.has(furnace)) return this.#listed.take(furnace, nowMs);
    const next = this.#invented.get(furnace) ?? this.#invent(furnace, idleSinceMs);
    this.#invented.set(furnace, next);
    if (next.startMs > nowMs) return null;
    this.#invented.delete(furnace);
    return next;
  }

  #invent(furnace: FurnaceName, idleSinceMs: number): PlannedFiring {
    const choices = EVERYDAY_PLANS.filter((plan) => plan.furnace === furnace);
    const plan = choices[Math.floor(this.#random.uniform() * choices.length)] ?? choices[0];
    if (plan === undefined)
      throw new SimError('bad-plan', `There is no plan for the ${furnace} to invent from`);
    const pause = this.#random.between(LEAST_PAUSE_SECONDS, MOST_PAUSE_SECONDS);
    const operator = this.#random.uniform() < LATE_SHARE ? 'late' : 'good';
    return { plan, startMs: idleSinceMs + Math.round(pause) * 1000, operator };
  }
}
