import type { Outcome } from '../outcome.ts';

/** What a foreign payload says. */
export interface Decoded {
  readonly value: number;
  /** Epoch milliseconds; null when the payload names no instant. */
  readonly at: number | null;
}

/** Reads a payload, or says why not. It never throws. */
export type Decode = (payload: Uint8Array) => Outcome<Decoded>;
