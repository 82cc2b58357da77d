import type { Clock } from '../time/clock.ts';
import type { Outside } from './http.ts';
import { sendMail } from './mail.ts';
import type { Message } from './message.ts';
import { sendPush } from './push.ts';
import type { SettingsDesk } from './settings.ts';
import type { SendOutcome } from './types.ts';
import type { KeptWay } from './ways.ts';
import { sendWebhook } from './webhook.ts';

/** Longer than every time limit below it: a server that drips byte by byte must not hold a way up for ever. */
const MOST_MS = 30_000;

/** Sends one message by one way, or gives up after 30 s. Never rejects. */
export type Deliver = (way: KeptWay, message: Message) => Promise<SendOutcome>;

export function createDeliver(outside: Outside, settings: SettingsDesk): Deliver {
  const send: Deliver = ({ target }, message) => {
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
  return (way, message) => inTime(send(way, message), outside.clock);
}

function inTime(work: Promise<SendOutcome>, clock: Clock): Promise<SendOutcome> {
  return new Promise((resolve) => {
    const detail = `nothing came of it within ${MOST_MS / 1000} s`;
    const late: SendOutcome = { ok: false, code: 'not-reached', detail, passing: true };
    const cancel = clock.after(MOST_MS, () => resolve(late));
    void work.then((outcome) => {
      cancel();
      resolve(outcome);
    });
  });
}
