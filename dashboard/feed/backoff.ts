/** Longest wait before the first attempt to reconnect, and before any. Milliseconds. */
export const FIRST_WAIT_MS = 500;
export const MOST_WAIT_MS = 10_000;

/**
 * Wait before reconnect number `attempt` (0 is the first), full jitter: anywhere between nothing and a bound
 * that doubles, so that many walls do not come back to a restarted hub in the same instant.
 *
 * @param chance a number in [0, 1)
 * @returns milliseconds
 */
export function reconnectWaitMs(attempt: number, chance: number): number {
  const bound = Math.min(MOST_WAIT_MS, FIRST_WAIT_MS * 2 ** Math.min(attempt, 30));
  return Math.floor(chance * bound);
}
