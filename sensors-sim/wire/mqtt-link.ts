/**
 * A link over MQTT 3.1.1. Every connection is a client of its own: mqtt.js would
 * otherwise keep and resend messages by itself, beyond the bound of the outbox.
 */
import mqtt, { type MqttClient } from 'mqtt';
import type { Link, LinkEvents, PublishOptions } from './link.ts';

/** Where a link goes and what is said when it breaks. */
export interface MqttLinkOptions {
  readonly url: string;
  readonly clientId: string;
  /** Retained at QoS 1 by the broker when the connection is lost; null: nothing. */
  readonly will: { readonly topic: string; readonly payload: string } | null;
  /** Wait before the next attempt, ms. Default 1000. */
  readonly retryMs?: number;
}

/** One node's connection to the broker. */
export class MqttLink implements Link {
  readonly #options: MqttLinkOptions;
  #events: LinkEvents | null = null;
  #client: MqttClient | null = null;
  #retry: NodeJS.Timeout | null = null;
  #wanted = false;
  #isUp = false;

  constructor(options: MqttLinkOptions) {
    this.#options = options;
  }

  get isUp(): boolean {
    return this.#isUp;
  }

  open(events: LinkEvents): void {
    this.#events = events;
    this.restore();
  }

  restore(): void {
    if (this.#wanted) return;
    this.#wanted = true;
    this.#connect();
  }

  cut(): void {
    this.#leave();
    const client = this.#client;
    // Destroying the socket without a DISCONNECT makes the broker publish the will.
    if (client !== null) this.#lost(client);
  }

  async close(): Promise<void> {
    this.#leave();
    const client = this.#client;
    if (client === null) return;
    this.#client = null;
    this.#isUp = false;
    await client.endAsync();
  }

  async publish(topic: string, payload: string, options: PublishOptions): Promise<void> {
    const client = this.#client;
    if (client === null || !this.#isUp) throw new Error('link is down');
    await client.publishAsync(topic, payload, { qos: options.qos, retain: options.retain });
  }

  #connect(): void {
    const { url, clientId, will } = this.#options;
    // No own reconnection and a clean session: then ending the client rejects what was in flight.
    const client = mqtt.connect(url, {
      clientId,
      clean: true,
      reconnectPeriod: 0,
      keepalive: 30,
      ...(will === null
        ? {}
        : { will: { ...will, payload: Buffer.from(will.payload), qos: 1, retain: true } }),
    });
    this.#client = client;
    client.on('connect', () => {
      if (this.#client !== client) return;
      this.#isUp = true;
      this.#events?.up();
    });
    client.on('error', (error) => this.#events?.trouble(describe(error)));
    client.on('close', () => this.#lost(client));
  }

  #lost(client: MqttClient): void {
    if (this.#client !== client) return;
    this.#client = null;
    client.end(true);
    const wasUp = this.#isUp;
    this.#isUp = false;
    if (wasUp) this.#events?.down();
    if (!this.#wanted) return;
    this.#retry = setTimeout(() => this.#connect(), this.#options.retryMs ?? 1000);
  }

  #leave(): void {
    this.#wanted = false;
    if (this.#retry !== null) clearTimeout(this.#retry);
    this.#retry = null;
  }
}

/** A refused connection to several addresses comes as a bundle whose own message is empty. */
function describe(error: Error): string {
  if (error instanceof AggregateError) return error.errors.map((each) => String(each)).join('; ');
  return error.message;
}
