import { type ChildProcess, spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { openArchive } from '../../hub/archive/open.ts';
import { ended } from '../broker/mosquitto.ts';
import { countedIds } from '../intake/support.ts';

export type HubFault = 'none' | 'never-commits' | 'dies-before-commit' | 'dies-after-commit';

export interface KillableHub {
  readonly port: number;
  /** Resolves when so many messages have reached the hub's intake. */
  accepting(count: number): Promise<void>;
  /** SIGKILL; resolves when the process is gone. */
  kill(): Promise<void>;
  readonly gone: Promise<void>;
}

export interface Shop {
  readonly path: string;
  start(fault: HubFault, port?: number): Promise<KillableHub>;
  /** Every value of a channel, from the file, in time order. The hub must be down. */
  values(node: string, name: string): readonly number[];
  clear(): Promise<void>;
}

/** An archive file in a folder of its own, and the hubs that were started on it. */
export function makeShop(): Shop {
  const folder = mkdtempSync(join(tmpdir(), 'soakwatch-kill-'));
  const path = join(folder, 'shop.db');
  const children: ChildProcess[] = [];

  return {
    path,
    async start(fault, port = 0) {
      const program = join(import.meta.dirname, 'kill-hub.ts');
      const args = ['--import', 'tsx', program, path, `${port}`, fault];
      const child = spawn(process.execPath, args, { stdio: ['ignore', 'pipe', 'inherit'] });
      children.push(child);
      return started(child);
    },
    values(node, name) {
      const archive = openArchive({ path, ids: countedIds(), simulated: false, now: 0 });
      try {
        const channel = archive.channels().find((known) => known.node === node && known.name === name);
        if (!channel) return [];
        return archive.readings.range(channel.id, 0, Number.MAX_SAFE_INTEGER).map(({ value }) => value);
      } finally {
        archive.close();
      }
    },
    async clear() {
      for (const child of children) await ended(child, 'SIGKILL');
      rmSync(folder, { recursive: true });
    },
  };
}

function started(child: ChildProcess): Promise<KillableHub> {
  const { stdout } = child;
  if (!stdout) throw new Error('the hub has no standard output');
  const lines = createInterface({ input: stdout });
  let seen = 0;
  let check = () => {};
  const gone = new Promise<void>((resolve) => child.once('exit', () => resolve()));
  return new Promise((resolve, reject) => {
    child.once('exit', () => reject(new Error('the hub ended before it listened')));
    lines.on('line', (line) => {
      if (line === 'accepting') {
        seen += 1;
        check();
        return;
      }
      const { port } = JSON.parse(line) as { port: number };
      resolve({
        port,
        gone,
        kill: () => ended(child, 'SIGKILL'),
        accepting: (count) =>
          new Promise((enough) => {
            check = () => {
              if (seen >= count) enough();
            };
            check();
          }),
      });
    });
  });
}
