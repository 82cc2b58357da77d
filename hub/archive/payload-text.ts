/** Control, format (such as text direction), unassigned and line-breaking characters: not for a screen. */
const UNPRINTABLE = /[\p{C}\p{Zl}\p{Zp}]/u;
const utf8 = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true });

/** How many bytes the UTF-8 character that begins with this byte has (RFC 3629 section 3); 1 when none does. */
function lengthOf(lead: number): number {
  if (lead >= 0xf0 && lead <= 0xf4) return 4;
  if (lead >= 0xe0 && lead <= 0xef) return 3;
  if (lead >= 0xc2 && lead <= 0xdf) return 2;
  return 1;
}

function printable(bytes: Uint8Array): string | null {
  try {
    const text = utf8.decode(bytes);
    return UNPRINTABLE.test(text) ? null : text;
  } catch {
    // Not UTF-8: that is an answer here, not a fault.
    return null;
  }
}

function escaped(byte: number): string {
  return `\\x${byte.toString(16).padStart(2, '0')}`;
}

/** Any bytes as text that is safe to show: printable UTF-8 as it is, every other byte as \xNN. */
export function payloadText(payload: Uint8Array): string {
  const parts: string[] = [];
  for (let at = 0; at < payload.length; ) {
    const lead = payload[at] ?? 0;
    const length = lengthOf(lead);
    const text = printable(payload.subarray(at, at + length));
    parts.push(text ?? escaped(lead));
    at += text === null ? 1 : length;
  }
  return parts.join('');
}
