import { execFile } from 'node:child_process';
import type { Clock } from '../time/clock.ts';

/**
 * Tells systemd that the hub is ready and that it lives. Node has no unix datagram sockets, so `systemd-notify`, which
 * comes with systemd, says it: the unit needs `Type=notify` and `NotifyAccess=all`. Without NOTIFY_SOCKET nothing
 * is run.
 */
interface ServiceManagerParts {
  readonly env: Readonly<Record<string, string | undefined>>;
  readonly clock: Clock;
  /** Only while it is true the watchdog is petted: a hub that judges nothing is to be started again. */
  readonly healthy: () => boolean;
  readonly onFault: (fault: unknown) => void;
  readonly pid: number;
}

export interface ServiceManager {
  ready(): Promise<void>;
  stopping(): Promise<void>;
}

const DEAF: ServiceManager = { ready: async () => {}, stopping: async () => {} };

export function createServiceManager(parts: ServiceManagerParts): ServiceManager {
  const { env, clock, healthy, onFault, pid } = parts;
  if (!env.NOTIFY_SOCKET) return DEAF;
  let stopPetting = (): void => {};
  // One after another: what was said last must arrive last.
  let last = Promise.resolve();
  const tell = (...words: string[]): Promise<void> => {
    last = last.then(() => run(env, words)).catch(onFault);
    return last;
  };
  return {
    async ready() {
      await tell('READY=1', `MAINPID=${pid}`);
      const limitMs = watchdogMs(env, pid);
      if (limitMs === null) return;
      // sd_watchdog_enabled(3): about every half of the time.
      stopPetting = clock.every(limitMs / 2, () => {
        if (healthy()) void tell('WATCHDOG=1');
      });
    },
    async stopping() {
      stopPetting();
      await tell('STOPPING=1');
    },
  };
}

/** sd_watchdog_enabled(3): microseconds, and for which process they are meant. */
export function watchdogMs(env: Readonly<Record<string, string | undefined>>, pid: number): number | null {
  const { WATCHDOG_USEC: limit, WATCHDOG_PID: meant } = env;
  if (limit === undefined || !/^[1-9]\d*$/.test(limit)) return null;
  return meant === undefined || Number(meant) === pid ? Number(limit) / 1000 : null;
}

function run(env: Readonly<Record<string, string | undefined>>, words: readonly string[]): Promise<void> {
  return new Promise((resolve, reject) => {
    execFile('systemd-notify', words, { env: { ...env }, timeout: 5000 }, (fault) =>
      fault ? reject(fault) : resolve(),
    );
  });
}
