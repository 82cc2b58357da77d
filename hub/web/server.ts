import type { IncomingMessage, Server } from 'node:http';
import type { Duplex } from 'node:stream';
import { createAdaptorServer } from '@hono/node-server';
import type { OpenAPIHono } from '@hono/zod-openapi';
import { createWebSocketStream, type WebSocket, WebSocketServer } from 'ws';
import type { Feed, ResumePoint } from './feed.ts';
import { type GuardRules, hostAllowed, originAllowed } from './guard.ts';

/** The feed only listens: whatever a wall sends is a pong or nothing. */
const MOST_FEED_MESSAGE_BYTES = 1024;
const MOST_WALLS = 64;
const PING_MS = 30_000;

export class PortInUseError extends Error {
  readonly code = 'port-in-use';
}

interface WebServerParts {
  readonly app: OpenAPIHono;
  readonly feed: Feed;
  readonly rules: GuardRules;
  readonly bind: string;
  readonly port: number;
  /** MQTT over WebSocket, when the broker is our own. */
  readonly mqttStream: ((stream: Duplex, request: IncomingMessage) => void) | null;
  readonly mostMqttBytes: number;
}

export interface WebServer {
  readonly port: number;
  stop(): Promise<void>;
}

/** HTTP, the live feed, and MQTT over WebSocket on one port. Errors: PortInUseError 'port-in-use'. */
export async function startWebServer(parts: WebServerParts): Promise<WebServer> {
  const server = createAdaptorServer({ fetch: parts.app.fetch }) as Server;
  server.requestTimeout = 30_000;
  server.headersTimeout = 15_000;
  const live = new WebSocketServer({
    noServer: true,
    maxPayload: MOST_FEED_MESSAGE_BYTES,
    perMessageDeflate: false,
  });
  const mqtt = new WebSocketServer({
    noServer: true,
    maxPayload: parts.mostMqttBytes,
    perMessageDeflate: false,
    handleProtocols: (protocols) => (protocols.has('mqtt') ? 'mqtt' : false),
  });
  server.on('upgrade', (request, socket, head) => upgrade(parts, { live, mqtt }, request, socket, head));
  const pings = setInterval(() => dropSilent(live), PING_MS);
  await listen(server, parts.port, parts.bind);
  const address = server.address();
  return {
    port: typeof address === 'object' && address ? address.port : parts.port,
    stop: () => stop(server, [live, mqtt], pings),
  };
}

function upgrade(
  parts: WebServerParts,
  ends: { live: WebSocketServer; mqtt: WebSocketServer },
  request: IncomingMessage,
  socket: Duplex,
  head: Buffer,
): void {
  // A peer that resets in the middle of the handshake must not take the hub down.
  socket.on('error', () => socket.destroy());
  const { host, origin } = request.headers;
  const url = new URL(request.url ?? '/', 'http://hub');
  if (!hostAllowed(host, parts.rules) || !originAllowed(origin, host)) {
    refuse(socket, '403 Forbidden');
    return;
  }
  if (url.pathname === '/api/v1/live') {
    if (ends.live.clients.size >= MOST_WALLS) refuse(socket, '503 Service Unavailable');
    else ends.live.handleUpgrade(request, socket, head, (ws) => joinFeed(parts.feed, ws, resumePoint(url)));
    return;
  }
  const { mqttStream } = parts;
  if (url.pathname === '/mqtt' && mqttStream) {
    ends.mqtt.handleUpgrade(request, socket, head, (ws) => mqttStream(createWebSocketStream(ws), request));
    return;
  }
  refuse(socket, '404 Not Found');
}

function refuse(socket: Duplex, status: string): void {
  socket.end(`HTTP/1.1 ${status}\r\nConnection: close\r\nContent-Length: 0\r\n\r\n`);
}

function resumePoint(url: URL): ResumePoint | null {
  const after = Number(url.searchParams.get('after'));
  const epoch = url.searchParams.get('epoch');
  return epoch !== null && Number.isSafeInteger(after) && after >= 0 ? { epoch, after } : null;
}

const answered = new WeakSet<WebSocket>();

function joinFeed(feed: Feed, ws: WebSocket, resume: ResumePoint | null): void {
  ws.on('error', () => ws.terminate());
  answered.add(ws);
  ws.on('pong', () => answered.add(ws));
  const leave = feed.join(ws, resume);
  ws.on('close', leave);
}

/** A cable that was pulled says nothing: who did not answer the last ping is gone. */
function dropSilent(live: WebSocketServer): void {
  for (const ws of live.clients) {
    if (!answered.delete(ws)) ws.terminate();
    else ws.ping();
  }
}

function listen(server: Server, port: number, bind: string): Promise<void> {
  return new Promise((resolve, reject) => {
    server.once('error', (fault: NodeJS.ErrnoException) => {
      if (fault.code !== 'EADDRINUSE') return reject(fault);
      reject(
        new PortInUseError(
          `port ${port} on ${bind} is taken by another program: end that one, or choose another with --http-port`,
        ),
      );
    });
    server.listen(port, bind, resolve);
  });
}

async function stop(server: Server, ends: readonly WebSocketServer[], pings: NodeJS.Timeout): Promise<void> {
  clearInterval(pings);
  for (const end of ends) {
    for (const ws of end.clients) ws.close(1001, 'the hub is stopping');
  }
  const closed = new Promise<void>((resolve) => server.close(() => resolve()));
  server.closeAllConnections();
  for (const end of ends) for (const ws of end.clients) ws.terminate();
  await closed;
}
