/** Follows the packets of an MQTT byte stream by their fixed headers alone. */
export interface PacketGauge {
  /** Looks at the next bytes. Returns the size of the first packet announced beyond the bound, or null. */
  look(chunk: Uint8Array): number | null;
}

/** MQTT 3.1.1 section 2.2.3: seven bits a byte, the eighth says that another follows, at most four. */
const CONTINUES = 0x80;
const MOST_LENGTH_BYTES = 4;

/**
 * A gauge for one connection. The broker library knows no packet bound and gathers whatever is announced (up to
 * 256 MiB), so the bound is held here, before the parser, from the announcement alone.
 *
 * @param mostBytes largest packet that is let through, header included
 */
export function createPacketGauge(mostBytes: number): PacketGauge {
  /** Bytes of the packet at hand that are still to come. */
  let body = 0;
  /** Bytes of its header seen so far: 0 is before the first, 1 is after the type. */
  let header = 0;
  let length = 0;

  /** Takes one header byte; the packet's whole size once the header is complete, else null. */
  function takeHeader(byte: number): number | null {
    header += 1;
    if (header === 1) {
      length = 0;
      return null;
    }
    length += (byte & ~CONTINUES) * CONTINUES ** (header - 2);
    // Too many length bytes are a protocol error, which the parser behind this refuses in its own way.
    if ((byte & CONTINUES) !== 0 && header <= MOST_LENGTH_BYTES) return null;
    const size = header + length;
    header = 0;
    body = length;
    return size;
  }

  return {
    look(chunk) {
      let place = 0;
      while (place < chunk.length) {
        const skipped = Math.min(body, chunk.length - place);
        body -= skipped;
        place += skipped;
        const byte = chunk[place];
        if (byte === undefined) return null;
        place += 1;
        const size = takeHeader(byte);
        if (size !== null && size > mostBytes) return size;
      }
      return null;
    },
  };
}
