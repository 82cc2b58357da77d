import { type ClientRequest, type IncomingMessage, request as plain, type RequestOptions } from 'node:http';
import { request as secure } from 'node:https';
import type { LookupFunction } from 'node:net';
import type { Clock } from '../time/clock.ts';
import { type Admitted, admit, type Lookup, type Network } from './guard.ts';
import type { SendOutcome } from './types.ts';

/** One guarded request to a place outside: checked address, no redirect, bounded in time and size. */

export interface Outside {
  readonly clock: Clock;
  readonly lookup: Lookup;
  readonly allowed: () => readonly Network[];
  /** Certificate authority to trust instead of the system's, PEM; the hub itself leaves it to NODE_EXTRA_CA_CERTS. */
  readonly ca?: string;
}

export interface HttpMessage {
  readonly url: string;
  readonly method: 'GET' | 'POST';
  readonly headers: Readonly<Record<string, string | number>>;
  readonly body: Uint8Array | null;
}

const MOST_MS = 10_000;
const MOST_ANSWER_BYTES = 16_384;

/** The answer is read no further than its status: what it says could be anything. Never rejects. */
export async function sendHttp(message: HttpMessage, outside: Outside): Promise<SendOutcome> {
  const url = new URL(message.url);
  const admitted = await admit(url.hostname, outside.allowed(), outside.lookup);
  if (!admitted.ok) return admitted;
  try {
    return judge(await exchange(url, message, admitted, outside), url);
  } catch (fault) {
    return failed(fault, url);
  }
}

function exchange(
  url: URL,
  { method, headers, body }: HttpMessage,
  { address, family }: Extract<Admitted, { ok: true }>,
  { clock, ca }: Outside,
): Promise<number> {
  // Node asks this instead of the resolver: the connection goes to the address that was checked, whatever the name
  // says by now. Certificates are still checked against the name.
  const pinned: LookupFunction = (_host, options, done) =>
    options.all ? done(null, [{ address, family }]) : done(null, address, family);
  const options: RequestOptions = { method, headers, lookup: pinned, agent: false };
  const trust = ca === undefined ? {} : { ca };
  return new Promise((resolve, reject) => {
    const request = url.protocol === 'https:' ? secure(url, { ...options, ...trust }) : plain(url, options);
    const cancel = clock.after(MOST_MS, () => request.destroy(new Error('no answer in time')));
    const settle = (end: () => void): void => {
      cancel();
      end();
    };
    request.on('error', (fault) => settle(() => reject(fault)));
    request.on('response', (response) =>
      drain(request, response, () => settle(() => resolve(response.statusCode ?? 0))),
    );
    request.end(body ?? undefined);
  });
}

/** Reads a little so that the connection ends politely, and cuts off who says more. */
function drain(request: ClientRequest, response: IncomingMessage, done: () => void): void {
  let bytes = 0;
  response.on('data', (chunk: Buffer) => {
    bytes += chunk.length;
    if (bytes <= MOST_ANSWER_BYTES) return;
    done();
    request.destroy();
  });
  response.on('end', done);
}

function judge(status: number, { host }: URL): SendOutcome {
  if (status >= 200 && status < 300) return { ok: true };
  const detail = `${host} answered ${status}`;
  if (status >= 300 && status < 400)
    return {
      ok: false,
      code: 'redirect-refused',
      detail: `${detail}, another address: enter that one`,
      passing: false,
    };
  if (status === 404 || status === 410) return { ok: false, code: 'gone', detail, passing: false };
  const passing = status === 408 || status === 425 || status === 429 || status >= 500;
  return { ok: false, code: passing ? 'other-side-failed' : 'other-side-refused', detail, passing };
}

/** Codes of TLS that no waiting mends (nodejs.org, X509 certificate error codes). */
const TLS_CODE = /CERT|TLS|SSL|SELF_SIGNED|UNABLE_TO/;

function failed(fault: unknown, { host }: URL): SendOutcome {
  const code = fault instanceof Error && 'code' in fault ? String(fault.code) : '';
  if (TLS_CODE.test(code))
    return { ok: false, code: 'certificate-refused', detail: `${host}: ${code}`, passing: false };
  const said = code || (fault instanceof Error ? fault.message : 'unknown');
  return { ok: false, code: 'not-reached', detail: `${host} could not be reached (${said})`, passing: true };
}
