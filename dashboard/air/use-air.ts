import { useEffect, useRef, useState } from 'preact/hooks';
import type { AirView } from '../../hub/contract/air.ts';
import { useShell } from '../shell.ts';
import { ageOf } from './age.ts';

/** Means and doses move slowly; the readings themselves come over the feed. */
const ASK_MS = 10_000;

export interface AirAnswer {
  /** The newest answer that came; null: none yet. */
  readonly view: AirView | null;
  /** Why the newest question brought nothing; null: it brought `view`. */
  readonly error: unknown;
  /** True when `view` must not pass for how it is now. */
  readonly old: boolean;
  /** Asks at once, outside the usual pace. */
  readonly askNow: () => void;
}

/** The hub's view of the air, asked again and again; the last answer stays, and says when it is old. */
export function useAir(): AirAnswer {
  const { api, feed } = useShell();
  const [view, setView] = useState<AirView | null>(null);
  const [error, setError] = useState<unknown>(null);
  const ask = useRef<() => void>(() => undefined);
  const blind = feed.blind.value;
  useEffect(() => {
    let stopped = false;
    let timer: number | undefined;
    let asked = 0;
    const again = () => {
      if (stopped) return;
      window.clearTimeout(timer);
      asked += 1;
      const mine = asked;
      const done = (answer: AirView | null, fault: unknown) => {
        // A slow answer to an older question must not undo a newer one.
        if (stopped || mine !== asked) return;
        if (answer !== null) setView(answer);
        setError(fault);
        timer = window.setTimeout(again, ASK_MS);
      };
      api.air.view().then(
        (answer) => done(answer, null),
        (fault: unknown) => done(null, fault ?? new Error('no answer')),
      );
    };
    ask.current = again;
    again();
    return () => {
      stopped = true;
      window.clearTimeout(timer);
    };
    // Asks at once when the hub goes or comes back.
  }, [blind]);
  const old = blind || ageOf(view, feed.now.value) === 'old';
  return { view, error, old, askNow: () => ask.current() };
}
