import { useMemo, useState } from 'preact/hooks';
import type { Faults } from '../parts/faults.ts';
import { faultWords } from '../words/faults.ts';

/** What a form's texts mean: a value to send, or the faults that stand in the way. */
export interface Checked<V> {
  readonly value: V | null;
  readonly faults: Faults;
}

export interface TextForm<T, V> {
  readonly texts: T;
  readonly set: (change: Partial<T>) => void;
  /** The fault to show at a field; an empty field is pointed out only after a try to save. */
  readonly fault: (path: string) => string | undefined;
  /** Every fault to list, once somebody tried to save. */
  readonly listed: Faults;
  /** Marks the try, and hands the value on when there is one. */
  readonly submit: (event: Event, send: (value: V) => void) => void;
}

/** A form that keeps what was typed and checks it at every key. `check` must be the same function while mounted. */
export function useTextForm<T extends object, V>(start: T, check: (texts: T) => Checked<V>): TextForm<T, V> {
  const [texts, setTexts] = useState(start);
  const [tried, setTried] = useState(false);
  const checked = useMemo(() => check(texts), [texts]);
  return {
    texts,
    set: (change) => setTexts((known) => ({ ...known, ...change })),
    fault: (path) => {
      const words = checked.faults[path];
      return tried || words !== faultWords.missing ? words : undefined;
    },
    listed: tried ? checked.faults : {},
    submit: (event, send) => {
      event.preventDefault();
      setTried(true);
      if (checked.value !== null) send(checked.value);
    },
  };
}
