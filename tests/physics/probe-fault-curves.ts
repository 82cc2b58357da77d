/**
 * Constructed firings with a probe that has one known fault.
 *
 * A chamber with a warming terminal block, a healthy control probe, and the
 * probe under test, all read every two seconds by a digitiser of 0.25 °C step.
 */
import { PhysicsError } from '../../hub/physics/errors.ts';
import { defaultProbeFaultRules } from '../../hub/physics/probe-fault-rules.ts';
import {
  type ProbeFaultState,
  type ProbeFinding,
  type ProbeSample,
  stepProbeFaults,
  untouchedProbe,
} from '../../hub/physics/probe-faults.ts';
import { emfMillivolts } from '../../hub/physics/thermocouple.ts';
import { hotJunctionCelsius } from '../../hub/physics/thermocouple-junction.ts';

export const rules = defaultProbeFaultRules('K');
export const everyMs = 2000;
const startMs = 1_700_000_000_000;

/** What surrounds the probe at `seconds` into the firing. */
export interface Moment {
  readonly seconds: number;
  /** True chamber temperature, °C. */
  readonly chamber: number;
  /** True terminal temperature, °C. */
  readonly terminals: number;
  /** Repeatable wander of a live reading, about ±0.35 °C. */
  readonly wander: number;
}

export type Furnace = (seconds: number) => number;
export type Probe = (moment: Moment) => number | null;

/** 20 °C for 2 min, up at 30 °C/min to `top`, hold. */
export const heating =
  (top = 900): Furnace =>
  (seconds) =>
    Math.min(top, 20 + Math.max(0, seconds - 120) * 0.5);

/** A hold at one temperature with the slow swing of a controller. */
export const holding =
  (celsius: number): Furnace =>
  (seconds) =>
    celsius + 1.5 * Math.sin(seconds / 40);

const toStep = (celsius: number) => Math.round(celsius / 0.25) * 0.25;

/** A wander that repeats from run to run: the fractional part of a large multiple. */
function wanderAt(index: number, seed: number): number {
  const x = Math.sin(index * 12.9898 + seed * 78.233) * 43758.5453;
  return (x - Math.floor(x) - 0.5) * 0.7;
}

export const healthy: Probe = ({ chamber, wander }) => toStep(chamber + wander);

/** A healthy probe up to `seconds`, something else from then on. */
export const from =
  (seconds: number, then: Probe): Probe =>
  (moment) =>
    moment.seconds < seconds ? healthy(moment) : then(moment);

/** The emf of the pair with its legs swapped; null where the function has no such emf. */
export const reversed: Probe = ({ chamber, terminals, wander }) => {
  const emf = emfMillivolts('K', chamber + wander) - emfMillivolts('K', terminals);
  try {
    return toStep(hotJunctionCelsius({ type: 'K', millivolts: -emf, coldJunctionCelsius: terminals }));
  } catch (error) {
    if (error instanceof PhysicsError) return null;
    throw error;
  }
};

/** A probe that keeps its value from `seconds` on. */
export function stuckFrom(seconds: number): Probe {
  let kept: number | null = null;
  return (moment) => {
    if (moment.seconds >= seconds && kept !== null) return kept;
    kept = healthy(moment);
    return kept;
  };
}

/** A pair shorted at the terminals reads the terminals. */
export const shorted: Probe = ({ terminals, wander }) => toStep(terminals + wander);

/** First-order lag behind the chamber, as in the middle of a thick piece. */
export function lagging(timeConstantSeconds: number): Probe {
  let core: number | undefined;
  return ({ chamber, wander }) => {
    core = (core ?? chamber) + (chamber - (core ?? chamber)) * (everyMs / 1000 / timeConstantSeconds);
    return toStep(core + wander);
  };
}

export interface Setting {
  readonly seconds?: number;
  readonly seed?: number;
  /** Terminals by seconds; warm by 12 °C over half an hour unless given. */
  readonly terminals?: (seconds: number) => number;
  readonly knowsJunction?: boolean;
  readonly hasOther?: boolean;
  readonly heating?: boolean;
}

export function samplesOf(furnace: Furnace, probe: Probe, setting: Setting = {}): ProbeSample[] {
  const { seconds = 1800, seed = 1, knowsJunction = true, hasOther = true } = setting;
  const terminalsAt = setting.terminals ?? ((at: number) => 22 + 12 * Math.min(1, at / 1800));
  const count = Math.floor((seconds * 1000) / everyMs);
  return Array.from({ length: count }, (_, index) => {
    const at = (index * everyMs) / 1000;
    const terminals = terminalsAt(at);
    const moment = { seconds: at, chamber: furnace(at), terminals, wander: wanderAt(index, seed) };
    return {
      atMs: startMs + index * everyMs,
      celsius: probe(moment),
      heating: setting.heating ?? false,
      ...(knowsJunction ? { coldJunctionCelsius: terminals } : {}),
      others: hasOther ? { control: toStep(furnace(at) + wanderAt(index, seed + 7)) } : {},
    };
  });
}

/** Every finding along a record, one entry a sample. */
export function findingsOf(samples: readonly ProbeSample[]): (ProbeFinding | null)[] {
  let state: ProbeFaultState = untouchedProbe;
  return samples.map((sample) => {
    state = stepProbeFaults(rules, state, sample);
    return state.finding;
  });
}

/** The distinct faults along a record, in order of appearance. */
export function faultsOf(samples: readonly ProbeSample[]): string[] {
  return [...new Set(findingsOf(samples).flatMap((finding) => (finding === null ? [] : [finding.fault])))];
}
