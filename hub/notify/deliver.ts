import type { Outside } from './http.ts';
import { sendMail } from './mail.ts';
import type { Message } from './message.ts';
import { sendPush } from './push.ts';
import type { SettingsDesk } from './settings.ts';
import type { SendOutcome } from './types.ts';
import type { KeptWay } from './ways.ts';
import { sendWebhook } from './webhook.ts';

/** Sends one message by one way. Never rejects. */
export type Deliver = (way: KeptWay, message: Message) => Promise<SendOutcome>;

export function createDeliver(outside: Outside, settings: SettingsDesk): Deliver {
  return ({ target }, message) => {
    switch (target.kind) {
      case 'e-mail':
        return sendMail(target, message, outside);
      case 'webhook':
        return sendWebhook(target, message, outside);
      case 'push':
        return sendPush(target, message, settings.pushKeys(), settings.kept().contact, outside);
      default:
        return target satisfies never;
    }
  };
}
