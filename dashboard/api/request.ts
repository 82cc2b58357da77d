import type { z } from 'zod';
import { Problem } from '../../hub/contract/problem.ts';
import { ApiError } from './error.ts';

/** Sends one request and parses its answer. Everything that can go wrong becomes one `ApiError`. */

/** The root of the hub's API. */
export const API = '/api/v1';

export type Fetch = (address: string, init: RequestInit) => Promise<Response>;

export interface Call {
  readonly method: 'GET' | 'POST' | 'PUT' | 'PATCH' | 'DELETE';
  readonly path: string;
  readonly body?: unknown;
  /** Sent as it is instead of a body, under its own type. */
  readonly file?: Blob;
}

export type Send = <T>(call: Call, schema: z.ZodType<T>) => Promise<T>;
export type SendForNothing = (call: Call) => Promise<void>;

/** A sender that talks to `base` (empty: where the page came from) through `fetchLike`. */
export function createSend(fetchLike: Fetch, base: string): { send: Send; sendForNothing: SendForNothing } {
  const exchange = async (call: Call): Promise<Response> => {
    const response = await reach(fetchLike, base, call);
    if (!response.ok) throw await refusal(response, call);
    return response;
  };
  return {
    send: async (call, schema) => {
      const response = await exchange(call);
      const parsed = schema.safeParse(await json(response));
      if (parsed.success) return parsed.data;
      throw notUnderstood(response, call, parsed.error.message);
    },
    sendForNothing: async (call) => {
      await exchange(call);
    },
  };
}

async function reach(fetchLike: Fetch, base: string, call: Call): Promise<Response> {
  const init: RequestInit = { method: call.method, headers: { accept: 'application/json' } };
  if (call.body !== undefined) {
    init.body = JSON.stringify(call.body);
    init.headers = { accept: 'application/json', 'content-type': 'application/json' };
  }
  if (call.file !== undefined) {
    init.body = call.file;
    init.headers = { accept: 'application/json', 'content-type': call.file.type };
  }
  try {
    return await fetchLike(`${base}${call.path}`, init);
  } catch (cause) {
    const reason = cause instanceof Error ? cause.message : String(cause);
    throw new ApiError('hub-unreachable', `${call.method} ${call.path}: no answer (${reason})`, {
      status: 0,
    });
  }
}

async function refusal(response: Response, call: Call): Promise<ApiError> {
  const parsed = Problem.safeParse(await json(response));
  if (!parsed.success) return notUnderstood(response, call, 'a refusal that is not a problem document');
  const problem = parsed.data;
  return new ApiError('refused', problem.detail ?? problem.title, { status: response.status, problem });
}

function notUnderstood(response: Response, call: Call, why: string): ApiError {
  const text = `${call.method} ${call.path} answered ${response.status}: ${why}`;
  return new ApiError('answer-not-understood', text, { status: response.status });
}

/** A query string of what is named; nothing when nothing is. */
export function asked(query: object = {}): string {
  const named = Object.entries(query).filter(([, value]) => value !== undefined);
  if (named.length === 0) return '';
  return `?${new URLSearchParams(named.map(([key, value]) => [key, String(value)])).toString()}`;
}

/** The answer's JSON, or undefined when it is none: the schema then says so. */
async function json(response: Response): Promise<unknown> {
  try {
    return await response.json();
  } catch {
    return undefined;
  }
}
