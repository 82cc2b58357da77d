import { createHmac } from 'node:crypto';

/**
 * How a receiver of the webhook knows that a message is from this hub and is no recording: it works out
 * `HMAC-SHA256(secret, timestamp + "." + body)`, compares it with the header in constant time, and refuses a timestamp
 * more than five minutes off.
 */
export const SIGNATURE_HEADERS = {
  /** "v1=" and 64 hexadecimal digits. */
  signature: 'soakwatch-signature',
  /** Epoch seconds at which this attempt was signed. */
  timestamp: 'soakwatch-timestamp',
  /** The same for every attempt of one message: a receiver that knows it already has the message. */
  delivery: 'soakwatch-delivery',
} as const;

/** Lower-case hexadecimal HMAC-SHA256 (RFC 2104, FIPS 198-1). */
export function hmacSha256Hex(secret: string, text: string): string {
  return createHmac('sha256', secret).update(text, 'utf8').digest('hex');
}

/** The value of the signature header. `timestamp` in epoch seconds. */
export function signatureOf(secret: string, timestamp: number, body: string): string {
  return `v1=${hmacSha256Hex(secret, `${timestamp}.${body}`)}`;
}
