/** A real broker in this process, on a port of its own, that can withhold acknowledgements. */
import { once } from 'node:events';
import { createServer, type Socket } from 'node:net';
import { Aedes } from 'aedes';

export interface Received {
  readonly topic: string;
  readonly payload: string;
  readonly retain: boolean;
}

export interface TestBroker {
  readonly url: string;
  /** Everything published, last wills included, whether acknowledged or not. */
  readonly received: readonly Received[];
  /** While true, readings are received and never acknowledged. */
  withhold: boolean;
  /** Breaks every connection without a word. */
  breakConnections(): void;
  close(): Promise<void>;
}

export async function startBroker(): Promise<TestBroker> {
  const received: Received[] = [];
  const state = { withhold: false };
  const sockets = new Set<Socket>();
  const aedes = await Aedes.createBroker();
  aedes.authorizePublish = (_client, packet, callback) => {
    const { topic, retain } = packet;
    received.push({ topic, payload: String(packet.payload), retain });
    // The broker acknowledges after this callback: not calling it is not acknowledging.
    if (state.withhold && topic.endsWith('/readings')) return;
    callback(null);
  };
  const server = createServer((socket) => {
    sockets.add(socket);
    socket.on('close', () => sockets.delete(socket));
    aedes.handle(socket);
  });
  server.listen(0, '127.0.0.1');
  await once(server, 'listening');
  const address = server.address();
  if (address === null || typeof address === 'string') throw new Error('the broker has no port');
  return {
    url: `mqtt://127.0.0.1:${address.port}`,
    received,
    get withhold() {
      return state.withhold;
    },
    set withhold(value: boolean) {
      state.withhold = value;
    },
    breakConnections() {
      for (const socket of sockets) socket.destroy();
    },
    async close() {
      for (const socket of sockets) socket.destroy();
      await new Promise<void>((resolve) => server.close(() => resolve()));
      await new Promise<void>((resolve) => aedes.close(() => resolve()));
    },
  };
}
