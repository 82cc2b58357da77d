import { BLIND_AFTER_SECONDS } from '../../hub/contract/live.ts';
import { reconnectWaitMs } from './backoff.ts';

/**
 * The life of the connection as a pure machine: events with their instants go in, commands come out. Instants
 * are milliseconds of a clock that never jumps (the shell uses `performance.now()`).
 */
export interface Link {
  readonly socket: 'none' | 'opening' | 'open';
  /** Attempts since the last message. */
  readonly attempt: number;
  /** When the socket was asked for. */
  readonly openedAtMs: number;
  /** When to try again; null while a socket is there. */
  readonly retryAtMs: number | null;
  /** When the last message came; the start of the page before the first. */
  readonly heardAtMs: number;
  /** True from the first message on. */
  readonly everHeard: boolean;
  /** True from the loss of the connection until the next message. */
  readonly lost: boolean;
}

export type LinkEvent =
  | { readonly kind: 'message'; readonly atMs: number }
  | { readonly kind: 'closed'; readonly atMs: number; readonly chance: number }
  | { readonly kind: 'tick'; readonly atMs: number; readonly chance: number }
  /** What came did not fit: drop the socket and ask for a snapshot. */
  | { readonly kind: 'resync'; readonly atMs: number; readonly chance: number };

export type LinkCommand = 'nothing' | 'open' | 'drop';

export interface LinkStep {
  readonly link: Link;
  readonly command: LinkCommand;
}

const BLIND_AFTER_MS = BLIND_AFTER_SECONDS * 1000;
/** A socket that has not opened after this long is given up. */
const OPENING_MS = 8_000;

export function startLink(atMs: number): LinkStep {
  const link: Link = {
    socket: 'opening',
    attempt: 0,
    openedAtMs: atMs,
    retryAtMs: null,
    heardAtMs: atMs,
    everHeard: false,
    lost: false,
  };
  return { link, command: 'open' };
}

/** True when nothing on the screen may be taken as current. */
export function isBlind(link: Link, atMs: number): boolean {
  return link.lost || atMs - link.heardAtMs >= BLIND_AFTER_MS;
}

export function stepLink(link: Link, event: LinkEvent): LinkStep {
  switch (event.kind) {
    case 'message':
      return {
        link: { ...link, socket: 'open', attempt: 0, heardAtMs: event.atMs, everHeard: true, lost: false },
        command: 'nothing',
      };
    case 'closed':
      // A socket that this side dropped reports its end too; by then the retry is already planned.
      return link.socket === 'none' ? { link, command: 'nothing' } : lose(link, event, 'nothing');
    case 'resync':
      return lose(link, event, 'drop');
    case 'tick':
      return tick(link, event);
    default:
      return event satisfies never;
  }
}

type Timed = { readonly atMs: number; readonly chance: number };

function lose(link: Link, { atMs, chance }: Timed, command: LinkCommand): LinkStep {
  const retryAtMs = atMs + reconnectWaitMs(link.attempt, chance);
  return {
    link: { ...link, socket: 'none', attempt: link.attempt + 1, retryAtMs, lost: link.everHeard },
    command,
  };
}

function tick(link: Link, event: Timed): LinkStep {
  if (link.retryAtMs !== null) {
    if (event.atMs < link.retryAtMs) return { link, command: 'nothing' };
    return {
      link: { ...link, socket: 'opening', retryAtMs: null, openedAtMs: event.atMs },
      command: 'open',
    };
  }
  const silentSince = link.socket === 'open' ? link.heardAtMs : link.openedAtMs;
  const patience = link.socket === 'open' ? BLIND_AFTER_MS : OPENING_MS;
  if (event.atMs - silentSince < patience) return { link, command: 'nothing' };
  return lose(link, event, 'drop');
}
