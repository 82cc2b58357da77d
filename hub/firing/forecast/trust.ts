import { type Forecaster, standing } from '../../physics/forecast/forecaster.ts';
import { SECONDS_PER_HOUR } from '../rates.ts';
import type { FiringCase, FiringState } from '../types.ts';

/** Whoever holds the plan is trusted up to the target: a forecast knows nothing of what they will do there. */

/** A ramp that is at most this much faster than planned is following its plan, on-off controllers included. */
const FOLLOWS = 1.25;

/** The rate at which the plan comes to the running segment's target, °C/h; undefined: no ramp leads there. */
function plannedRate(c: FiringCase, state: FiringState): number | null | undefined {
  for (let i = state.index; i >= 0; i--) {
    const segment = c.schedule.segments[i];
    if (segment?.kind === 'ramp') return segment.rateCelsiusPerHour;
  }
  return undefined;
}

/** True when something else than the smith's hand follows a plan here. */
export function isFollowingPlan(c: FiringCase, state: FiringState, forecaster: Forecaster): boolean {
  const rate = plannedRate(c, state);
  if (rate === undefined || rate === null) return c.furnaceKind !== 'gas-forge';
  return standing(forecaster).perSecond * SECONDS_PER_HOUR <= rate * FOLLOWS;
}
