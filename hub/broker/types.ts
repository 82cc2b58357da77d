/** A message as it came off the wire, before anybody has understood it. */
export interface InboundMessage {
  readonly topic: string;
  readonly payload: Uint8Array;
  readonly qos: 0 | 1 | 2;
  /** A broker's stored copy handed out on subscription: last known, not current. */
  readonly fromRetained: boolean;
  /** The MQTT client that sent it, where the broker knows. */
  readonly clientId: string | null;
  readonly receivedAt: number;
}

/**
 * Where messages come from: the embedded broker, or a standard broker by URL.
 *
 * The promise of `accept` is the acknowledgement: resolved means committed, and the PUBACK leaves (in arrival
 * order); rejected means that nothing was kept, and the connection closes unacknowledged so that the sender
 * sends again (MQTT 5.0 [4.4.0-2]: a PUBACK with an error code would count as acknowledged).
 */
export interface MessageSource {
  start(accept: (message: InboundMessage) => Promise<void>): Promise<{ readonly address: string }>;
  /** Publishes for the hub itself: the stack light, the siren, the heartbeat. */
  publish(topic: string, payload: string, options: { qos: 0 | 1; retain: boolean }): Promise<void>;
  stop(): Promise<void>;
}

/**
 * - `port-in-use`, `cannot-listen`: the embedded broker cannot take its port or address.
 * - `too-many-connections`: a connection was closed because the bound is reached; the others go on.
 * - `broker-unreachable`: nothing answers at the standard broker's address.
 * - `broker-refused`: it answers and refuses us: sign-in, client id, or a subscription.
 * - `not-started`: the source was used before `start` or after `stop`.
 */
export type BrokerErrorCode =
  | 'port-in-use'
  | 'cannot-listen'
  | 'too-many-connections'
  | 'broker-unreachable'
  | 'broker-refused'
  | 'not-started';

export class BrokerError extends Error {
  readonly code: BrokerErrorCode;
  constructor(code: BrokerError['code'], message: string, options?: ErrorOptions) {
    super(message, options);
    this.name = 'BrokerError';
    this.code = code;
  }
}
