import type { AirView } from '../../hub/contract/air.ts';

/** Three questions without an answer. */
const OLD_AFTER_MS = 30_000;

/**
 * Whether an answer may still pass for how it is now.
 *
 * @param nowMs the hub's clock, epoch ms
 */
export function ageOf(view: Pick<AirView, 'now'> | null, nowMs: number): 'none' | 'fresh' | 'old' {
  if (view === null) return 'none';
  return nowMs - view.now > OLD_AFTER_MS ? 'old' : 'fresh';
}
