import { type ChildProcess, spawn } from 'node:child_process';
import { existsSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

const BROKER = '/usr/sbin/mosquitto';

export interface Mosquitto {
  readonly port: number;
  stop(): Promise<void>;
}

/** Debian's mosquitto on a free port, persistence off, with a configuration of its own. */
export async function startMosquitto(extra: readonly string[] = []): Promise<Mosquitto> {
  needs(BROKER, 'mosquitto');
  // Between finding a free port and taking it, somebody else may take it: then another is tried.
  return (await tryMosquitto(extra).catch(() => null)) ?? (await tryMosquitto(extra));
}

async function tryMosquitto(extra: readonly string[]): Promise<Mosquitto> {
  const port = await freePort();
  const folder = mkdtempSync(join(tmpdir(), 'soakwatch-mosquitto-'));
  const config = join(folder, 'mosquitto.conf');
  const lines = [`listener ${port} 127.0.0.1`, 'allow_anonymous true', 'persistence false', ...extra];
  writeFileSync(config, `${lines.join('\n')}\n`);
  const child = spawn(BROKER, ['-v', '-c', config], { stdio: ['ignore', 'ignore', 'pipe'] });
  const clear = () => rmSync(folder, { recursive: true });
  try {
    await says(child, 'running');
  } catch (fault) {
    clear();
    throw fault;
  }
  return {
    port,
    async stop() {
      await ended(child, 'SIGTERM');
      clear();
    },
  };
}

/** A missing program fails the test: a skipped contract is a contract nobody holds. */
export function needs(path: string, debianPackage: string): void {
  if (existsSync(path)) return;
  throw new Error(`${path} is missing and this test needs it: apt-get install ${debianPackage}`);
}

/** A port that was free a moment ago. */
export function freePort(): Promise<number> {
  return new Promise((resolve, reject) => {
    const server = createServer();
    server.once('error', reject);
    server.listen(0, '127.0.0.1', () => {
      const address = server.address();
      const port = typeof address === 'object' && address ? address.port : 0;
      server.close(() => resolve(port));
    });
  });
}

/** Waits until a program has said `words` on its standard error; its end before that is a failure. */
function says(child: ChildProcess, words: string): Promise<void> {
  return new Promise((resolve, reject) => {
    let said = '';
    child.once('error', reject);
    child.once('exit', (code) => reject(new Error(`the program ended with ${code}: ${said}`)));
    child.stderr?.on('data', (chunk: Buffer) => {
      said += chunk.toString();
      if (said.includes(words)) resolve();
    });
  });
}

/** Ends a program that a test has started, and waits for its end. */
export function ended(child: ChildProcess, signal: NodeJS.Signals): Promise<void> {
  if (child.exitCode !== null || child.signalCode !== null) return Promise.resolve();
  return new Promise((resolve) => {
    child.once('exit', () => resolve());
    child.kill(signal);
  });
}
