import webPush from 'web-push';
import type { z } from 'zod';
import type { PushTarget } from '../contract/notify.ts';
import { type Outside, sendHttp } from './http.ts';
import type { Message } from './message.ts';
import type { SendOutcome } from './types.ts';

/** Web Push (RFC 8030, 8291, 8292): web-push encrypts and signs, the guarded sender sends. */

export interface PushKeyPair {
  readonly publicKey: string;
  readonly privateKey: string;
}

type Push = z.infer<typeof PushTarget>;

/** An alarm of an hour ago is no push any more: the wall and the mail have it. Common practice, no source. */
const TTL_SECONDS = 3600;
/** RFC 8030 7.2: at least 4096 bytes of ciphertext are carried; far below it with the header. */
const MOST_BODY = 1000;

export function newPushKeys(): PushKeyPair {
  const { publicKey, privateKey } = webPush.generateVAPIDKeys();
  return { publicKey, privateKey };
}

/** Never rejects. `contact`: a mail address that the push service may write to. */
export async function sendPush(
  { subscription }: Push,
  message: Message,
  keys: PushKeyPair,
  contact: string | null,
  outside: Outside,
): Promise<SendOutcome> {
  if (subscription === undefined || contact === null)
    return {
      ok: false,
      code: 'other-side-refused',
      detail: 'subscription or contact is missing',
      passing: false,
    };
  const { title, text, delivery, at } = message;
  const payload = JSON.stringify({ title, body: text.slice(0, MOST_BODY), tag: delivery, at });
  const { endpoint, keys: phone } = subscription;
  try {
    const details = webPush.generateRequestDetails({ endpoint, keys: phone }, payload, {
      vapidDetails: { subject: `mailto:${contact}`, ...keys },
      TTL: TTL_SECONDS,
      urgency: 'high',
    });
    const headers = details.headers as Record<string, string | number>;
    return await sendHttp({ url: endpoint, method: 'POST', headers, body: details.body }, outside);
  } catch {
    // The library refuses keys that are no keys; its words may hold them.
    return {
      ok: false,
      code: 'other-side-refused',
      detail: 'the subscription is not usable',
      passing: false,
    };
  }
}
