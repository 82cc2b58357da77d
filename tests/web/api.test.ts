import { describe, expect, it } from 'vitest';
import { declaredRoutes } from '../../hub/web/route.ts';
import { type Api, makeApi } from './api-client.ts';

const FURNACE = { name: 'Forge', kind: 'gas-forge', ratedCelsius: 1300 };
const SCHEDULE = {
  name: 'Anneal',
  segments: [
    { kind: 'ramp', targetCelsius: 860 },
    { kind: 'soak', targetCelsius: 860, durationSeconds: 900 },
  ],
};

async function ready(): Promise<Api & { furnaceId: string; channelId: string; scheduleId: string }> {
  const api = makeApi();
  const furnace = await api.call('POST', '/api/v1/furnaces', FURNACE);
  const channel = await api.call('POST', '/api/v1/channels', {
    node: 'forge-1',
    name: 'chamber',
    quantity: 'temperature',
    furnaceId: furnace.body.id,
  });
  const schedule = await api.call('POST', '/api/v1/schedules', SCHEDULE);
  return { ...api, furnaceId: furnace.body.id, channelId: channel.body.id, scheduleId: schedule.body.id };
}

describe('the API', () => {
  it('has every route that other programs rely on, each with a rule', async () => {
    const { body } = await makeApi().call('GET', '/openapi.json');
    expect(body.openapi).toBe('3.1.0');
    const named: readonly [string, readonly string[]][] = [
      ['/healthz', ['get']],
      ['/api/v1/nodes', ['get', 'post']],
      ['/api/v1/channels', ['get', 'post']],
      ['/api/v1/furnaces', ['get', 'post']],
      ['/api/v1/schedules', ['get', 'post']],
      ['/api/v1/firings', ['get', 'post']],
      ['/api/v1/firings/{id}/finish', ['post']],
      ['/api/v1/channels/{id}/readings', ['get']],
      ['/api/v1/firings/{id}/record', ['get']],
      ['/api/v1/alarms', ['get']],
      ['/api/v1/alarms/{id}/acknowledge', ['post']],
    ];
    for (const [path, methods] of named)
      expect(Object.keys(body.paths[path] ?? {}), path).toEqual(expect.arrayContaining([...methods]));
    const documented = Object.entries(body.paths).flatMap(([path, methods]) =>
      Object.keys(methods as object).map((method) => `${method} ${path}`),
    );
    const declared = declaredRoutes().map(({ method, path }) => `${method} ${path}`);
    expect(documented.sort()).toEqual(declared.sort());
  });

  it('makes, reads, changes and puts away a furnace; a change resets nothing it does not name', async () => {
    const api = makeApi();
    const made = await api.call('POST', '/api/v1/furnaces', { ...FURNACE, note: 'two burners' });
    expect(made.status).toBe(201);
    const path = `/api/v1/furnaces/${made.body.id}`;
    expect((await api.call('PATCH', path, { name: 'Big forge' })).body).toMatchObject({
      name: 'Big forge',
      note: 'two burners',
    });
    expect((await api.call('DELETE', path)).status).toBe(204);
    expect((await api.call('GET', '/api/v1/furnaces')).body).toEqual([]);
  });

  it('refuses with a problem that has a stable code, every fault and its place', async () => {
    const { call } = makeApi();
    const answer = await call('POST', '/api/v1/schedules', {
      name: '',
      segments: [{ kind: 'soak', targetCelsius: 800, durationSeconds: -5 }],
    });
    expect(answer).toMatchObject({
      status: 400,
      type: 'application/problem+json',
      body: { code: 'invalid-request' },
    });
    expect(answer.body.type).toBe('urn:soakwatch:problem:invalid-request');
    expect(answer.body.errors.map((error: { path: string }) => error.path)).toEqual([
      '/name',
      '/segments/0/durationSeconds',
    ]);
  });

  it.each([
    ['broken JSON', '{"name":', 400, 'invalid-request'],
    ['a body that is too large', JSON.stringify({ name: 'x'.repeat(300_000) }), 413, 'payload-too-large'],
    ['a field nobody knows', { ...FURNACE, colour: 'red' }, 400, 'invalid-request'],
    ['a rating in words', { ...FURNACE, ratedCelsius: 'hot' }, 400, 'invalid-request'],
  ])('refuses %s', async (_name, body, status, code) => {
    const answer = await makeApi().call('POST', '/api/v1/furnaces', body);
    expect(answer).toMatchObject({ status, body: { code } });
  });

  it('says not-found by code for what is not there, and for paths nobody made', async () => {
    const { call } = makeApi();
    expect((await call('GET', '/api/v1/furnaces/nope')).body.code).toBe('not-found');
    expect((await call('GET', '/api/v1/kettles')).body.code).toBe('not-found');
    expect((await call('POST', '/api/v1/alarms/nope/acknowledge')).body.code).toBe('not-found');
  });

  it('refuses a page from elsewhere and a name that is not this machine', async () => {
    const { call } = makeApi();
    const foreign = await call('POST', '/api/v1/furnaces', FURNACE, { origin: 'http://evil.example' });
    expect(foreign).toMatchObject({ status: 403, body: { code: 'forbidden-origin' } });
    expect((await call('GET', '/api/v1/furnaces', undefined, { host: 'evil.example' })).status).toBe(403);
  });

  it('sends a policy without unsafe-inline', async () => {
    const api = makeApi();
    expect((await api.call('GET', '/healthz')).body).toMatchObject({ status: 'ok' });
    const policy = await api.policy();
    expect(policy).toContain("default-src 'self'");
    expect(policy).not.toContain('unsafe-inline');
  });

  it('runs a firing from start to record', async () => {
    const api = await ready();
    const started = await api.call('POST', '/api/v1/firings', {
      furnaceId: api.furnaceId,
      scheduleId: api.scheduleId,
    });
    expect(started).toMatchObject({ status: 201, body: { status: 'running', title: 'Anneal' } });
    const channel = api.archive.channel(api.channelId);
    if (!channel) throw new Error('the channel is there');
    api.run(30, (second) => [[channel, 500 + second]]);
    const id = started.body.id;
    const finished = await api.call('POST', `/api/v1/firings/${id}/finish`);
    expect(finished.body).toMatchObject({ status: 'finished', judgement: { verdict: 'not-met' } });
    expect((await api.call('POST', `/api/v1/firings/${id}/finish`)).body.code).toBe('not-running');

    const json = await api.call('GET', `/api/v1/firings/${id}/record?format=json`);
    expect(json.body).toMatchObject({ format: 'soakwatch-firing-record', furnaceName: 'Forge' });
    expect(json.body.series[0].readings).toHaveLength(30);
    const csv = await api.call('GET', `/api/v1/firings/${id}/record?format=csv&unit=%5BdegF%5D`);
    const [header, first] = csv.body.split('\r\n');
    expect(header).toMatch(/^time_utc,elapsed_seconds,channel/);
    expect(first).toContain('forge-1/chamber,chamber,932,[degF],good');
    const list = await api.call('GET', '/api/v1/firings');
    expect(list.body).toEqual([expect.objectContaining({ id, verdict: 'not-met', peakCelsius: 529 })]);
  });

  it('keeps a firing on the schedule version it started under', async () => {
    const api = await ready();
    const { body: firing } = await api.call('POST', '/api/v1/firings', {
      furnaceId: api.furnaceId,
      scheduleId: api.scheduleId,
    });
    await api.call('PUT', `/api/v1/schedules/${api.scheduleId}`, { ...SCHEDULE, name: 'Anneal, hotter' });
    expect((await api.call('GET', `/api/v1/firings/${firing.id}`)).body.schedule).toMatchObject({
      name: 'Anneal',
      version: 1,
    });
    expect((await api.call('GET', `/api/v1/schedules/${api.scheduleId}`)).body.version).toBe(2);
  });

  it('takes instants as epoch milliseconds and as ISO 8601, and thins to what is asked', async () => {
    const api = await ready();
    const channel = api.archive.channel(api.channelId);
    if (!channel) throw new Error('the channel is there');
    const from = api.clock.now();
    api.run(600, (second) => [[channel, second === 300 ? 1200 : 500]]);
    const path = `/api/v1/channels/${api.channelId}/readings`;
    const thinned = await api.call('GET', `${path}?from=${from}&points=50`);
    expect(thinned.body.readings.length).toBeLessThanOrEqual(50);
    expect(thinned.body).toMatchObject({ total: 600, thinned: true });
    expect(Math.max(...thinned.body.readings.map((reading: { value: number }) => reading.value))).toBe(1200);
    const iso = await api.call(
      'GET',
      `${path}?from=${new Date(from).toISOString()}&to=${new Date(from + 5000).toISOString()}`,
    );
    expect(iso.body.readings).toHaveLength(6);
    expect((await api.call('GET', `${path}?from=yesterday`)).body.code).toBe('invalid-request');
  });

  it('adopts a node that spoke up by itself, with all it offers, in one press; its readings were kept', async () => {
    const api = await ready();
    const at = api.clock.now();
    api.archive.commitIntake([
      {
        node: 'new-node',
        receivedAt: at,
        readings: [
          { name: 'chamber', quantity: 'temperature', at, value: 400, quality: 'good' },
          { name: 'load', quantity: 'temperature', at, value: 380, quality: 'good' },
          { name: 'co', quantity: 'carbon-monoxide', at, value: 4, quality: 'good' },
        ],
        refusals: [],
      },
    ]);
    const adopted = await api.call('POST', '/api/v1/nodes/new-node/adopt', { furnaceId: api.furnaceId });
    expect(adopted.body).toMatchObject({ name: 'new-node', adopted: true });
    const channels = (await api.call('GET', '/api/v1/channels')).body.filter(
      (c: { node: string }) => c.node === 'new-node',
    );
    const roles = Object.fromEntries(channels.map((c: { name: string; role: string }) => [c.name, c.role]));
    expect(roles).toEqual({ chamber: 'chamber', load: 'load', co: 'room-air' });
    expect(channels.every((c: { adopted: boolean; latest: unknown }) => c.adopted && c.latest !== null)).toBe(
      true,
    );
  });
});
