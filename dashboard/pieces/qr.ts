import { encode } from 'uqr';

/** The QR code of a label, as a drawing. Pure. */

export interface QrDrawing {
  /** Modules a side, with the quiet zone. */
  readonly size: number;
  /** SVG path of the dark modules, one unit each. */
  readonly path: string;
}

/** ISO/IEC 18004 asks for four light modules all round. */
const QUIET_ZONE = 4;

/** Level M bears a scratch over about 15 % of the code: shop labels get dirty. */
export function qrDrawing(text: string): QrDrawing {
  const { size, data } = encode(text, { ecc: 'M', border: QUIET_ZONE });
  const rows = data.map((row, y) => row.map((dark, x) => (dark ? `M${x} ${y}h1v1h-1z` : '')).join(''));
  return { size, path: rows.join('') };
}

/** Where the page of a mark is reached on the hub at `origin` ("http://forge.local:7625"). */
export function markAddress(origin: string, mark: string): string {
  return `${origin}/#/pieces/by-mark/${encodeURIComponent(mark)}`;
}

/** True when no other device can follow an address of this host. */
export function isLoopback(hostname: string): boolean {
  return hostname === 'localhost' || hostname === '[::1]' || hostname.startsWith('127.');
}
