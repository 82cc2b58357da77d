import { type Forecaster, standing } from '../../physics/forecast/forecaster.ts';
import { SECONDS_PER_HOUR } from '../rates.ts';
import type { FiringCase, FiringState } from '../types.ts';

/** Whoever holds the plan is trusted up to the target: a forecast knows nothing of what they will do there. */

/** A ramp that is at most this much faster than planned is following its plan, on-off controllers included. */
const FOLLOWS = 1.25;
/**
 * Nobody who comes to a target gathers speed: a controller that eases in slows, one that cuts off keeps its rate. One
 * that is this much faster than it has been over any five minutes of the ramp is in nobody's hand (a relay that is
 * welded shut, a stuck contactor), plan or none. Ours.
 */
const GATHERS = 1.25;

interface Approach {
  /** The rate of the plan, °C/h; null: as fast as possible. */
  readonly plannedCelsiusPerHour: number | null;
  /** Steepest over five minutes of the ramp, °C per second; null: it has not lasted that long. */
  readonly steepestPerSecond: number | null;
}

/** How the running segment's target is come to; null: no ramp leads there. */
function approachOf(c: FiringCase, state: FiringState): Approach | null {
  for (let i = state.index; i >= 0; i--) {
    const segment = c.schedule.segments[i];
    if (segment?.kind !== 'ramp') continue;
    const steepestPerSecond = state.segments[i]?.steepestPerSecond ?? null;
    return { plannedCelsiusPerHour: segment.rateCelsiusPerHour, steepestPerSecond };
  }
  return null;
}

/** True when something else than the smith's hand follows a plan here. */
export function isFollowingPlan(c: FiringCase, state: FiringState, forecaster: Forecaster): boolean {
  const approach = approachOf(c, state);
  const planned = approach?.plannedCelsiusPerHour ?? null;
  if (planned === null && c.furnaceKind === 'gas-forge') return false;
  const { perSecond } = standing(forecaster);
  if (planned !== null && perSecond * SECONDS_PER_HOUR > planned * FOLLOWS) return false;
  const steepest = approach?.steepestPerSecond ?? null;
  return steepest === null || perSecond <= Math.abs(steepest) * GATHERS;
}
