import type { FeedWorld, SocketLike } from './feed.ts';

/** The browser as the feed's world. */
export const browserWorld: FeedWorld = {
  open: (address) => new WebSocket(address) as SocketLike,
  steadyMs: () => performance.now(),
  epochMs: () => Date.now(),
  chance: () => Math.random(),
  every: (ms, run) => {
    const timer = window.setInterval(run, ms);
    return () => window.clearInterval(timer);
  },
};

/** Address of the live feed of the hub that served this page. */
export function liveAddress(location: Pick<Location, 'protocol' | 'host'>): string {
  const scheme = location.protocol === 'https:' ? 'wss:' : 'ws:';
  return `${scheme}//${location.host}/api/v1/live`;
}
