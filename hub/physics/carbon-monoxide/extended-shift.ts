/**
 * Days and weeks longer than a limit was made for.
 *
 * The Brief and Scala limit is compared with the mean over the shift actually
 * worked; sums divided by 8 h belong to the unreduced limit. Mixing the two
 * counts a long day twice or not at all.
 */
import { requireRange } from '../errors.ts';

const LEAST_HOURS = 1e-3;

/**
 * Factor on a daily limit for a longer day: (8/h)(24-h)/16, never above 1.
 *
 * Source: Brief and Scala's model, published in a digest of the British
 * Columbia regulation 5.50 (0.7, 0.5, 0.25 and 0.1 by bands).
 *
 * @param hoursPerDay above 0, at most 24
 * @throws PhysicsError `out-of-range`
 */
export function dailyShiftFactor(hoursPerDay: number): number {
  const h = requireRange('Hours a day', hoursPerDay, LEAST_HOURS, 24, 'h');
  return Math.min(1, ((8 / h) * (24 - h)) / 16);
}

/**
 * Factor on a daily limit for a longer week: (40/h)(168-h)/128, never above 1.
 *
 * @param hoursPerWeek above 0, at most 168
 * @throws PhysicsError `out-of-range`
 */
export function weeklyShiftFactor(hoursPerWeek: number): number {
  const h = requireRange('Hours a week', hoursPerWeek, LEAST_HOURS, 168, 'h');
  return Math.min(1, ((40 / h) * (168 - h)) / 128);
}

/**
 * The smaller of the daily and the weekly factor: a long shift can only lower a limit.
 *
 * @throws PhysicsError `out-of-range`
 */
export function shiftFactor(hoursPerDay: number, hoursPerWeek = 40): number {
  return Math.min(dailyShiftFactor(hoursPerDay), weeklyShiftFactor(hoursPerWeek));
}
