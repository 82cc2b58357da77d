import type { AedesOptions, Client, PublishPacket } from 'aedes';
import { createReleaseQueue, type ReleaseQueue } from './release-queue.ts';
import type { InboundMessage } from './types.ts';

export type Accept = (message: InboundMessage) => Promise<void>;
type PublishHook = NonNullable<AedesOptions['authorizePublish']>;

interface HookParts {
  readonly accept: Accept;
  readonly now: () => number;
  /** On the way down nothing is taken any more; last wills caused by our own leaving least of all. */
  readonly isStopping: () => boolean;
  readonly onFault: (fault: unknown) => void;
}

const SYSTEM_PREFIX = '$SYS/';

/**
 * The `authorizePublish` hook of aedes, in which a message is accepted.
 *
 * aedes writes the PUBACK right after this hook and before anything else (lib/handlers/publish.js of 1.2.0). A hook
 * that fails makes it close the connection without a PUBACK. It calls the hook for pipelined messages all at once,
 * which is what makes grouped commits possible, and acknowledges in the order in which the hooks return: hence a
 * release queue for each client. Last wills come through here as well, from clients that are already gone.
 */
export function acceptHook({ accept, now, isStopping, onFault }: HookParts): PublishHook {
  const queues = new WeakMap<Client, ReleaseQueue>();

  function queueOf(client: Client | null): ReleaseQueue {
    const queue = (client && queues.get(client)) ?? createReleaseQueue();
    if (client) queues.set(client, queue);
    return queue;
  }

  return (client, packet, callback) => {
    // Replacing the library's own hook takes this block of its away.
    if (packet.topic.startsWith(SYSTEM_PREFIX)) return callback(new Error(`${SYSTEM_PREFIX} is reserved`));
    if (isStopping()) return callback(new Error('the hub is stopping'));
    const message = toMessage(client, packet, now());
    queueOf(client).add(accept(message), (fault) => {
      if (fault !== null) onFault(fault);
      callback(fault === null ? null : asError(fault));
    });
  };
}

/** A live message, retained or not, is current: only a copy handed out later would not be. */
function toMessage(client: Client | null, packet: PublishPacket, receivedAt: number): InboundMessage {
  const { topic, payload, qos } = packet;
  const bytes = typeof payload === 'string' ? Buffer.from(payload) : payload;
  return { topic, payload: bytes, qos, fromRetained: false, clientId: client?.id ?? null, receivedAt };
}

function asError(fault: unknown): Error {
  return fault instanceof Error ? fault : new Error(String(fault));
}
