/** One firing of the simulated shop, read to its end. */
import { type BehaviourInput, behaviour } from '../../sensors-sim/behaviours/behaviour.ts';
import { FITTINGS, type Fitting, type NodeName } from '../../sensors-sim/node-names.ts';
import type { PlannedFiring } from '../../sensors-sim/operators/firing-desk.ts';
import type { Plan } from '../../sensors-sim/plans.ts';
import { type Emission, type Simulation, simulate } from '../../sensors-sim/run.ts';
import type { Truth } from '../../sensors-sim/truth/truth.ts';
import { arrivals } from './packs.ts';

export const START = 1_700_000_000_000;

export interface Case {
  /** Null: nothing is fired. */
  readonly plan: Plan | null;
  readonly minutes: number;
  readonly seed?: number;
  readonly operator?: PlannedFiring['operator'];
  readonly habits?: PlannedFiring['habits'];
  readonly behaviours?: readonly BehaviourInput[];
  readonly every?: number;
  readonly fittings?: readonly Fitting[];
}

export interface Fired extends Pick<Simulation, 'truth' | 'events' | 'labels'> {
  readonly emissions: readonly Emission[];
  /** Values of one channel by the second since the start. */
  readings(node: NodeName, channel: string): readonly { readonly seconds: number; readonly value: number }[];
  /** The truth at a minute since the start. */
  at(minute: number): Truth;
}

export function prepare(wanted: Case): Simulation {
  const { plan, operator = 'good', habits = {} } = wanted;
  return simulate({
    seed: wanted.seed ?? 1,
    startMs: START,
    seconds: wanted.minutes * 60,
    publishEverySeconds: wanted.every ?? 5,
    furnacePlan: plan === null ? [] : [{ plan, startMs: START, operator, habits }],
    behaviours: (wanted.behaviours ?? []).map(behaviour),
    fittings: wanted.fittings ?? FITTINGS,
  });
}

export function fire(wanted: Case): Fired {
  const simulation = prepare(wanted);
  const emissions = [...simulation];
  const { truth, events, labels } = simulation;
  return {
    emissions,
    truth,
    events,
    labels,
    readings: (node, channel) =>
      arrivals(emissions, node, channel).map(({ atMs, value }) => ({
        seconds: (atMs - START) / 1000,
        value,
      })),
    at: (minute) => {
      const found = truth.find((each) => each.atMs >= START + minute * 60_000);
      if (found === undefined) throw new Error(`the simulation ends before minute ${minute}`);
      return found;
    },
  };
}
