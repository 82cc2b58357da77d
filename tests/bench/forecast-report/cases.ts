/** The firings of the report: each goes well, and goes wrong. */
import type { BehaviourInput } from '../../../sensors-sim/behaviours/behaviour.ts';
import {
  FORGE_ANNEAL,
  FORGE_NORMALISE,
  OVEN_HARDEN,
  OVEN_TEMPER,
  type Plan,
} from '../../../sensors-sim/plans.ts';
import type { FiringWish } from './firings.ts';

/** A firing that goes well, and how it goes wrong. */
export interface Case {
  readonly name: string;
  readonly plan: Plan;
  /** Minutes that hold heating and soak; the temper's two hours of sameness are cut. */
  readonly minutes: number;
  /** What happens in the bad one; nothing: its operator is late. */
  readonly behaviours?: readonly BehaviourInput[];
}

const OPENED_UP: BehaviourInput = { name: 'overshoot', startSeconds: 38 * 60, excessCelsius: 30 };

export const CASES: readonly Case[] = [
  { name: 'forge anneal, late', plan: FORGE_ANNEAL, minutes: 55 },
  { name: 'forge normalise, late', plan: FORGE_NORMALISE, minutes: 50 },
  { name: 'forge, full fire in soak', plan: FORGE_ANNEAL, minutes: 45, behaviours: [OPENED_UP] },
  { name: 'oven harden, welded', plan: OVEN_HARDEN, minutes: 115 },
  { name: 'oven temper, welded', plan: OVEN_TEMPER, minutes: 65 },
];

/** The good firing behind the full fire in the soak is that of the anneal: count it once. */
export function countsGood({ behaviours }: Case): boolean {
  return behaviours === undefined;
}

export function goodWish({ plan, minutes }: Case, seed: number): FiringWish {
  return { plan, seed, operator: 'good', minutes };
}

export function badWish({ plan, minutes, behaviours }: Case, seed: number): FiringWish {
  if (behaviours === undefined) return { plan, seed, operator: 'late', minutes };
  return { plan, seed, operator: 'good', minutes, behaviours };
}
