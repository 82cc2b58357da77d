import type { Archive } from '../archive/types.ts';
import type { KeptNotifySettings } from '../contract/notify.ts';
import { type Outside, sendHttp } from './http.ts';

/**
 * The dead man's ping: while the hub stores and judges it calls an address of the shop's choice; a service outside
 * that hears nothing for longer raises the alarm. So it must not be this hub that notices.
 */
interface PingParts {
  readonly archive: Archive;
  readonly outside: Outside;
  readonly settings: () => KeptNotifySettings;
  readonly healthy: () => boolean;
}

export interface Ping {
  /** Null: not yet. `at` in epoch ms. */
  tick(at: number): Promise<void> | null;
}

export function createPing({ archive, outside, settings, healthy }: PingParts): Ping {
  let last = Number.NEGATIVE_INFINITY;
  let wasOk: boolean | null = null;
  return {
    tick(at) {
      const { pingUrl: url, pingEveryMinutes } = settings();
      if (url === null || !healthy() || at - last < pingEveryMinutes * 60_000) return null;
      last = at;
      return call(url);
    },
  };

  async function call(url: string): Promise<void> {
    const headers = { 'user-agent': 'Soakwatch' };
    const outcome = await sendHttp({ url, method: 'GET', headers, body: null }, outside);
    // One line a change: a log full of pings hides what matters.
    if (outcome.ok === wasOk) return;
    wasOk = outcome.ok;
    archive.logNotify({
      at: outside.clock.now(),
      wayId: null,
      way: new URL(url).origin,
      kind: 'ping',
      reason: 'alive',
      title: '',
      outcome: outcome.ok ? 'sent' : 'failed',
      code: outcome.ok ? null : outcome.code,
      detail: outcome.ok ? '' : outcome.detail,
      attempt: 1,
    });
  }
}
