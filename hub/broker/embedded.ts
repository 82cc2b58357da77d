import type { EventEmitter } from 'node:events';
import type { IncomingMessage } from 'node:http';
import { createServer, type Server } from 'node:net';
import type { Duplex } from 'node:stream';
import { Aedes, type AedesOptions } from 'aedes';
import type { Clock } from '../time/clock.ts';
import { acceptHook } from './accept-hook.ts';
import { type Connections, createConnections } from './connections.ts';
import { listen } from './listen.ts';
import { boundSessions, boundStore, boundSubscriptions, type SessionStore } from './session-bounds.ts';
import { BrokerError, type MessageSource } from './types.ts';

export interface EmbeddedBrokerOptions {
  /** Address to listen on. */
  readonly bind: string;
  /** TCP port; 0 takes any free one. */
  readonly port: number;
  /** A connection that announces a larger packet is closed. */
  readonly maxPacketBytes: number;
  readonly clock: Clock;
  /** Default 64. */
  readonly maxConnections?: number;
  /** How long a connection may take to say who it is, ms. Default 10 s. */
  readonly connectTimeoutMs?: number;
  readonly onOversize?: (seen: { readonly clientId: string | null; readonly bytes: number }) => void;
  /** Told of what goes wrong outside any call: a failed commit, a connection over the bound. */
  readonly onFault?: (fault: unknown) => void;
}

export interface EmbeddedBroker extends MessageSource {
  /** MQTT over another stream than TCP: a WebSocket of the web server. Closed at once when the broker is down. */
  handleStream(stream: Duplex, request?: IncomingMessage): void;
}

const DEAD_PEER_PROBE_MS = 30_000;

/**
 * The hub's own MQTT broker (3.1 and 3.1.1), on aedes. Sessions and retained messages are in memory: what nodes
 * retain they say again when they reconnect.
 *
 * `start` errors: BrokerError `port-in-use`, `cannot-listen`.
 */
export function createEmbeddedBroker(options: EmbeddedBrokerOptions): EmbeddedBroker {
  const { onFault = () => {}, onOversize = () => {}, maxConnections = 64, maxPacketBytes, clock } = options;
  const connections = createConnections({ maxConnections, maxPacketBytes, onOversize, onFault });
  let running: { readonly broker: Aedes; readonly server: Server } | null = null;
  let stopping = false;

  function admit(broker: Aedes, stream: Duplex, request?: IncomingMessage): void {
    connections.admit(stream, (bounded) => broker.handle(bounded, request));
  }

  return {
    async start(accept) {
      const hook = acceptHook({ accept, now: () => clock.now(), isStopping: () => stopping, onFault });
      const broker = await createAedes(options, hook, onFault);
      const server = createServer({
        noDelay: true,
        keepAlive: true,
        keepAliveInitialDelay: DEAD_PEER_PROBE_MS,
      });
      server.on('connection', (socket) => admit(broker, socket));
      try {
        const address = await listen(server, options.bind, options.port);
        running = { broker, server };
        stopping = false;
        return { address };
      } catch (fault) {
        await finished((done) => broker.close(done));
        throw fault;
      }
    },
    async publish(topic, payload, { qos, retain }) {
      if (!running) throw new BrokerError('not-started', 'the broker is not running: start it first');
      const { broker } = running;
      const packet = {
        cmd: 'publish',
        topic,
        payload: Buffer.from(payload),
        qos,
        retain,
        dup: false,
      } as const;
      await new Promise<void>((resolve, reject) => {
        broker.publish(packet, (fault) => (fault ? reject(fault) : resolve()));
      });
    },
    async stop() {
      if (!running) return;
      const { broker, server } = running;
      running = null;
      stopping = true;
      await stop(broker, server, connections);
    },
    handleStream(stream, request) {
      if (running) admit(running.broker, stream, request);
      else stream.destroy();
    },
  };
}

async function createAedes(
  { connectTimeoutMs = 10_000 }: EmbeddedBrokerOptions,
  authorizePublish: NonNullable<AedesOptions['authorizePublish']>,
  onFault: (fault: unknown) => void,
): Promise<Aedes> {
  const boundSession = boundSessions();
  const maySubscribe = boundSubscriptions();
  const broker = await Aedes.createBroker({
    connectTimeout: connectTimeoutMs,
    authorizePublish,
    preConnect(client, packet, callback) {
      boundSession(client, packet);
      callback(null, true);
    },
    authorizeSubscribe(client, subscription, callback) {
      callback(null, maySubscribe(client, subscription) ? subscription : null);
    },
  });
  // Not in the library's types: the store it makes for itself, and the event that would otherwise be thrown.
  boundStore((broker as Aedes & { readonly persistence: SessionStore }).persistence);
  const events: EventEmitter = broker;
  events.on('error', onFault);
  return broker;
}

async function stop(broker: Aedes, server: Server, connections: Connections): Promise<void> {
  const serverClosed = finished((done) => server.close(() => done()));
  connections.closeAll();
  await finished((done) => broker.close(done));
  await serverClosed;
}

function finished(begin: (done: () => void) => void): Promise<void> {
  return new Promise((resolve) => begin(resolve));
}
