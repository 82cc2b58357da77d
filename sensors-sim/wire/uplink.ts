/** A node's way to the hub: keeps what it has to say until it was acknowledged. */
import type { NodeName } from '../node-names.ts';
import type { Link } from './link.ts';
import { Outbox, type Waiting } from './outbox.ts';
import { readingsTopic, statusTopic } from './pack.ts';

/** Messages sent ahead of their acknowledgement. Twenty already give nine tenths of the top speed. */
const WINDOW = 20;

/** What an uplink is built from. */
export interface UplinkOptions {
  readonly node: NodeName;
  readonly link: Link;
  /** Most messages held while the hub is away. */
  readonly bufferLimit: number;
  /** Told when the hub is reached, lost, or cannot be reached. */
  readonly report?: (message: string) => void;
}

/** Publishes one node's packs and status. */
export class Uplink {
  readonly node: NodeName;
  readonly #link: Link;
  readonly #outbox: Outbox<string>;
  readonly #report: (message: string) => void;
  #stopped = false;

  constructor(options: UplinkOptions) {
    this.node = options.node;
    this.#link = options.link;
    this.#outbox = new Outbox<string>(options.bufferLimit);
    this.#report = options.report ?? (() => undefined);
  }

  /** Messages not yet acknowledged. */
  get waiting(): number {
    return this.#outbox.size;
  }

  /** Messages given up because the buffer was full. */
  get dropped(): number {
    return this.#outbox.dropped;
  }

  start(): void {
    this.#link.open({
      up: () => this.#came(),
      down: () => this.#went(),
      trouble: (message) => this.#report(`cannot reach the hub: ${message}`),
    });
  }

  /** Puts a pack at the end of the line. */
  send(payload: string): void {
    this.#outbox.push(payload);
    this.#pump();
  }

  /** Takes the node off the network, or lets it back. */
  setLinked(linked: boolean): void {
    if (this.#stopped) return;
    if (linked) this.#link.restore();
    else this.#link.cut();
  }

  /**
   * Says offline and leaves. With acknowledgements outstanding the line is cut
   * instead: the broker then says offline for the node.
   */
  async stop(): Promise<void> {
    this.#stopped = true;
    if (!this.#link.isUp || this.#outbox.inFlight > 0) {
      this.#link.cut();
      return;
    }
    try {
      await this.#link.publish(statusTopic(this.node), 'offline', { qos: 1, retain: true });
      await this.#link.close();
    } catch {
      // The connection broke under the farewell: the last will says the same.
      this.#link.cut();
    }
  }

  #came(): void {
    this.#report('connected');
    // Written before the first pack on the same connection, so it arrives before it.
    this.#link.publish(statusTopic(this.node), 'online', { qos: 1, retain: true }).catch(() => undefined);
    this.#pump();
  }

  #went(): void {
    this.#outbox.recall();
    this.#report(
      `connection lost, ${this.#outbox.size} packs wait (${this.#outbox.dropped} given up so far)`,
    );
  }

  #pump(): void {
    while (this.#link.isUp && !this.#stopped && this.#outbox.inFlight < WINDOW) {
      const next = this.#outbox.take();
      if (next === null) return;
      void this.#deliver(next);
    }
  }

  async #deliver(next: Waiting<string>): Promise<void> {
    try {
      await this.#link.publish(readingsTopic(this.node), next.message, { qos: 1, retain: false });
    } catch {
      // Not acknowledged: `down` recalls it, and the next connection sends it again.
      return;
    }
    this.#outbox.acknowledge(next.sequence);
    this.#pump();
  }
}
