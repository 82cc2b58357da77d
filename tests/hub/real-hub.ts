import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pino } from 'pino';
import { WebSocket } from 'ws';
import { type Hub, startHub } from '../../hub/hub.ts';
import { readSettings } from '../../hub/settings.ts';
import { systemClock } from '../../hub/time/clock.ts';

/** A hub as `npm start` runs it, on free ports, with its archive in a folder of its own. */
export interface RealHub extends Hub {
  readonly dataDir: string;
  readonly mqttPort: number;
  // biome-ignore lint/suspicious/noExplicitAny: a test reads answers of many shapes; each assertion checks its own
  api(method: string, path: string, body?: unknown): Promise<any>;
}

export function temporaryFolder(): { path: string; remove: () => void } {
  const path = mkdtempSync(join(tmpdir(), 'soakwatch-test-'));
  return { path, remove: () => rmSync(path, { recursive: true, force: true }) };
}

export async function realHub(dataDir: string, more: readonly string[] = []): Promise<RealHub> {
  const args = ['--data', dataDir, '--http-port', '0', '--mqtt-port', '0', ...more];
  const hub = await startHub({
    settings: readSettings(args, {}),
    clock: systemClock,
    log: pino({ level: 'silent' }),
    dashboardDir: 'dist/dashboard',
  });
  return {
    ...hub,
    dataDir,
    mqttPort: Number(new URL(hub.mqttAddress).port),
    async api(method, path, body) {
      const answer = await fetch(`${hub.wallUrl}api/v1/${path}`, {
        method,
        headers: { 'content-type': 'application/json' },
        ...(body === undefined ? {} : { body: JSON.stringify(body) }),
      });
      const text = await answer.text();
      if (!answer.ok) throw new Error(`${method} ${path}: ${answer.status} ${text}`);
      return text ? JSON.parse(text) : null;
    },
  };
}

/** Runs a programme to its end. Rejects when it is missing or fails. */
export function runProgram(program: string, args: readonly string[]): Promise<string> {
  return new Promise((resolve, reject) => {
    const child = spawn(program, args, { stdio: ['ignore', 'pipe', 'pipe'] });
    let out = '';
    child.stdout.on('data', (data) => {
      out += String(data);
    });
    child.stderr.on('data', (data) => {
      out += String(data);
    });
    child.on('error', reject);
    child.on('exit', (code) =>
      code === 0 ? resolve(out) : reject(new Error(`${program} ended with ${code}: ${out}`)),
    );
  });
}

/** The live feed as a wall hears it. */
export class FeedEar {
  readonly #ws: WebSocket;
  readonly #heard: { type: string; [key: string]: unknown }[] = [];
  #woken: () => void = () => {};

  constructor(hub: RealHub, query = '') {
    this.#ws = new WebSocket(`${hub.wallUrl.replace('http', 'ws')}api/v1/live${query}`);
    this.#ws.on('message', (data) => {
      this.#heard.push(JSON.parse(String(data)));
      this.#woken();
    });
  }

  /** The first message, heard or yet to come, that fits. */
  async hear(
    fits: (message: { type: string; [key: string]: unknown }) => boolean,
  ): Promise<{ type: string; [key: string]: unknown }> {
    for (;;) {
      const found = this.#heard.find(fits);
      if (found) return found;
      await new Promise<void>((resolve) => {
        this.#woken = resolve;
      });
    }
  }

  close(): void {
    this.#ws.close();
  }
}
