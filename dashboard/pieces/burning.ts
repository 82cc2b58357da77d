import type { FeedState } from '../feed/state.ts';

/** What the live feed tells of the firings, as far as the bench needs it. Pure. */

/** Changes when a firing begins or ends: what was asked before may be outdated then. */
export function firingsMark(state: FeedState | null | undefined): string {
  return [...(state?.firings.values() ?? [])]
    .map(({ firing }) => `${firing.id} ${firing.status}`)
    .sort((a, b) => a.localeCompare(b))
    .join();
}

/** Ids of the furnaces that are in a firing. */
export function burningFurnaces(state: FeedState | null | undefined): ReadonlySet<string> {
  const running = [...(state?.firings.values() ?? [])].filter(({ firing }) => firing.status === 'running');
  return new Set(running.map(({ firing }) => firing.furnaceId));
}
