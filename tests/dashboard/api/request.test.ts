import { describe, expect, it } from 'vitest';
import { createApi } from '../../../dashboard/api/client.ts';
import { ApiError } from '../../../dashboard/api/error.ts';
import type { Fetch } from '../../../dashboard/api/request.ts';
import { HARDEN } from '../mock-shop.ts';

interface Asked {
  readonly address: string;
  readonly init: RequestInit;
}

/** A hub that answers one thing, and remembers what it was asked. */
function hubAnswering(answer: () => Response): { asked: Asked[]; fetch: Fetch } {
  const asked: Asked[] = [];
  return {
    asked,
    fetch: async (address, init) => {
      asked.push({ address, init });
      return answer();
    },
  };
}

const reply = (body: unknown, status = 200) => new Response(JSON.stringify(body), { status });

async function failureOf(work: Promise<unknown>): Promise<ApiError> {
  const fault = await work.then(
    () => null,
    (error: unknown) => error,
  );
  if (fault instanceof ApiError) return fault;
  throw new Error('it should have failed with an ApiError');
}

describe('the client of the hub', () => {
  it('asks for what was named and hands back what the contract knows', async () => {
    const hub = hubAnswering(() => reply([HARDEN]));
    const schedules = await createApi(hub.fetch).listSchedules();
    expect(schedules).toEqual([HARDEN]);
    expect(hub.asked[0]?.address).toBe('/api/v1/schedules');
    expect(hub.asked[0]?.init.method).toBe('GET');
  });

  it('names only the questions that were asked, and escapes ids', async () => {
    const hub = hubAnswering(() => reply([]));
    const api = createApi(hub.fetch);
    await api.listFirings({ status: 'running', limit: 20 });
    await api.listNotes('a/b');
    expect(hub.asked.map(({ address }) => address)).toEqual([
      '/api/v1/firings?status=running&limit=20',
      '/api/v1/firings/a%2Fb/notes',
    ]);
  });

  it('sends bodies as JSON, and says so', async () => {
    const hub = hubAnswering(() => reply(HARDEN, 201));
    await createApi(hub.fetch).createSchedule({ name: 'x', segments: [] });
    const init = hub.asked[0]?.init;
    expect(init?.body).toBe('{"name":"x","segments":[]}');
    expect(init?.headers).toMatchObject({ 'content-type': 'application/json' });
  });

  it('turns a problem (RFC 9457) into an error with its code and its field errors', async () => {
    const problem = {
      type: 'urn:soakwatch:problem:beyond-rating',
      title: 'Beyond the rating',
      status: 422,
      detail: 'the oven is built for 300 °C',
      code: 'beyond-rating',
      errors: [{ path: 'segments.0.targetCelsius', message: 'at most 300 °C' }],
    };
    const hub = hubAnswering(() => reply(problem, 422));
    const error = await failureOf(createApi(hub.fetch).startFiring({ furnaceId: 'f', scheduleId: 's' }));
    expect(error).toMatchObject({ kind: 'refused', code: 'beyond-rating', status: 422 });
    expect(error.message).toBe('the oven is built for 300 °C');
    expect(error.fieldError('segments.0.targetCelsius')).toBe('at most 300 °C');
    expect(error.fieldError('name')).toBeUndefined();
  });

  it('does not take an answer that the contract does not know', async () => {
    const hub = hubAnswering(() => reply([{ ...HARDEN, segments: 'later' }]));
    const error = await failureOf(createApi(hub.fetch).listSchedules());
    expect(error).toMatchObject({ kind: 'answer-not-understood', status: 200 });
  });

  it('does not take a page of HTML for a problem, nor for an answer', async () => {
    const page = () => new Response('<h1>502</h1>', { status: 502 });
    const refused = await failureOf(createApi(hubAnswering(page).fetch).listFirings());
    expect(refused).toMatchObject({ kind: 'answer-not-understood', status: 502 });
    const taken = await failureOf(
      createApi(hubAnswering(() => new Response('<h1>hi</h1>')).fetch).listFirings(),
    );
    expect(taken.kind).toBe('answer-not-understood');
  });

  it('says that the hub was not reached when it was not', async () => {
    const api = createApi(() => Promise.reject(new TypeError('fetch failed')));
    const error = await failureOf(api.deleteFiring('x'));
    expect(error).toMatchObject({ kind: 'hub-unreachable', code: 'hub-unreachable', status: 0 });
    expect(error.message).toContain('DELETE /api/v1/firings/x');
  });

  it('wants nothing back from a deletion', async () => {
    const api = createApi(hubAnswering(() => new Response(null, { status: 204 })).fetch);
    await expect(api.setup.removeFurnace('f')).resolves.toBeUndefined();
  });
});
