import { connect, createServer, type Socket } from 'node:net';
import { type Packet, parser } from 'mqtt-packet';

export interface Relay {
  readonly port: number;
  /** Cuts every connection that is open now; new ones may come. */
  breakConnections(): void;
  stop(): Promise<void>;
}

type Direction = 'to-broker' | 'to-client';

interface RelayOptions {
  readonly target: () => number;
  readonly direction: Direction;
  /** Every MQTT packet that passes in the watched direction, in order. */
  readonly onPacket: (packet: Packet) => void;
}

/** A wire tap: a TCP relay on the loopback that reads the MQTT packets going one way and changes nothing. */
export function startRelay({ target, direction, onPacket }: RelayOptions): Promise<Relay> {
  const sockets = new Set<Socket>();
  const server = createServer((client) => {
    const broker = connect(target(), '127.0.0.1');
    const watched = direction === 'to-broker' ? client : broker;
    const reader = parser({ protocolVersion: 4 });
    reader.on('packet', onPacket);
    watched.on('data', (chunk: Buffer) => void reader.parse(chunk));
    join(client, broker, sockets);
    join(broker, client, sockets);
  });
  return new Promise((resolve) => {
    server.listen(0, '127.0.0.1', () => {
      const address = server.address();
      const port = typeof address === 'object' && address ? address.port : 0;
      const breakConnections = () => {
        for (const socket of sockets) socket.destroy();
      };
      const stop = () =>
        new Promise<void>((done) => {
          server.close(() => done());
          breakConnections();
        });
      resolve({ port, breakConnections, stop });
    });
  });
}

function join(from: Socket, to: Socket, sockets: Set<Socket>): void {
  sockets.add(from);
  from.on('data', (chunk) => to.write(chunk));
  from.on('error', () => to.destroy());
  from.on('close', () => {
    sockets.delete(from);
    to.destroy();
  });
}
