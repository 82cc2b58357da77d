import { describe, expect, it } from 'vitest';
import { type Api, makeApi } from './api-client.ts';

const ROUTE = [
  { kind: 'heat', step: 'normalise' },
  { kind: 'heat', step: 'harden' },
];

async function addPiece(
  api: Api,
  mark: string,
  extra: object = {},
): Promise<{ id: string; route: { id: string }[] }> {
  const draft = {
    mark,
    steel: { grade: '1095' },
    section: { shape: 'plate', thicknessMm: 6 },
    route: ROUTE,
    ...extra,
  };
  return (await api.call('POST', '/api/v1/pieces', draft)).body;
}

describe('the bench list of a shop', () => {
  it('proposes what can lie together, in the oven as it stands now, with every reason in words', async () => {
    const api = makeApi();
    const oven = api.furnace('Oven', 'electric-oven');
    const channel = api.channel({ name: 'chamber', furnace: oven });
    api.say(channel, 412);
    const pieces = [await addPiece(api, 'A'), await addPiece(api, 'B')];
    const { status, body } = await api.call('GET', '/api/v1/bench');
    expect(status).toBe(200);
    expect(body.due.map((item: { mark: string }) => item.mark)).toEqual(['A', 'B']);
    expect(body.due[0]).toMatchObject({ steelTitle: '1095', window: { by: 'steel' }, firingId: null });
    expect(body.furnaces).toMatchObject([{ furnaceId: oven.id, presentCelsius: 412, order: 'exact' }]);
    const [batch] = body.furnaces[0].batches;
    expect(batch.pieceIds).toEqual(pieces.map(({ id }) => id));
    expect(body.furnaces[0].travelCelsius).toBeCloseTo(batch.targetCelsius - 412, 6);
    const texts = batch.reasons.map((reason: { text: string }) => reason.text);
    // 1095 is normalised at 855 °C, which is good to 10 °C.
    expect(texts[0]).toBe('845 °C to 865 °C suits all of them');
    expect(texts.join()).toMatch(/common practice, no source/);
  });

  it('says °F in a shop that reads °F', async () => {
    const api = makeApi();
    api.furnace('Oven', 'electric-oven');
    await api.call('PATCH', '/api/v1/shop', { displayUnit: '[degF]' });
    for (const mark of ['A', 'B']) await addPiece(api, mark);
    const { body } = await api.call('GET', '/api/v1/bench');
    expect(body.furnaces[0].batches[0].reasons[0].text).toMatch(/°F to \d+ °F suits all of them$/);
  });

  it('follows the route: a ticked heat gives place to the next, a burning one to nothing', async () => {
    const api = makeApi();
    const oven = api.furnace('Oven', 'electric-oven');
    api.channel({ name: 'chamber', furnace: oven });
    const schedule = api.schedule({
      name: 'Normalise',
      segments: [{ kind: 'soak', targetCelsius: 870, durationSeconds: 60 }],
    });
    const { id, route } = await addPiece(api, 'A');
    await api.call('POST', `/api/v1/pieces/${id}/route/${route[0]?.id}/done`);
    const { body: before } = await api.call('GET', '/api/v1/bench');
    expect(before.furnaces[0].batches).toMatchObject([{ step: 'harden', pieceIds: [id] }]);
    const draft = {
      furnaceId: oven.id,
      scheduleId: schedule.id,
      pieces: [{ pieceId: id, routeStepId: route[1]?.id }],
    };
    const { body: firing } = await api.call('POST', '/api/v1/firings', draft);
    const { body: burning } = await api.call('GET', '/api/v1/bench');
    expect(burning.due).toMatchObject([{ pieceId: id, firingId: firing.id }]);
    expect(burning.furnaces[0].batches).toEqual([]);
    await api.call('POST', `/api/v1/firings/${firing.id}/finish`);
    expect((await api.call('GET', '/api/v1/bench')).body.due).toEqual([]);
  });

  it('goes by the schedule that the smith chose for the step', async () => {
    const api = makeApi();
    api.furnace('Oven', 'electric-oven');
    const { id: scheduleId } = api.schedule({
      name: 'Temper',
      segments: [{ kind: 'soak', targetCelsius: 205, toleranceCelsius: 5, durationSeconds: 7200 }],
    });
    await addPiece(api, 'A', { route: [{ kind: 'heat', step: 'temper', scheduleId }] });
    const { body } = await api.call('GET', '/api/v1/bench');
    expect(body.furnaces[0].batches).toMatchObject([
      { targetCelsius: 205, scheduleId, window: { lowCelsius: 200, highCelsius: 210 } },
    ]);
  });

  it('is empty in a new shop, and knows nothing of pieces put away', async () => {
    const api = makeApi();
    const { id } = await addPiece(api, 'A');
    await api.call('DELETE', `/api/v1/pieces/${id}`);
    expect((await api.call('GET', '/api/v1/bench')).body).toEqual({
      at: api.clock.now(),
      due: [],
      furnaces: [],
      unplaced: [],
    });
  });
});
