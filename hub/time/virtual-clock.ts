import type { Clock } from './clock.ts';

interface Due {
  at: number;
  readonly every: number | null;
  readonly run: () => void;
}

/** A clock that stands still until told to move: for tests and for replays. */
export interface VirtualClock extends Clock {
  /** Moves on by `ms`, running what falls due on the way, in order. */
  advance(ms: number): void;
}

export function virtualClock(start: number): VirtualClock {
  let now = start;
  const due = new Set<Due>();

  function add(ms: number, every: number | null, run: () => void): () => void {
    const entry: Due = { at: now + ms, every, run };
    due.add(entry);
    return () => due.delete(entry);
  }

  function next(until: number): Due | undefined {
    let first: Due | undefined;
    for (const entry of due) {
      if (entry.at <= until && (first === undefined || entry.at < first.at)) first = entry;
    }
    return first;
  }

  return {
    now: () => now,
    every: (ms, run) => add(ms, ms, run),
    after: (ms, run) => add(ms, null, run),
    advance(ms) {
      const until = now + ms;
      for (let entry = next(until); entry; entry = next(until)) {
        now = Math.max(now, entry.at);
        if (entry.every === null) due.delete(entry);
        else entry.at += entry.every;
        entry.run();
      }
      now = until;
    },
  };
}
