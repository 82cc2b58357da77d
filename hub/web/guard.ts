import { isIP } from 'node:net';
import type { MiddlewareHandler } from 'hono';
import { answerProblem } from './problem.ts';

/**
 * Nobody signs in yet, so the hub must not be reachable through somebody else's web page: the Host must be
 * this machine by address or by a name we were told (against DNS rebinding), and a request that carries an
 * Origin must come from our own pages (against cross-site requests).
 */
export interface GuardRules {
  /** Host names that may be used beside localhost and plain addresses. */
  readonly hostNames: readonly string[];
}

export function hostAllowed(host: string | undefined, rules: GuardRules): boolean {
  if (host === undefined) return false;
  const name = hostName(host);
  return name === 'localhost' || isIP(name) !== 0 || rules.hostNames.includes(name);
}

/** No Origin: not a browser, or a plain navigation. An Origin must name the host it is sent to. */
export function originAllowed(origin: string | undefined, host: string | undefined): boolean {
  if (origin === undefined) return true;
  try {
    return host !== undefined && new URL(origin).host === host.toLowerCase();
  } catch {
    return false;
  }
}

function hostName(host: string): string {
  const bracket = /^\[([^\]]+)\]/.exec(host);
  return (bracket?.[1] ?? host.replace(/:\d+$/, '')).toLowerCase();
}

export function guard(rules: GuardRules): MiddlewareHandler {
  return async (c, next) => {
    const host = c.req.header('host');
    if (!hostAllowed(host, rules)) {
      return answerProblem(
        c,
        'forbidden-origin',
        'this hub answers to its address or to localhost only; name further host names with --host-name',
      );
    }
    if (!originAllowed(c.req.header('origin'), host)) {
      return answerProblem(c, 'forbidden-origin', 'a page from elsewhere may not speak to this hub');
    }
    return next();
  };
}
