import { connect, type Socket } from 'node:net';
import { generate, type Packet, parser } from 'mqtt-packet';

/** An MQTT client that does exactly what it is told, packet by packet. */
export interface RawClient {
  readonly socket: Socket;
  send(...packets: Packet[]): void;
  /** Bytes that no well-behaved client would send. */
  sendBytes(bytes: Uint8Array): void;
  /** The next packet that is received, in order. Rejects when the connection closes first. */
  next(): Promise<Packet>;
  readonly closed: Promise<void>;
  end(): void;
}

export async function rawClient(port: number): Promise<RawClient> {
  const socket = connect(port, '127.0.0.1');
  const reader = parser({ protocolVersion: 4 });
  const received: Packet[] = [];
  const waiting: { resolve: (packet: Packet) => void; reject: (fault: Error) => void }[] = [];
  reader.on('packet', (packet) => {
    const first = waiting.shift();
    if (first) first.resolve(packet);
    else received.push(packet);
  });
  socket.on('data', (chunk: Buffer) => void reader.parse(chunk));
  socket.on('error', () => {});
  const closed = new Promise<void>((resolve) => {
    socket.once('close', () => {
      resolve();
      for (const { reject } of waiting) reject(new Error('the connection was closed'));
    });
  });
  await new Promise<void>((resolve, reject) => {
    socket.once('connect', () => resolve());
    socket.once('close', () => reject(new Error('no connection')));
  });
  return {
    socket,
    send: (...packets) => void socket.write(Buffer.concat(packets.map((packet) => generate(packet)))),
    sendBytes: (bytes) => void socket.write(bytes),
    next() {
      const packet = received.shift();
      if (packet) return Promise.resolve(packet);
      if (socket.destroyed) return Promise.reject(new Error('the connection was closed'));
      return new Promise((resolve, reject) => waiting.push({ resolve, reject }));
    },
    closed,
    end: () => void socket.destroy(),
  };
}

/** A raw client that has said who it is and was let in. */
export async function rawNode(port: number, clientId: string): Promise<RawClient> {
  const client = await rawClient(port);
  client.send(connectPacket(clientId));
  const answer = await client.next();
  if (answer.cmd !== 'connack' || answer.returnCode !== 0) throw new Error(`not let in: ${answer.cmd}`);
  return client;
}

export function connectPacket(clientId: string): Packet {
  return {
    cmd: 'connect',
    protocolId: 'MQTT',
    protocolVersion: 4,
    clean: true,
    clientId,
    keepalive: 60,
  };
}

export function publishPacket(topic: string, payload: string | Buffer, messageId: number): Packet {
  return { cmd: 'publish', topic, payload, qos: 1, messageId, dup: false, retain: false };
}
