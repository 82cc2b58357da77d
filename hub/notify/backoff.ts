/** When a message that did not get through is tried again. */

const FIRST_MS = 5_000;
const LONGEST_MS = 300_000;
/** What keeps failing, or cannot get better by itself, is tried at this pace for as long as the alarm stands. */
export const SLOW_MS = 900_000;
/** After so many failures in a row a way counts as failing: within 155 s at the longest. */
export const FAILURES_TO_TROUBLE = 6;

/**
 * The wait after the n-th failure in a row (from 1), ms: full jitter, a share of an exponentially growing span
 * (AWS architecture blog 2015, from memory). `jitter` is from 0 to below 1. After `FAILURES_TO_TROUBLE`, or where
 * waiting does not help, the slow pace.
 */
export function retryWaitMs(failures: number, jitter: number, passing: boolean): number {
  if (!passing || failures >= FAILURES_TO_TROUBLE) return SLOW_MS;
  return jitter * Math.min(LONGEST_MS, FIRST_MS * 2 ** (failures - 1));
}
