import type { Segment } from '../contract/schedule.ts';
import { checkCooling } from './check-cooling.ts';
import { checkGas, checkRating } from './check-furnace.ts';
import { checkSoak } from './check-soak.ts';
import { checkStep } from './check-step.ts';
import type { Fault, PlanFurnace, PlanPiece } from './types.ts';

/** A schedule held against the pieces it is for, before anything gets hot. Pure. */

/** Hours that the gas will last, as a range; null: no scale and no noted fill. */
export interface GasLeft {
  readonly lowHours: number;
  readonly highHours: number;
}

export interface CheckQuestion {
  readonly segments: readonly Segment[];
  readonly furnace: PlanFurnace;
  readonly pieces: readonly PlanPiece[];
  /** What the soak clock will run on. */
  readonly clock: 'core' | 'air';
  readonly wantedHrc: number | null;
  /** Undefined: this furnace burns no gas. */
  readonly gas?: GasLeft | null;
  /** Seconds until the shop closes; null: nobody has said. */
  readonly secondsToClosing: number | null;
}

/** Everything that speaks against the schedule, what is plainly wrong first. */
export function checkPlan(question: CheckQuestion): readonly Fault[] {
  const faults = [
    ...checkRating(question),
    ...question.pieces.flatMap((piece) => [
      ...checkStep(question, piece),
      ...checkSoak(question, piece),
      ...checkCooling(question, piece),
    ]),
    ...checkGas(question),
  ];
  return [...faults].sort((a, b) => Number(a.weight === 'doubt') - Number(b.weight === 'doubt'));
}
