import type { z } from 'zod';
import {
  type MailTarget,
  type NotifyTarget,
  type NotifyWay,
  type NotifyWayDraft,
  type NotifyWayPatch,
  type ShownTarget,
  NotifyWayDraft as WayDraft,
  type WayTrouble,
} from '../contract/notify.ts';
import { FieldError } from '../watch/errors.ts';

/** Ways as they are kept, with their secrets, and what may be shown of them. */

export interface KeptWay extends NotifyWayDraft {
  readonly id: string;
  readonly createdAt: number;
}

/** A document of the archive that this folder wrote. */
export function keptWay({
  id,
  document,
  createdAt,
}: {
  id: string;
  document: unknown;
  createdAt: number;
}): KeptWay {
  return { ...WayDraft.parse(document), id, createdAt };
}

export function originOf(url: string | undefined): string {
  return url === undefined ? '' : new URL(url).origin;
}

export function shownWay(way: KeptWay, trouble: WayTrouble | null): NotifyWay {
  const { id, name, enabled, rule, createdAt } = way;
  return { id, name, enabled, rule, createdAt, target: shownTarget(way.target), trouble };
}

function shownTarget(target: NotifyTarget): ShownTarget {
  switch (target.kind) {
    case 'e-mail': {
      const { password, ...shown } = target;
      return { ...shown, hasPassword: password !== undefined };
    }
    case 'webhook':
      return { kind: 'webhook', origin: originOf(target.url) };
    case 'push':
      return { kind: 'push', origin: originOf(target.subscription?.endpoint) };
    default:
      return target satisfies never;
  }
}

/**
 * A way with a change on it; a secret that the change leaves out stays.
 *
 * @throws FieldError where the kind changes, or where a kept secret would go to another place than it was given for.
 */
export function changedWay(way: KeptWay, { target, ...patch }: NotifyWayPatch): KeptWay {
  const named = Object.fromEntries(Object.entries(patch).filter(([, value]) => value !== undefined));
  const next: KeptWay = { ...way, ...named };
  return target === undefined ? next : { ...next, target: changedTarget(way.target, target) };
}

function changedTarget(old: NotifyTarget, next: NotifyTarget): NotifyTarget {
  if (old.kind === 'e-mail' && next.kind === 'e-mail') return changedMail(old, next);
  if (old.kind === 'webhook' && next.kind === 'webhook') return { ...old, ...given(next) };
  if (old.kind === 'push' && next.kind === 'push') return { ...old, ...given(next) };
  throw new FieldError('/target/kind', 'a way stays what it is: add another and remove this one');
}

type Mail = z.infer<typeof MailTarget>;

/** Whoever may change the server must not get the password of the old one sent to it. */
function changedMail(old: Mail, next: Mail): Mail {
  if (next.user === '' || next.password !== undefined || old.password === undefined) return next;
  const isSamePlace = old.host === next.host && old.port === next.port && old.security === next.security;
  if (!isSamePlace) throw new FieldError('/target/password', 'another server: enter the password again');
  return { ...next, password: old.password };
}

function given<T extends object>(target: T): T {
  return Object.fromEntries(Object.entries(target).filter(([, value]) => value !== undefined)) as T;
}

/** What a new way needs that a change may leave out. @throws FieldError */
export function checkWhole({ target }: NotifyWayDraft): void {
  switch (target.kind) {
    case 'e-mail':
      if (target.user !== '' && target.password === undefined)
        throw new FieldError('/target/password', 'signing in needs a password');
      if (target.user !== '' && target.security === 'none')
        throw new FieldError(
          '/target/security',
          'a password is never sent over an open connection: choose tls or starttls',
        );
      return;
    case 'webhook':
      if (target.url === undefined) throw new FieldError('/target/url', 'an address is needed');
      if (target.secret === undefined)
        throw new FieldError('/target/secret', 'a secret is needed: the receiver knows the hub by it');
      return;
    case 'push':
      if (target.subscription === undefined)
        throw new FieldError('/target/subscription', 'press the button on the phone that is to be told');
      return;
    default:
      target satisfies never;
  }
}
