import { connect, type IClientOptions, type IPublishPacket, type MqttClient } from 'mqtt';
import type { Clock } from '../time/clock.ts';
import type { Accept } from './accept-hook.ts';
import { createSubscriber, type Subscriber } from './subscriber.ts';
import { BrokerError, type InboundMessage, type MessageSource } from './types.ts';

export interface ExternalBrokerOptions {
  /** `mqtt://` or `mqtts://`, with user and password in it where the broker wants them. */
  readonly url: string;
  /** The same at every start: the broker keeps the session, and what arrives meanwhile, under this name. */
  readonly clientId: string;
  /** The topic filters that intake wants now. */
  readonly subscriptions: () => readonly string[];
  readonly clock: Clock;
  /** Certificate authority that the broker's certificate is checked against, PEM; default the system's. */
  readonly ca?: string;
  /** What the broker says for us when we are gone without a word; read at every connection. */
  readonly lastWill?: () => { readonly topic: string; readonly payload: string };
  /** Default 60. Far above the time of a commit: a handler slower than this would lose the connection. */
  readonly keepaliveSeconds?: number;
  /** First and longest wait between attempts to reconnect, ms. Default 1 s and 30 s. */
  readonly reconnectMs?: { readonly first: number; readonly longest: number };
  /** Default 10 s. */
  readonly connectTimeoutMs?: number;
  /** Told of lost connections, failed commits and refused subscriptions. */
  readonly onFault?: (fault: unknown) => void;
}

export interface ExternalBroker extends MessageSource {
  /**
   * The wanted topic filters have changed: subscribes to new ones and leaves those no longer wanted. It never
   * rejects: what fails is told to `onFault` and made good at the next connection.
   */
  resubscribe(): Promise<void>;
}

/**
 * A standard MQTT broker by URL, through mqtt.js, with a persistent session and QoS 1.
 *
 * `handleMessage` of mqtt.js is the one place where an acknowledgement waits for us. Calling it back with an error
 * would only skip the acknowledgement and carry on, and the broker sends again only after a reconnect: so a failed
 * commit destroys the connection. mqtt.js hands over one message at a time, so the throughput is that of single
 * commits; many readings belong into one pack.
 *
 * `start` errors: BrokerError `broker-unreachable`, `broker-refused`. After a first success it reconnects for ever.
 */
export function createExternalBroker(options: ExternalBrokerOptions): ExternalBroker {
  const { onFault = () => {}, reconnectMs = { first: 1000, longest: 30_000 } } = options;
  let running: { readonly client: MqttClient; readonly subscriber: Subscriber } | null = null;

  return {
    async start(accept) {
      const client = connect(options.url, clientOptions(options, reconnectMs.first));
      const subscriber = createSubscriber(client, options.subscriptions, onFault);
      acknowledgeAfter(client, accept, options.clock, onFault, () => {
        client.options.reconnectPeriod = reconnectMs.first;
      });
      client.on('reconnect', () => {
        Object.assign(client.options, willOf(options));
        const next = 2 * (client.options.reconnectPeriod ?? reconnectMs.first);
        client.options.reconnectPeriod = Math.min(next, reconnectMs.longest);
      });
      client.on('error', onFault);
      try {
        await firstConnection(client, subscriber, options.url);
      } catch (fault) {
        await client.endAsync(true);
        throw fault;
      }
      running = { client, subscriber };
      return { address: withoutSecrets(options.url) };
    },
    async publish(topic, payload, { qos, retain }) {
      if (!running?.client.connected) {
        throw new BrokerError('broker-unreachable', 'there is no connection to the broker at present');
      }
      await running.client.publishAsync(topic, payload, { qos, retain });
    },
    async resubscribe() {
      await running?.subscriber.update().catch(onFault);
    },
    async stop() {
      const stopped = running;
      running = null;
      // Forced: what is not acknowledged stays with the broker, and a dead peer must not hold up the hub's end.
      await stopped?.client.endAsync(true);
    },
  };
}

function clientOptions(options: ExternalBrokerOptions, reconnectPeriod: number): IClientOptions {
  return {
    clientId: options.clientId,
    clean: false,
    protocolVersion: 4,
    resubscribe: false,
    reconnectPeriod,
    reconnectOnConnackError: true,
    keepalive: options.keepaliveSeconds ?? 60,
    connectTimeout: options.connectTimeoutMs ?? 10_000,
    ...willOf(options),
    ...(options.ca === undefined ? {} : { ca: options.ca }),
  };
}

/** Retained, so that whoever asks later is told too. */
function willOf({ lastWill }: ExternalBrokerOptions): Pick<IClientOptions, 'will'> {
  if (lastWill === undefined) return {};
  const { topic, payload } = lastWill();
  return { will: { topic, payload: Buffer.from(payload), qos: 1, retain: true } };
}

/** Makes the PUBACK of every message wait for `accept`. */
function acknowledgeAfter(
  client: MqttClient,
  accept: Accept,
  clock: Clock,
  onFault: (fault: unknown) => void,
  onAccepted: () => void,
): void {
  client.handleMessage = (packet, callback) => {
    const { stream } = client;
    // A callback that outlives its connection would acknowledge on the next one, which has sent the message again.
    const isAlive = () => client.stream === stream && client.connected && !stream.destroyed;
    accept(toMessage(packet, client.options.clientId ?? null, clock.now())).then(
      () => {
        onAccepted();
        if (isAlive()) callback();
      },
      (fault: unknown) => {
        onFault(fault);
        stream.destroy();
      },
    );
  };
}

/** To a subscriber the retain flag says that the message was handed out of the store (MQTT 3.1.1 3.3.1.3). */
function toMessage(packet: IPublishPacket, clientId: string | null, receivedAt: number): InboundMessage {
  const { topic, payload, qos, retain } = packet;
  const bytes = typeof payload === 'string' ? Buffer.from(payload) : payload;
  return { topic, payload: bytes, qos, fromRetained: retain, clientId, receivedAt };
}

function firstConnection(client: MqttClient, subscriber: Subscriber, url: string): Promise<void> {
  return new Promise((resolve, reject) => {
    const where = `the MQTT broker at ${withoutSecrets(url)}`;
    client.once('error', (fault) => reject(connectError(fault, where)));
    client.once('close', () => {
      reject(new BrokerError('broker-unreachable', `${where} closed the connection: check the address`));
    });
    subscriber.ready.then(resolve, reject);
  });
}

/** CONNACK return codes 1 to 5 (MQTT 3.1.1 section 3.2.2.3) are the broker's own refusals. */
function connectError(fault: Error, where: string): BrokerError {
  const code: unknown = Reflect.get(fault, 'code');
  const said = fault.message || String(code);
  if (typeof code === 'number') {
    return new BrokerError(
      'broker-refused',
      `${where} refuses us (${said}): check user, password and client id`,
      {
        cause: fault,
      },
    );
  }
  return new BrokerError(
    'broker-unreachable',
    `${where} cannot be reached (${said}): check address and network`,
    {
      cause: fault,
    },
  );
}

function withoutSecrets(url: string): string {
  const { protocol, host } = new URL(url);
  return `${protocol}//${host}`;
}
