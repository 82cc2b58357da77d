/** Time is an input: everything that needs it is handed a clock. */
export interface Clock {
  /** Epoch milliseconds UTC. */
  now(): number;
  /** Calls `run` about every `ms` until the returned stop is called. */
  every(ms: number, run: () => void): () => void;
  /** Calls `run` once after `ms` unless the returned stop is called first. */
  after(ms: number, run: () => void): () => void;
}

export const systemClock: Clock = {
  now: () => Date.now(),
  every(ms, run) {
    const timer = setInterval(run, ms);
    return () => clearInterval(timer);
  },
  after(ms, run) {
    const timer = setTimeout(run, ms);
    return () => clearTimeout(timer);
  },
};
