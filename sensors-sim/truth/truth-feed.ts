/** The truth over MQTT, beside the readings: for whoever compares, never for the hub, which does not subscribe to it. */
import type { Link } from '../wire/link.ts';
import { LABEL_TOPIC, type Label, TRUTH_TOPIC, type Truth } from './truth.ts';

/** Where the truth comes from. */
export interface TruthSource {
  readonly nowMs: number;
  readonly labels: readonly Label[];
  truth(): Truth;
}

/** Publishes the newest truth and every label once. A truth that cannot be sent now is not kept. */
export class TruthFeed {
  readonly #link: Link;
  #toldMs = Number.NEGATIVE_INFINITY;
  #labelled = 0;

  constructor(link: Link) {
    this.#link = link;
  }

  start(): void {
    this.#link.open({ up: () => undefined, down: () => undefined, trouble: () => undefined });
  }

  /** Tells what is new; nothing when the shop has not moved on or nobody can be reached. */
  tell(source: TruthSource): void {
    if (!this.#link.isUp || source.nowMs <= this.#toldMs) return;
    this.#toldMs = source.nowMs;
    this.#send(TRUTH_TOPIC, source.truth());
    for (const label of source.labels.slice(this.#labelled)) this.#send(LABEL_TOPIC, label);
    this.#labelled = source.labels.length;
  }

  async stop(): Promise<void> {
    await this.#link.close();
  }

  #send(topic: string, said: Truth | Label): void {
    // Lost with the connection: the next truth says more than this one did.
    this.#link.publish(topic, JSON.stringify(said), { qos: 0, retain: false }).catch(() => undefined);
  }
}
