/** Events in the order in which they happened, and a way to wait for one without a clock. */
export interface Log {
  readonly events: readonly string[];
  add(event: string): void;
  /** Resolves once the event has been seen `times` times. */
  seen(event: string, times?: number): Promise<void>;
}

export function createLog(): Log {
  const events: string[] = [];
  const waiting = new Set<() => void>();
  const count = (event: string) => events.filter((known) => known === event).length;

  return {
    events,
    add(event) {
      events.push(event);
      for (const check of waiting) check();
    },
    seen(event, times = 1) {
      return new Promise((resolve) => {
        const check = () => {
          if (count(event) < times) return;
          waiting.delete(check);
          resolve();
        };
        waiting.add(check);
        check();
      });
    },
  };
}

/** A promise that is opened from outside. */
export interface Gate {
  readonly passed: Promise<void>;
  open(): void;
}

export function createGate(): Gate {
  let open = () => {};
  const passed = new Promise<void>((resolve) => {
    open = resolve;
  });
  return { passed, open: () => open() };
}
