import type { AedesPublishPacket, Client, ConnectPacket, Subscription } from 'aedes';

/**
 * What the broker library keeps for its clients in memory and does not bound itself. Without these a client that
 * subscribes to everything and leaves, or retains under ever new topics, would fill the hub's memory.
 */
export const MOST_SESSIONS = 256;
export const MOST_SUBSCRIPTIONS = 100;
export const MOST_QUEUED = 1000;
export const MOST_RETAINED = 2000;
export const MOST_RETAINED_BYTES = 64 * 1024;

/** The part of the library's store that grows with what clients ask for (aedes-persistence 11). */
export interface SessionStore {
  storeRetained(packet: AedesPublishPacket): Promise<void>;
  outgoingEnqueueCombi(
    subscriptions: readonly { readonly clientId: string }[],
    packet: AedesPublishPacket,
  ): Promise<void>;
  outgoingClearMessageId(client: { readonly id: string }, packet: unknown): Promise<unknown>;
}

/** Bounds a store in place: what is beyond the bounds is delivered to those present and not kept. */
export function boundStore(store: SessionStore): void {
  boundRetained(store);
  boundQueues(store);
}

function boundRetained(store: SessionStore): void {
  const storeRetained = store.storeRetained.bind(store);
  const topics = new Set<string>();
  store.storeRetained = async (packet) => {
    const clears = packet.payload.length === 0;
    if (clears) topics.delete(packet.topic);
    else if (packet.payload.length > MOST_RETAINED_BYTES) return;
    else if (topics.size >= MOST_RETAINED && !topics.has(packet.topic)) return;
    else topics.add(packet.topic);
    await storeRetained(packet);
  };
}

function boundQueues(store: SessionStore): void {
  const enqueue = store.outgoingEnqueueCombi.bind(store);
  const clear = store.outgoingClearMessageId.bind(store);
  const queued = new Map<string, number>();
  store.outgoingEnqueueCombi = async (subscriptions, packet) => {
    const room = subscriptions.filter(({ clientId }) => (queued.get(clientId) ?? 0) < MOST_QUEUED);
    for (const { clientId } of room) queued.set(clientId, (queued.get(clientId) ?? 0) + 1);
    await enqueue(room, packet);
  };
  store.outgoingClearMessageId = async (client, packet) => {
    const cleared = await clear(client, packet);
    const left = (queued.get(client.id) ?? 0) - (cleared === undefined ? 0 : 1);
    if (left > 0) queued.set(client.id, left);
    else queued.delete(client.id);
    return cleared;
  };
}

/** Sessions that outlive their connection are for the first few names; later ones end with the connection. */
export function boundSessions(): (client: Client, packet: ConnectPacket) => void {
  const names = new Set<string>();
  return (_client, packet) => {
    if (packet.clean) return;
    if (packet.clientId === '' || (names.size >= MOST_SESSIONS && !names.has(packet.clientId))) {
      packet.clean = true;
    } else {
      names.add(packet.clientId);
    }
  };
}

/** Whether a client may subscribe once more. What it subscribed before and left again counts. */
export function boundSubscriptions(): (client: Client, subscription: Subscription) => boolean {
  const filters = new WeakMap<Client, Set<string>>();
  return (client, { topic }) => {
    const known = filters.get(client) ?? new Set<string>();
    filters.set(client, known);
    if (known.size >= MOST_SUBSCRIPTIONS && !known.has(topic)) return false;
    known.add(topic);
    return true;
  };
}
