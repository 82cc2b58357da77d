/** Simulated firings with their truth, as a forecaster would meet them. */
import type { ProbeReading } from '../../../hub/physics/forecast/forecaster.ts';
import { CHAMBER_PROBE, LOAD_PROBE, type ProbeTraits } from '../../../hub/physics/forecast/furnace-model.ts';
import { type BehaviourInput, behaviour } from '../../../sensors-sim/behaviours/behaviour.ts';
import { conditionsAt } from '../../../sensors-sim/behaviours/conditions.ts';
import type { Plan } from '../../../sensors-sim/plans.ts';
import { ROOM_CELSIUS } from '../../../sensors-sim/plant/room.ts';
import { simulate } from '../../../sensors-sim/run.ts';
import type { FurnaceTruth } from '../../../sensors-sim/truth/truth.ts';

export const START = 1_700_000_000_000;

export interface FiringWish {
  readonly plan: Plan;
  readonly seed: number;
  readonly operator: 'good' | 'late';
  readonly minutes: number;
  readonly behaviours?: readonly BehaviourInput[];
}

export const PLACES = ['chamber', 'load'] as const;
export type Place = (typeof PLACES)[number];

export const TRAITS: Readonly<Record<Place, ProbeTraits>> = { chamber: CHAMBER_PROBE, load: LOAD_PROBE };

/** A second of truth: what each probe would settle at, which is what a forecaster looks for. */
export interface TruePoint {
  readonly atMs: number;
  readonly chamber: number;
  /** The place of the load thermocouple: the steel, and a little of what is around it. */
  readonly load: number;
  /** The surface of the thickest piece. */
  readonly steel: number;
  /** 0 heating up, 1 soak, 2 cooling; null before and after the firing. */
  readonly segment: number | null;
}

export interface Firing {
  readonly wish: FiringWish;
  readonly readings: Readonly<Record<Place, readonly ProbeReading[]>>;
  /** One a second, the first a second after the start. */
  readonly truth: readonly TruePoint[];
}

interface Value {
  readonly n: string;
  readonly v: number;
}

/** Runs one firing of the simulated shop with a reading a second. */
export function fire(wish: FiringWish): Firing {
  const { plan, seed, operator, minutes } = wish;
  const simulation = simulate({
    seed,
    startMs: START,
    seconds: minutes * 60,
    furnacePlan: [{ plan, startMs: START, operator }],
    behaviours: (wish.behaviours ?? []).map(behaviour),
  });
  const topic = `soakwatch/${plan.furnace}-node/readings`;
  const readings: Record<Place, ProbeReading[]> = { chamber: [], load: [] };
  for (const emission of simulation) {
    if (emission.topic !== topic) continue;
    const records = JSON.parse(emission.payload) as readonly Value[];
    for (const place of PLACES) {
      const found = records.find(({ n }) => n.endsWith(place));
      if (found !== undefined) readings[place].push({ atMs: emission.atMs, celsius: found.v });
    }
  }
  const airShare = conditionsAt([], 0).loadProbeAirShare[plan.furnace];
  const truth = simulation.truth.map((each) => trueAt(each.atMs, each[plan.furnace], airShare));
  return { wish, readings, truth };
}

/**
 * A thermocouple wired to a piece shows a little of the furnace too. That is an error of measuring: no forecast of
 * what the probe will show can know of it, and the core model is there to put it right.
 */
function trueAt(atMs: number, truth: FurnaceTruth, airShare: number): TruePoint {
  const { chamberCelsius, loadCelsius: steel, segment } = truth;
  const around = segment === 0 || segment === 1 ? chamberCelsius : ROOM_CELSIUS;
  return { atMs, chamber: chamberCelsius, load: steel + airShare * (around - steel), steel, segment };
}

/** How a node publishes: every so many seconds, with a share of the readings lost, and one hole of three minutes. */
export interface Publishing {
  readonly everySeconds: number;
  readonly lostShare: number;
  readonly hole: boolean;
}

/** Cycled through by the seed, so that no cadence is favoured. */
export const PUBLISHING: readonly Publishing[] = [
  { everySeconds: 1, lostShare: 0, hole: false },
  { everySeconds: 2, lostShare: 0.2, hole: false },
  { everySeconds: 5, lostShare: 0, hole: true },
  { everySeconds: 10, lostShare: 0.2, hole: false },
];

const HOLE = { fromSeconds: 1100, untilSeconds: 1280 };

/** The readings that come through. */
export function published(readings: readonly ProbeReading[], how: Publishing): readonly ProbeReading[] {
  // A small generator of its own (Park and Miller): which readings are lost has to be the same in every run.
  let state = 42;
  return readings.filter((reading) => {
    const second = Math.round((reading.atMs - START) / 1000);
    if (second % how.everySeconds !== 0) return false;
    if (how.hole && second > HOLE.fromSeconds && second < HOLE.untilSeconds) return false;
    state = (state * 16_807) % 2_147_483_647;
    return state / 2_147_483_647 >= how.lostShare;
  });
}
