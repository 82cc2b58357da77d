/** Lets results out in the order in which the work arrived, whatever order the work is finished in. */
export interface ReleaseQueue {
  /** `release` is called with null, or with why the work failed, after all earlier ones have been called. */
  add(work: Promise<void>, release: (fault: unknown) => void): void;
}

interface Held {
  readonly release: (fault: unknown) => void;
  done: boolean;
  fault: unknown;
}

/** MQTT 3.1.1 [MQTT-4.6.0-2]: acknowledgements leave in the order in which the messages came. */
export function createReleaseQueue(): ReleaseQueue {
  const held: Held[] = [];

  function settle(entry: Held, fault: unknown): void {
    entry.done = true;
    entry.fault = fault;
    for (let first = held[0]; first?.done; first = held[0]) {
      held.shift();
      first.release(first.fault);
    }
  }

  return {
    add(work, release) {
      const entry: Held = { release, done: false, fault: null };
      held.push(entry);
      work.then(
        () => settle(entry, null),
        (fault: unknown) => settle(entry, fault ?? new Error('refused without a reason')),
      );
    },
  };
}
