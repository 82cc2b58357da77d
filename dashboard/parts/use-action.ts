import { useRef, useState } from 'preact/hooks';

/** Work that a press starts: whether it runs, and what went wrong. */
export interface Action {
  readonly busy: boolean;
  /** For `ProblemNote`; null when the last run went well or is under way. */
  readonly error: unknown;
  /** Starts `work` unless one runs already. Errors land in `error`, never in the console alone. */
  readonly run: (work: () => Promise<void>) => void;
}

export function useAction(): Action {
  const [busy, setBusy] = useState(false);
  const [error, setError] = useState<unknown>(null);
  const running = useRef(false);
  const run = (work: () => Promise<void>) => {
    // A second press within the same frame comes before `busy` has been drawn.
    if (running.current) return;
    running.current = true;
    setBusy(true);
    setError(null);
    work()
      .catch((fault: unknown) => setError(fault))
      .finally(() => {
        running.current = false;
        setBusy(false);
      });
  };
  return { busy, error, run };
}
