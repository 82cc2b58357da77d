import type { ISubscriptionGrant, MqttClient } from 'mqtt';
import { BrokerError } from './types.ts';

/** Keeps the broker's list of our subscriptions like the one that is wanted. */
export interface Subscriber {
  /** Settles with the first subscribing: rejects with BrokerError `broker-refused` when nothing was granted. */
  readonly ready: Promise<void>;
  /** Compares what is wanted with what is subscribed, and makes it so; without a connection, at the next. */
  update(): Promise<void>;
}

/** Less would break the promise that what is acknowledged is stored. */
const WANTED_QOS = 1;

/**
 * Subscribes at the first connection of this programme's life, because the broker hands out retained messages (the
 * nodes' status) only on subscribing, and later only when the broker has lost the session.
 */
export function createSubscriber(
  client: MqttClient,
  wanted: () => readonly string[],
  onFault: (fault: unknown) => void,
): Subscriber {
  const subscribed = new Set<string>();
  let inStep = false;

  async function subscribe(filters: readonly string[]): Promise<void> {
    if (filters.length === 0) return;
    const granted = await client.subscribeAsync([...filters], { qos: WANTED_QOS });
    const refused = granted.filter(({ qos }) => qos !== WANTED_QOS);
    for (const { topic } of granted.filter(({ qos }) => qos === WANTED_QOS)) subscribed.add(topic);
    if (refused.length === 0) return;
    const fault = refusal(refused);
    if (subscribed.size === 0) throw fault;
    onFault(fault);
  }

  async function unsubscribe(filters: readonly string[]): Promise<void> {
    if (filters.length === 0) return;
    await client.unsubscribeAsync([...filters]);
    for (const filter of filters) subscribed.delete(filter);
  }

  async function update(): Promise<void> {
    // In step only once all is done: what is cut off in the middle starts over with the next connection.
    inStep = false;
    if (!client.connected) return;
    const filters = wanted();
    await unsubscribe([...subscribed].filter((filter) => !filters.includes(filter)));
    await subscribe(filters.filter((filter) => !subscribed.has(filter)));
    inStep = true;
  }

  const ready = new Promise<void>((resolve, reject) => {
    client.on('connect', ({ sessionPresent }) => {
      if (inStep && sessionPresent) return;
      if (!sessionPresent) subscribed.clear();
      update().then(resolve, (fault: unknown) => {
        onFault(fault);
        reject(fault);
      });
    });
  });
  ready.catch(() => {});

  return { ready, update };
}

function refusal(refused: readonly ISubscriptionGrant[]): BrokerError {
  const topics = refused.map(({ topic }) => topic).join(', ');
  return new BrokerError(
    'broker-refused',
    `the broker does not grant QoS ${WANTED_QOS} for ${topics}: check its access rules for the hub's user`,
  );
}
