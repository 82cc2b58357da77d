import type { Achieved } from './achieved.ts';
import type { PieceHeat } from './heat.ts';
import { doubt, good, note, type Reason, wrong } from './types.ts';

/** Whether the middle of the piece had the time at heat that was planned. */

/** The curve is thinned and on a grid: less than this is not missing, s. Or this share of what was planned. */
const GRID_SECONDS = 30;
const GRID_SHARE = 0.02;
/** Less than this share by the coldest assumption leaves doubts: as the judge of segments has it. */
const UNSURE_SHARE = 0.5;

export function coreReasons(heat: PieceHeat, achieved: Achieved): Reason[] {
  return [...basisReasons(heat), ...soakReasons(heat, achieved)];
}

function basisReasons({ basis, between, points }: PieceHeat): Reason[] {
  if (points.length < 2) return [wrong('nothing-measured')];
  if (basis === 'air') return [doubt('judged-by-air')];
  if (basis === 'probe-on-load') return [note('probe-on-load')];
  return between ? [note('core-of-slower')] : [];
}

function soakReasons(
  heat: PieceHeat,
  { main, soakSeconds, lowSoakSeconds, heldCelsius }: Achieved,
): Reason[] {
  if (main === null || soakSeconds === null || heat.basis === 'air') return [];
  const plannedSeconds = main.soak.durationSeconds;
  const params = {
    soakSeconds,
    plannedSeconds,
    targetCelsius: main.soak.targetCelsius,
    reachedCelsius: heldCelsius,
  };
  // By the middle of a slower piece too little is no proof: its own may have been there long before.
  const little = heat.between ? doubt : wrong;
  if (soakSeconds === 0 && plannedSeconds > 0) return [little('core-not-reached', params)];
  const slack = Math.max(GRID_SECONDS, plannedSeconds * GRID_SHARE);
  if (soakSeconds < plannedSeconds - slack) return [little('core-short', params)];
  const lowSeconds = lowSoakSeconds ?? 0;
  if (heat.basis === 'core' && lowSeconds < plannedSeconds * UNSURE_SHARE) {
    return [good('core-soaked', params), doubt('core-unsure', { ...params, lowSeconds })];
  }
  return [good('core-soaked', params)];
}
