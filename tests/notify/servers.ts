import { createServer, type IncomingHttpHeaders, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { SMTPServer, type SMTPServerOptions } from 'smtp-server';
import { readNetwork } from '../../hub/notify/guard.ts';
import type { Outside } from '../../hub/notify/http.ts';
import type { Message } from '../../hub/notify/message.ts';
import { virtualClock } from '../../hub/time/virtual-clock.ts';
import { MORNING } from '../harness/shop.ts';

export interface Heard {
  readonly method: string;
  readonly path: string;
  readonly headers: IncomingHttpHeaders;
  readonly body: Buffer;
}

/** A real HTTP server on a free port of this machine that keeps what it is told. */
export async function listener(answer: (response: ServerResponse, heard: Heard) => void = (r) => r.end()) {
  const heard: Heard[] = [];
  const server = createServer((request, response) => {
    const chunks: Buffer[] = [];
    request.on('data', (chunk: Buffer) => chunks.push(chunk));
    request.on('end', () => {
      const { method = '', url = '', headers } = request;
      const one = { method, path: url, headers, body: Buffer.concat(chunks) };
      heard.push(one);
      answer(response, one);
    });
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const { port } = server.address() as AddressInfo;
  return {
    port,
    url: `http://127.0.0.1:${port}`,
    heard,
    close: () => {
      server.closeAllConnections();
      return new Promise<void>((resolve) => server.close(() => resolve()));
    },
  };
}

export interface Mail {
  readonly from: string;
  readonly to: readonly string[];
  readonly text: string;
}

/** A real SMTP server on a free port of this machine. */
export async function mailbox(options: SMTPServerOptions = {}) {
  const mails: Mail[] = [];
  const server = new SMTPServer({
    authOptional: true,
    disabledCommands: ['STARTTLS'],
    ...options,
    onData(stream, { envelope }, done) {
      const chunks: Buffer[] = [];
      stream.on('data', (chunk: Buffer) => chunks.push(chunk));
      stream.on('end', () => {
        const from = envelope.mailFrom === false ? '' : envelope.mailFrom.address;
        const text = Buffer.concat(chunks).toString();
        mails.push({ from, to: envelope.rcptTo.map(({ address }) => address), text });
        done();
      });
    },
  });
  server.on('error', () => {});
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', () => resolve()));
  const { port } = server.server.address() as AddressInfo;
  return { port, mails, close: () => new Promise<void>((resolve) => server.close(() => resolve())) };
}

/** The world outside with a clock that stands still; `networks`: what the shop allows. */
export function outside(networks: readonly string[] = ['127.0.0.1'], more: Partial<Outside> = {}): Outside {
  const allowed = networks.flatMap((text) => {
    const read = readNetwork(text);
    return 'network' in read ? [read.network] : [];
  });
  return {
    clock: virtualClock(MORNING),
    lookup: async () => {
      throw new Error('no name is known here');
    },
    allowed: () => allowed,
    ...more,
  };
}

export const MESSAGE: Message = {
  delivery: 'shop-7',
  at: MORNING,
  reason: 'raised',
  shop: 'Müller’s forge',
  title: 'Müller’s forge: DANGER: Leave the shop',
  text: 'Carbon monoxide 210 ppm.\nGo out.',
  alarms: [],
};
