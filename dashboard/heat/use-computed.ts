import { useEffect, useRef, useState } from 'preact/hooks';

/** An answer that follows a form. */
export interface Computed<T> {
  /** The newest answer that came, also while a newer question is out. */
  readonly value: T | null;
  /** False while the form asks something else than `value` answers: it must not pass for the answer. */
  readonly fresh: boolean;
  /** Why the newest question brought nothing. */
  readonly error: unknown;
}

interface Kept<T> {
  readonly key: string;
  readonly value: T | null;
  readonly error: unknown;
}

/** Figures are typed digit by digit; only what stands for this long is asked. */
const SETTLED_MS = 300;

/**
 * Asks anew when `key` changes, once it stands still; null asks nothing. `ask` is told whether its answer is still
 * wanted, so that it can stop between two questions. An answer to an older key is dropped.
 */
export function useComputed<T>(
  key: string | null,
  ask: (isWanted: () => boolean) => Promise<T>,
): Computed<T> {
  const [kept, setKept] = useState<Kept<T> | null>(null);
  const first = useRef(true);
  useEffect(() => {
    if (key === null) return undefined;
    let wanted = true;
    const keep = (value: T | null, error: unknown) =>
      wanted && setKept((before) => ({ key, value: value ?? before?.value ?? null, error }));
    const start = () =>
      void ask(() => wanted).then(
        (value) => keep(value, null),
        (error: unknown) => keep(null, error ?? new Error('no answer')),
      );
    const waiting = setTimeout(start, first.current ? 0 : SETTLED_MS);
    first.current = false;
    return () => {
      wanted = false;
      clearTimeout(waiting);
    };
  }, [key]);
  const fresh = kept !== null && kept.key === key && kept.error === null;
  return { value: kept?.value ?? null, fresh, error: kept?.key === key ? (kept?.error ?? null) : null };
}
