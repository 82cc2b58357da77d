import type { Duplex } from 'node:stream';
import { createPacketGauge } from './packet-gauge.ts';
import { BrokerError } from './types.ts';

export interface ConnectionBounds {
  readonly maxConnections: number;
  readonly maxPacketBytes: number;
  /** A connection announced a packet beyond the bound and was closed. */
  readonly onOversize: (seen: { readonly clientId: string | null; readonly bytes: number }) => void;
  readonly onFault: (fault: unknown) => void;
}

/** The open connections of the embedded broker, over TCP and WebSocket alike. */
export interface Connections {
  /** Bounds a new connection, then hands it to `handle`, which answers with who is on it. */
  admit(stream: Duplex, handle: (stream: Duplex) => { readonly id: string | null }): void;
  closeAll(): void;
}

export function createConnections(bounds: ConnectionBounds): Connections {
  const open = new Set<Duplex>();

  return {
    admit(stream, handle) {
      if (open.size >= bounds.maxConnections) {
        // Without a listener a late reset of the peer would be thrown at the whole process.
        stream.on('error', () => {});
        stream.destroy();
        const detail = `${bounds.maxConnections} connections are open already, another was closed`;
        bounds.onFault(new BrokerError('too-many-connections', detail));
        return;
      }
      open.add(stream);
      stream.once('close', () => open.delete(stream));
      let client: { readonly id: string | null } | null = null;
      boundPackets(stream, bounds.maxPacketBytes, (bytes) =>
        bounds.onOversize({ clientId: client?.id ?? null, bytes }),
      );
      client = handle(stream);
    },
    closeAll() {
      for (const stream of open) stream.destroy();
    },
  };
}

/**
 * Puts the gauge between the stream and the broker library, which pulls its bytes with `read`: what it pulls is
 * looked at on the way, nothing is copied, and a connection that announces too much is closed before it is parsed.
 */
function boundPackets(stream: Duplex, mostBytes: number, onOversize: (bytes: number) => void): void {
  const gauge = createPacketGauge(mostBytes);
  const read = stream.read.bind(stream);
  stream.read = (size?: number): unknown => {
    const chunk: unknown = read(size);
    if (!(chunk instanceof Uint8Array)) return chunk;
    const bytes = gauge.look(chunk);
    if (bytes === null) return chunk;
    stream.destroy();
    onOversize(bytes);
    return null;
  };
}
