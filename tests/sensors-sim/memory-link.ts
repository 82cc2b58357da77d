/** A link without a network: the test says when it is up and what is acknowledged. */
import type { Link, LinkEvents, PublishOptions } from '../../sensors-sim/wire/link.ts';

export interface Sent {
  readonly topic: string;
  readonly payload: string;
  readonly options: PublishOptions;
  readonly acknowledge: () => void;
}

export class MemoryLink implements Link {
  readonly sent: Sent[] = [];
  isUp = false;
  isWanted = false;
  isClosed = false;
  #events: LinkEvents | null = null;
  #rejects: ((reason: Error) => void)[] = [];

  open(events: LinkEvents): void {
    this.#events = events;
    this.isWanted = true;
  }

  connect(): void {
    this.isUp = true;
    this.#events?.up();
  }

  /** Breaks the connection: nothing outstanding will be acknowledged. */
  lose(): void {
    this.isUp = false;
    for (const reject of this.#rejects.splice(0)) reject(new Error('lost'));
    this.#events?.down();
  }

  cut(): void {
    this.isWanted = false;
    if (this.isUp) this.lose();
  }

  restore(): void {
    this.isWanted = true;
  }

  close(): Promise<void> {
    this.isClosed = true;
    this.isUp = false;
    return Promise.resolve();
  }

  publish(topic: string, payload: string, options: PublishOptions): Promise<void> {
    return new Promise((resolve, reject) => {
      this.#rejects.push(reject);
      this.sent.push({ topic, payload, options, acknowledge: resolve });
    });
  }

  /** Payloads on the readings topic, in the order in which they left. */
  readings(): string[] {
    return this.sent.filter((each) => each.topic.endsWith('/readings')).map((each) => each.payload);
  }
}
