import { chmodSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, describe, expect, it } from 'vitest';
import { createServiceManager, watchdogMs } from '../../hub/notify/service-manager.ts';
import { virtualClock } from '../../hub/time/virtual-clock.ts';
import { MORNING } from '../harness/shop.ts';

const folders: string[] = [];
afterEach(() => {
  for (const folder of folders.splice(0)) rmSync(folder, { recursive: true });
});

/** A programme of the name `systemd-notify` that writes down what it is told. */
function notifier() {
  const folder = mkdtempSync(join(tmpdir(), 'soakwatch-systemd-'));
  folders.push(folder);
  const said = join(folder, 'said');
  const program = join(folder, 'systemd-notify');
  writeFileSync(said, '');
  writeFileSync(program, `#!/bin/sh\necho "$NOTIFY_SOCKET $*" >> ${said}\n`);
  chmodSync(program, 0o755);
  return {
    env: { PATH: `${folder}:/usr/bin:/bin`, NOTIFY_SOCKET: '/run/test' },
    said: () =>
      readFileSync(said, 'utf8')
        .split('\n')
        .filter((line) => line !== ''),
  };
}

function manager(env: Record<string, string>, healthy = () => true) {
  const clock = virtualClock(MORNING);
  const faults: unknown[] = [];
  const made = createServiceManager({ env, clock, healthy, pid: 42, onFault: (fault) => faults.push(fault) });
  return { clock, faults, ...made };
}

describe('the service manager', () => {
  it('is told that the hub is ready, that it lives, and that it stops', async () => {
    const { env, said } = notifier();
    const hub = manager({ ...env, WATCHDOG_USEC: '60000000', WATCHDOG_PID: '42' });
    await hub.ready();
    expect(said()).toEqual(['/run/test READY=1 MAINPID=42']);
    hub.clock.advance(30_000);
    await hub.stopping();
    expect(said().sort()).toEqual([
      '/run/test READY=1 MAINPID=42',
      '/run/test STOPPING=1',
      '/run/test WATCHDOG=1',
    ]);
    hub.clock.advance(300_000);
    expect(said()).toHaveLength(3);
    expect(hub.faults).toEqual([]);
  });

  it('is not told that the hub lives while nothing is judged', async () => {
    const { env, said } = notifier();
    let judging = true;
    const hub = manager({ ...env, WATCHDOG_USEC: '60000000' }, () => judging);
    await hub.ready();
    judging = false;
    hub.clock.advance(600_000);
    await hub.stopping();
    expect(said().some((line) => line.includes('WATCHDOG'))).toBe(false);
  });

  it('is left alone where there is none, and a missing programme stops nothing', async () => {
    const { said, env } = notifier();
    const { NOTIFY_SOCKET: _, ...without } = env;
    const alone = manager(without);
    await alone.ready();
    await alone.stopping();
    expect(said()).toEqual([]);
    const missing = manager({ PATH: '/nowhere', NOTIFY_SOCKET: '/run/test' });
    await missing.ready();
    expect(missing.faults).toHaveLength(1);
  });

  it('reads how often by sd_watchdog_enabled(3)', () => {
    expect(watchdogMs({ WATCHDOG_USEC: '30000000' }, 42)).toBe(30_000);
    expect(watchdogMs({ WATCHDOG_USEC: '30000000', WATCHDOG_PID: '41' }, 42)).toBeNull();
    for (const limit of ['0', '-1', 'soon', '']) expect(watchdogMs({ WATCHDOG_USEC: limit }, 42)).toBeNull();
  });
});
