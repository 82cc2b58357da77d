import type { z } from 'zod';
import type { WebhookTarget } from '../contract/notify.ts';
import { type Outside, sendHttp } from './http.ts';
import type { Message } from './message.ts';
import { SIGNATURE_HEADERS, signatureOf } from './signature.ts';
import type { SendOutcome } from './types.ts';

type Webhook = z.infer<typeof WebhookTarget>;

/** The document that a webhook gets. Instants epoch ms. */
export function webhookBody({ delivery, at, reason, shop, title, text, alarms }: Message): string {
  return JSON.stringify({ version: 1, delivery, at, reason, shop, title, text, alarms });
}

/** Signed at each attempt, so that a late one still has a fresh timestamp. Never rejects. */
export async function sendWebhook(
  { url, secret }: Webhook,
  message: Message,
  outside: Outside,
): Promise<SendOutcome> {
  if (url === undefined || secret === undefined)
    return { ok: false, code: 'other-side-refused', detail: 'address or secret is missing', passing: false };
  const body = webhookBody(message);
  const timestamp = Math.floor(outside.clock.now() / 1000);
  const bytes = Buffer.from(body);
  const headers = {
    'content-type': 'application/json',
    'content-length': bytes.length,
    'user-agent': 'Soakwatch',
    [SIGNATURE_HEADERS.delivery]: message.delivery,
    [SIGNATURE_HEADERS.timestamp]: timestamp,
    [SIGNATURE_HEADERS.signature]: signatureOf(secret, timestamp, body),
  };
  return sendHttp({ url, method: 'POST', headers, body: bytes }, outside);
}
