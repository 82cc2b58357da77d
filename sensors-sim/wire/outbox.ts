/**
 * What a node has to say and has not yet been told is safe. Bounded: a node has
 * little memory, and beyond the bound the oldest message is given up and counted.
 */
import { SimError } from '../errors.ts';

/** A message with its place in the line. */
export interface Waiting<T> {
  readonly sequence: number;
  readonly message: T;
}

/** A line of messages; those in flight stay in it until they are acknowledged. */
export class Outbox<T> {
  readonly #limit: number;
  #waiting: Waiting<T>[] = [];
  readonly #inFlight = new Map<number, Waiting<T>>();
  #sequence = 0;
  #dropped = 0;

  /** @param limit most messages that wait (those in flight come on top); a whole number above 0 */
  constructor(limit: number) {
    if (!(Number.isInteger(limit) && limit > 0)) {
      throw new SimError('bad-option', `A buffer holds a whole number of messages above 0, not ${limit}`);
    }
    this.#limit = limit;
  }

  /** Messages held, in flight included. */
  get size(): number {
    return this.#waiting.length + this.#inFlight.size;
  }

  get inFlight(): number {
    return this.#inFlight.size;
  }

  /** How many messages were given up for want of room. */
  get dropped(): number {
    return this.#dropped;
  }

  /** Adds a message at the end of the line. */
  push(message: T): void {
    this.#waiting.push({ sequence: this.#sequence, message });
    this.#sequence += 1;
    // Counted without what is in flight: that cannot be called back, and counting it would make a
    // small buffer give up its newest message instead of its oldest.
    while (this.#waiting.length > this.#limit) {
      this.#waiting.shift();
      this.#dropped += 1;
    }
  }

  /** Takes the oldest waiting message into flight. */
  take(): Waiting<T> | null {
    const next = this.#waiting.shift();
    if (next === undefined) return null;
    this.#inFlight.set(next.sequence, next);
    return next;
  }

  /** Forgets a message that the other side has taken over. */
  acknowledge(sequence: number): void {
    this.#inFlight.delete(sequence);
  }

  /** The link is gone: what was in flight goes back to the head of the line, in its old order. */
  recall(): void {
    const back = [...this.#inFlight.values()].sort((one, two) => one.sequence - two.sequence);
    this.#inFlight.clear();
    this.#waiting = [...back, ...this.#waiting];
  }
}
