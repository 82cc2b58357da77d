/**
 * One wall at the other end of the live feed, and the policy for a slow one: what it has not read yet is
 * coalesced (the newest per key), never allowed to grow; after too long without reading it is let go, and its
 * own reconnect brings it a fresh snapshot. Storage is never coalesced; this is only the screen.
 */
export interface FeedSocket {
  readonly bufferedAmount: number;
  send(text: string): void;
  close(code: number, reason: string): void;
}

/** A message of the feed, ready to send, with what it supersedes. */
export interface FeedItem {
  readonly seq: number;
  /** Messages with the same key supersede each other; null: never dropped. */
  readonly key: string | null;
  readonly text: string;
}

/** Unread bytes beyond which nothing more is handed to the socket: about two snapshots of a large shop. */
const MOST_UNREAD_BYTES = 262_144;
/** Without reading for this long a client is let go. */
const MOST_SLOW_MS = 20_000;
/** Messages that may not be dropped (alarms) are bounded too: beyond this the client needs a new snapshot. */
const MOST_PENDING = 2_000;

export class FeedClient {
  readonly #socket: FeedSocket;
  #pending = new Map<string, FeedItem>();
  #slowSince: number | null = null;
  #gone = false;

  constructor(socket: FeedSocket) {
    this.#socket = socket;
  }

  get pendingCount(): number {
    return this.#pending.size;
  }

  /** Hands over what is new. Returns false when the client was let go. */
  offer(items: readonly FeedItem[], now: number): boolean {
    for (const item of items) {
      const key = item.key ?? `seq:${item.seq}`;
      // Taken out first, so that the survivor stands at its own place in the order of sequence numbers.
      this.#pending.delete(key);
      this.#pending.set(key, item);
    }
    return this.flush(now);
  }

  flush(now: number): boolean {
    if (this.#gone) return false;
    for (const [key, item] of this.#pending) {
      if (this.#socket.bufferedAmount > MOST_UNREAD_BYTES) return this.#waitOrLeave(now);
      this.#pending.delete(key);
      this.#socket.send(item.text);
    }
    this.#slowSince = null;
    return true;
  }

  #waitOrLeave(now: number): boolean {
    this.#slowSince ??= now;
    if (now - this.#slowSince <= MOST_SLOW_MS && this.#pending.size <= MOST_PENDING) return true;
    this.#gone = true;
    this.#pending = new Map();
    this.#socket.close(1013, 'too slow: connect again for a fresh snapshot');
    return false;
  }
}
