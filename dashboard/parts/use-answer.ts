import { useEffect, useState } from 'preact/hooks';

/** An answer of the hub that a view waits for. */
export type Answer<T> =
  | { readonly state: 'waiting' }
  | { readonly state: 'here'; readonly value: T }
  | { readonly state: 'failed'; readonly error: unknown };

/** Asks once for each value of `key`, and again when `reload` is called. Late answers to an old key are dropped. */
export function useAnswer<T>(key: string, ask: () => Promise<T>): { answer: Answer<T>; reload: () => void } {
  const [answer, setAnswer] = useState<Answer<T>>({ state: 'waiting' });
  const [round, setRound] = useState(0);
  useEffect(() => {
    let current = true;
    ask().then(
      (value) => current && setAnswer({ state: 'here', value }),
      (error: unknown) => current && setAnswer({ state: 'failed', error }),
    );
    return () => {
      current = false;
    };
  }, [key, round]);
  return { answer, reload: () => setRound((n) => n + 1) };
}
