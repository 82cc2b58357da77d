import { readFile } from 'node:fs/promises';
import { createServer, type IncomingMessage, type ServerResponse } from 'node:http';
import { extname, join, normalize } from 'node:path';
import { fileURLToPath } from 'node:url';
import { type WebSocket, WebSocketServer } from 'ws';
import type { LiveMessage, LiveSnapshot } from '../../hub/contract/live.ts';
import type { ReadingSeries } from '../../hub/contract/reading.ts';
import { HARDEN, TEMPER } from './mock-shop.ts';

/**
 * A hub of cardboard for looking at the screens and for tests: it serves the built dashboard under the hub's
 * own content policy and plays a scripted feed. The real hub has its own tests.
 */
export interface MockHub {
  readonly port: number;
  /** Every request that was made, as `METHOD path`. */
  readonly requests: string[];
  /** What the live feed was asked with, query included, in order. */
  readonly joins: string[];
  send(message: LiveMessage): void;
  /** Ends every live connection; new ones are refused until `back`. */
  vanish(): void;
  /** Keeps the sockets open and says nothing more, not even a heartbeat. */
  fallSilent(): void;
  back(snapshot: LiveSnapshot): void;
  stop(): Promise<void>;
}

export interface MockScript {
  readonly snapshot: LiveSnapshot;
  readonly series: (channelId: string) => ReadingSeries | null;
}

const ROOT = join(fileURLToPath(new URL('.', import.meta.url)), '..', '..', 'dist', 'dashboard');
const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript',
  '.css': 'text/css',
  '.woff2': 'font/woff2',
  '.svg': 'image/svg+xml',
};
const POLICY =
  "default-src 'self'; script-src 'self'; style-src 'self'; img-src 'self' data:; connect-src 'self' ws: wss:";

export async function startMockHub(script: MockScript): Promise<MockHub> {
  const requests: string[] = [];
  const joins: string[] = [];
  const sockets = new Set<WebSocket>();
  let current = script.snapshot;
  let mode: 'speaking' | 'silent' | 'gone' = 'speaking';
  const startedAt = Date.now();
  const hubNow = () => current.now + (Date.now() - startedAt);
  const say = (socket: WebSocket, message: LiveMessage) => socket.send(JSON.stringify(message));
  const heartbeat = (): LiveMessage => ({
    type: 'heartbeat',
    seq: current.seq,
    now: hubNow(),
    judging: true,
  });

  const server = createServer((request, response) => {
    requests.push(`${request.method} ${request.url}`);
    void answer(request, response, script);
  });
  const live = new WebSocketServer({ noServer: true });
  server.on('upgrade', (request, socket, head) => {
    joins.push(request.url ?? '');
    if (mode === 'gone') {
      socket.destroy();
      return;
    }
    live.handleUpgrade(request, socket, head, (ws) => {
      sockets.add(ws);
      ws.on('close', () => sockets.delete(ws));
      if (mode === 'speaking') say(ws, { ...current, now: hubNow() });
    });
  });
  const beating = setInterval(() => {
    if (mode !== 'speaking') return;
    for (const socket of sockets) say(socket, heartbeat());
  }, 1000);
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const address = server.address();
  return {
    port: typeof address === 'object' && address ? address.port : 0,
    requests,
    joins,
    send: (message) => {
      if (message.type !== 'snapshot') current = { ...current, seq: message.seq };
      for (const socket of sockets) say(socket, message);
    },
    vanish: () => {
      mode = 'gone';
      for (const socket of sockets) socket.terminate();
    },
    fallSilent: () => {
      mode = 'silent';
    },
    back: (snapshot) => {
      current = snapshot;
      mode = 'speaking';
    },
    stop: async () => {
      clearInterval(beating);
      for (const socket of sockets) socket.terminate();
      server.closeAllConnections();
      await new Promise<void>((resolve) => server.close(() => resolve()));
    },
  };
}

async function answer(request: IncomingMessage, response: ServerResponse, script: MockScript): Promise<void> {
  const path = new URL(request.url ?? '/', 'http://mock').pathname;
  if (path.startsWith('/api/')) {
    answerApi(path, response, script);
    return;
  }
  const file = normalize(path === '/' ? 'index.html' : path.slice(1));
  try {
    const body = await readFile(join(ROOT, file));
    response.writeHead(200, {
      'content-type': TYPES[extname(file)] ?? 'application/octet-stream',
      'content-security-policy': POLICY,
    });
    response.end(body);
  } catch {
    response.writeHead(404).end();
  }
}

function answerApi(path: string, response: ServerResponse, script: MockScript): void {
  const body = bodyFor(path, script);
  const problem = { type: 'urn:problem:not-found', title: 'Not found', status: 404, code: 'not-found' };
  response.writeHead(body === null ? 404 : 200, { 'content-type': 'application/json' });
  response.end(JSON.stringify(body ?? problem));
}

function bodyFor(path: string, script: MockScript): unknown {
  if (path === '/api/v1/schedules') return [HARDEN, TEMPER];
  const channelId = /^\/api\/v1\/channels\/([^/]+)\/readings$/.exec(path)?.[1];
  if (channelId) return script.series(channelId);
  const alarmId = /^\/api\/v1\/alarms\/([^/]+)\/acknowledge$/.exec(path)?.[1];
  const alarm = script.snapshot.alarms.find((candidate) => candidate.id === alarmId);
  return alarm ? { ...alarm, state: 'acknowledged' } : null;
}
