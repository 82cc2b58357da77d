import { describe, expect, it } from 'vitest';
import { type Api, makeApi } from './api-client.ts';

const SECTION = { shape: 'plate', thicknessMm: 6, massKilograms: 0.4 };
const SCHEDULE = { name: 'Normalise', segments: [{ kind: 'soak', targetCelsius: 870, durationSeconds: 10 }] };
const ROUTE = [
  { kind: 'heat', step: 'normalise' },
  { kind: 'work', work: 'grind' },
  { kind: 'heat', step: 'harden' },
];

interface Bench extends Api {
  readonly furnaceId: string;
  readonly scheduleId: string;
  piece(mark: string, extra?: object): Promise<{ id: string; mark: string; route: { id: string }[] }>;
  fire(pieces: object[], extra?: object): ReturnType<Api['call']>;
  stepOf(pieceId: string, index?: number): Promise<{ done: unknown }>;
}

async function ready(): Promise<Bench> {
  const api = makeApi();
  const furnace = await api.call('POST', '/api/v1/furnaces', {
    name: 'Oven',
    kind: 'electric-oven',
    ratedCelsius: 1200,
  });
  await api.call('POST', '/api/v1/channels', {
    node: 'oven-1',
    name: 'chamber',
    quantity: 'temperature',
    furnaceId: furnace.body.id,
  });
  const schedule = await api.call('POST', '/api/v1/schedules', SCHEDULE);
  const [furnaceId, scheduleId] = [furnace.body.id, schedule.body.id];
  return {
    ...api,
    furnaceId,
    scheduleId,
    async piece(mark, extra = {}) {
      const draft = { mark, steel: { grade: '1095' }, section: SECTION, route: ROUTE, ...extra };
      return (await api.call('POST', '/api/v1/pieces', draft)).body;
    },
    fire: (pieces, extra = {}) =>
      api.call('POST', '/api/v1/firings', { furnaceId, scheduleId, pieces, ...extra }),
    async stepOf(pieceId, index = 0) {
      return (await api.call('GET', `/api/v1/pieces/${pieceId}`)).body.route[index];
    },
  };
}

/** The air of the furnace at heat. */
function soak(api: Bench, seconds: number, celsius = 870): void {
  const channel = api.archive.channels().find(({ name }) => name === 'chamber');
  if (!channel) throw new Error('the channel is there');
  api.run(seconds, () => [[channel, celsius]]);
}

describe('the load of a firing', () => {
  it('is frozen at the start: a later change to the piece or its steel changes no record', async () => {
    const api = await ready();
    const piece = await api.piece('A-1', {
      steel: { grade: '1095', title: 'Bar 7', composition: { C: 0.93, Mn: 0.4 } },
    });
    const { body } = await api.fire([{ pieceId: piece.id, routeStepId: piece.route[0]?.id }]);
    expect(body.pieces).toEqual([
      {
        pieceId: piece.id,
        mark: 'A-1',
        title: '',
        steel: { id: '1095', title: 'Bar 7 (1095, by its certificate)', composition: { C: 0.93, Mn: 0.4 } },
        section: SECTION,
        routeStepId: piece.route[0]?.id,
        step: 'normalise',
      },
    ]);
    await api.call('PATCH', `/api/v1/pieces/${piece.id}`, { mark: 'B-2', steel: { grade: 'O1' } });
    const kept = await api.call('GET', `/api/v1/firings/${body.id}`);
    expect(kept.body.pieces).toEqual(body.pieces);
    const list = await api.call('GET', '/api/v1/firings');
    expect(list.body[0].marks).toEqual(['A-1']);
  });

  it('stands in the record and after a restart', async () => {
    const api = await ready();
    const [a, b] = [await api.piece('A'), await api.piece('B')];
    const { body } = await api.fire([{ pieceId: b.id }, { pieceId: a.id }]);
    const again = api.restart();
    expect(again.firings.detail(body.id).pieces.map(({ mark }) => mark)).toEqual(['B', 'A']);
    const record = await api.call('GET', `/api/v1/firings/${body.id}/record?format=json`);
    expect(record.body.firing.pieces).toEqual(body.pieces);
  });

  it('is empty where nobody says what lies in the furnace', async () => {
    const api = await ready();
    const { body } = await api.fire([]);
    expect(body.pieces).toEqual([]);
    expect((await api.call('GET', '/api/v1/firings')).body[0].marks).toEqual([]);
  });

  it.each([
    ['a piece that is not there', [{ pieceId: 'nope' }], 404, 'not-found'],
    ['a step that is not there', [{ pieceId: 'A', routeStepId: 'nope' }], 404, 'not-found'],
    ['a step that is no heat', [{ pieceId: 'A', routeStepId: 1 }], 400, 'invalid-request'],
    ['a piece twice', [{ pieceId: 'A' }, { pieceId: 'A' }], 400, 'invalid-request'],
  ])('refuses %s, and starts nothing', async (_, asked, status, code) => {
    const api = await ready();
    const piece = await api.piece('A');
    const pieces = asked.map((each: { pieceId: string; routeStepId?: string | number }) => ({
      pieceId: each.pieceId === 'A' ? piece.id : each.pieceId,
      routeStepId:
        typeof each.routeStepId === 'number' ? piece.route[each.routeStepId]?.id : (each.routeStepId ?? null),
    }));
    expect(await api.fire(pieces)).toMatchObject({ status, body: { code } });
    expect((await api.call('GET', '/api/v1/firings')).body).toEqual([]);
  });

  it('cannot hold a piece that lies in another furnace, or that is put away; nor can a burning one be put away', async () => {
    const api = await ready();
    const piece = await api.piece('A');
    const other = await api.call('POST', '/api/v1/furnaces', {
      name: 'Forge',
      kind: 'gas-forge',
      ratedCelsius: 1300,
    });
    await api.call('POST', '/api/v1/channels', {
      node: 'forge-1',
      name: 'chamber',
      quantity: 'temperature',
      furnaceId: other.body.id,
    });
    const first = await api.fire([{ pieceId: piece.id }]);
    const second = await api.fire([{ pieceId: piece.id }], { furnaceId: other.body.id });
    expect(second).toMatchObject({ status: 409, body: { code: 'in-use' } });
    expect((await api.call('DELETE', `/api/v1/pieces/${piece.id}`)).body.code).toBe('in-use');
    await api.call('POST', `/api/v1/firings/${first.body.id}/finish`);
    expect((await api.call('DELETE', `/api/v1/pieces/${piece.id}`)).status).toBe(204);
    expect((await api.fire([{ pieceId: piece.id }])).body.code).toBe('conflict');
  });
});

describe('a change of the load while it burns', () => {
  it('is kept, noted with who said it, told to the wall, and judged again', async () => {
    const api = await ready();
    const [a, b] = [await api.piece('A'), await api.piece('B')];
    const { body } = await api.fire([{ pieceId: a.id }]);
    soak(api, 5);
    const before = (await api.call('GET', `/api/v1/firings/${body.id}`)).body.judgement;
    const put = await api.call('PUT', `/api/v1/firings/${body.id}/pieces`, {
      pieces: [{ pieceId: b.id }],
      by: 'Ada',
    });
    expect(put).toMatchObject({ status: 200, body: { pieces: [{ mark: 'B' }] } });
    expect(put.body.judgement.segments[0].blindSeconds).toBe(before.segments[0].blindSeconds);
    const notes = await api.call('GET', `/api/v1/firings/${body.id}/notes`);
    expect(notes.body).toMatchObject([
      { text: 'Load: put in B; taken out A', by: 'Ada', at: api.clock.now() },
    ]);
    const told = api.changes.findLast(({ type }) => type === 'firing');
    expect(told).toMatchObject({ live: { firing: { pieces: [{ mark: 'B' }] } } });
  });

  it('is refused when the firing is over, and then nothing is noted', async () => {
    const api = await ready();
    const piece = await api.piece('A');
    const { body } = await api.fire([]);
    await api.call('POST', `/api/v1/firings/${body.id}/finish`);
    const put = await api.call('PUT', `/api/v1/firings/${body.id}/pieces`, {
      pieces: [{ pieceId: piece.id }],
    });
    expect(put).toMatchObject({ status: 409, body: { code: 'not-running' } });
    expect((await api.call('GET', `/api/v1/firings/${body.id}/notes`)).body).toEqual([]);
  });
});

describe('the step that a firing was for', () => {
  it('is ticked with the firing and its verdict when it finishes', async () => {
    const api = await ready();
    const piece = await api.piece('A');
    const { body } = await api.fire([{ pieceId: piece.id, routeStepId: piece.route[0]?.id }]);
    soak(api, 12);
    expect((await api.stepOf(piece.id)).done).toBeNull();
    const finished = await api.call('POST', `/api/v1/firings/${body.id}/finish`);
    const { done } = await api.stepOf(piece.id);
    expect(done).toEqual({
      at: finished.body.endedAt,
      by: '',
      firingId: body.id,
      outcome: finished.body.judgement.verdict,
    });
    expect((await api.stepOf(piece.id, 2)).done).toBeNull();
  });

  it('is not ticked by a firing that was abandoned, nor by one that named no step', async () => {
    const api = await ready();
    const [a, b] = [await api.piece('A'), await api.piece('B')];
    const first = await api.fire([{ pieceId: a.id, routeStepId: a.route[0]?.id }]);
    await api.call('POST', `/api/v1/firings/${first.body.id}/finish`, { abandoned: true });
    const second = await api.fire([{ pieceId: b.id }]);
    await api.call('POST', `/api/v1/firings/${second.body.id}/finish`);
    expect([(await api.stepOf(a.id)).done, (await api.stepOf(b.id)).done]).toEqual([null, null]);
  });

  it('takes the new verdict when readings come late; a tick that was taken away stays away', async () => {
    const api = await ready();
    // Sheet: heated through within half a minute, so that the core is at heat for the ten seconds wanted.
    const sheet = { section: { ...SECTION, thicknessMm: 0.5 } };
    const [a, b] = [await api.piece('A', sheet), await api.piece('B', sheet)];
    const startedAt = api.clock.now();
    const load = [a, b].map(({ id, route }) => ({ pieceId: id, routeStepId: route[0]?.id }));
    const { body } = await api.fire(load);
    api.clock.advance(70_000);
    await api.call('POST', `/api/v1/firings/${body.id}/finish`);
    expect((await api.stepOf(a.id)).done).toMatchObject({ outcome: 'not-met' });
    await api.call('DELETE', `/api/v1/pieces/${b.id}/route/${b.route[0]?.id}/done`);
    const channel = api.archive.channels().find(({ name }) => name === 'chamber');
    if (!channel) throw new Error('the channel is there');
    for (let second = 0; second <= 70; second++) api.say(channel, 870, startedAt + second * 1000);
    api.clock.advance(5_000);
    const { body: again } = await api.call('GET', `/api/v1/firings/${body.id}`);
    expect(again.judgement.verdict).not.toBe('not-met');
    expect((await api.stepOf(a.id)).done).toMatchObject({
      firingId: body.id,
      outcome: again.judgement.verdict,
    });
    expect((await api.stepOf(b.id)).done).toBeNull();
  });

  it('keeps the tick that the smith made before', async () => {
    const api = await ready();
    const piece = await api.piece('A');
    const { body } = await api.fire([{ pieceId: piece.id, routeStepId: piece.route[0]?.id }]);
    await api.call('POST', `/api/v1/pieces/${piece.id}/route/${piece.route[0]?.id}/done`, { by: 'Ada' });
    await api.call('POST', `/api/v1/firings/${body.id}/finish`);
    expect((await api.stepOf(piece.id)).done).toMatchObject({ by: 'Ada', outcome: 'done' });
  });

  it('is ticked by a firing that is recorded afterwards too', async () => {
    const api = await ready();
    const piece = await api.piece('A');
    const startedAt = api.clock.now();
    soak(api, 12);
    const load = [{ pieceId: piece.id, routeStepId: piece.route[0]?.id }];
    const { body } = await api.fire(load, { startedAt, endedAt: api.clock.now() });
    expect((await api.stepOf(piece.id)).done).toMatchObject({ firingId: body.id, at: body.endedAt });
  });
});

describe('the history of a piece', () => {
  it('tells its firings and what was seen, in the order they happened, and of no other piece', async () => {
    const api = await ready();
    const [a, b] = [await api.piece('A'), await api.piece('B')];
    const path = `/api/v1/pieces/${a.id}`;
    await api.call('POST', `${path}/observations`, { seen: { kind: 'note', text: 'forged from the bar' } });
    api.clock.advance(1000);
    const first = await api.fire([{ pieceId: a.id, routeStepId: a.route[0]?.id }, { pieceId: b.id }]);
    api.clock.advance(60_000);
    await api.call('POST', `/api/v1/firings/${first.body.id}/finish`);
    await api.call('POST', `${path}/observations`, {
      seen: { kind: 'file', result: 'bites' },
      firingId: first.body.id,
    });
    api.clock.advance(1000);
    await api.fire([{ pieceId: b.id }]);
    const { body } = await api.call('GET', `${path}/history`);
    expect(body.piece.id).toBe(a.id);
    expect(
      body.entries.map(
        (entry: { kind: string; observation?: { seen: { kind: string } } }) =>
          entry.observation?.seen.kind ?? entry.kind,
      ),
    ).toEqual(['note', 'firing', 'file']);
    expect(body.entries[1]).toMatchObject({
      firing: { id: first.body.id, status: 'finished', marks: ['A', 'B'], furnaceName: 'Oven' },
      as: { mark: 'A', step: 'normalise' },
      // Nothing was measured in it, so nothing can be said to be met.
      verdict: 'not-met',
    });
    expect((await api.call('GET', '/api/v1/pieces/nope/history')).body.code).toBe('not-found');
  });
});
