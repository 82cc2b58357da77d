import { describe, expect, it } from 'vitest';
import { recordedRun } from '../../hub/web/fit-run.ts';
import { type Api, makeApi } from './api-client.ts';
import { KNOWN, recordHeat } from './recorded-heat.ts';

const BAR = { shape: 'bar', thicknessMm: 20 };
const NUMBERS = {
  kind: 'numbers',
  effectiveEmissivity: 0.62,
  filmWattsPerSquareMetreKelvin: 18,
  residualCelsius: 3.4,
};
const USUAL_CHANNELS = { chamberChannel: null, loadChannel: null };

async function oven(api: Api, kind = 'electric-oven'): Promise<string> {
  const furnace = { name: 'Oven', kind, ratedCelsius: 1100 };
  return (await api.call('POST', '/api/v1/furnaces', furnace)).body.id;
}

describe('fitting a furnace to a recorded firing', () => {
  it('finds the furnace that made the run, shows the residual, and keeps nothing by itself', async () => {
    const api = makeApi();
    const { furnaceId, firingId } = recordHeat(api);
    const path = `/api/v1/furnaces/${furnaceId}`;
    const { status, body } = await api.call('POST', `${path}/fit/try`, { firingId, ...BAR });
    expect(status).toBe(200);
    expect(Math.abs(body.fit.effectiveEmissivity - KNOWN.emissivity)).toBeLessThan(0.02);
    expect(Math.abs(body.fit.filmWattsPerSquareMetreKelvin - KNOWN.film)).toBeLessThan(1.5);
    expect(body.fit.residualCelsius).toBeLessThan(2);
    expect(body).toMatchObject({ refusal: null, flags: [], fit: { from: { kind: 'firing', firingId } } });
    expect((await api.call('GET', path)).body.fit).toBeNull();
  });

  it('keeps what the firing says, tells the screens, and uses it from then on', async () => {
    const api = makeApi();
    const { furnaceId, firingId } = recordHeat(api);
    const path = `/api/v1/furnaces/${furnaceId}/fit`;
    const kept = await api.call('PUT', path, { kind: 'firing', firingId, ...BAR });
    expect(kept.body.fit).toMatchObject({ from: { kind: 'firing', firingId }, fittedAt: api.clock.now() });
    expect(api.changes).toContainEqual({ type: 'furnace', furnace: kept.body });
    const question = { ...BAR, surroundingsCelsius: 850, furnace: furnaceId };
    const { body } = await api.call('POST', '/api/v1/compute/soak-time', question);
    expect(body.exposure.emissivity).toBe(kept.body.fit.effectiveEmissivity);
    expect(body.exposureFrom).toMatchObject({
      by: 'furnace-fit',
      furnaceId,
      residualCelsius: kept.body.fit.residualCelsius,
    });
  });

  it('refuses a fit that does not describe the furnace, and says why', async () => {
    const api = makeApi();
    // A thermocouple that lies beside the bar for half of the run, and sees the chamber.
    const load = (celsius: number, minute: number) => (minute % 10 < 5 ? celsius : 450);
    const { furnaceId, firingId } = recordHeat(api, { load });
    const path = `/api/v1/furnaces/${furnaceId}/fit`;
    const tried = await api.call('POST', `${path}/try`, { firingId, ...BAR });
    expect(tried.body.refusal.message).toContain('it does not describe this furnace');
    expect(tried.body.fit.residualCelsius).toBeGreaterThan(30);
    const kept = await api.call('PUT', path, { kind: 'firing', firingId, ...BAR });
    expect(kept).toMatchObject({ status: 422, body: { code: 'not-applicable' } });
  });

  it('refuses a firing that runs, one of another furnace, and one without a load', async () => {
    const api = makeApi();
    const { furnaceId, firingId } = recordHeat(api, { minutes: 1, finished: false });
    const other = await oven(api);
    const code = async (id: string, body: object) =>
      (await api.call('POST', `/api/v1/furnaces/${id}/fit/try`, { ...BAR, firingId, ...body })).body.code;
    expect(await code(furnaceId, {})).toBe('conflict');
    expect(await code(other, {})).toBe('conflict');
    expect(await code(furnaceId, { firingId: 'none' })).toBe('not-found');
    const row = api.archive.firing(firingId);
    if (row) api.archive.saveFiring({ ...row, status: 'finished', endedAt: api.clock.now() + 60_000 });
    expect(await code(furnaceId, { loadChannel: 'none' })).toBe('not-found');
    for (const channel of api.archive.channels().filter(({ role }) => role === 'load')) {
      api.archive.saveChannel({ ...channel, role: 'other' });
    }
    expect(await code(furnaceId, {})).toBe('no-watched-channel');
  });
});

describe('the run of a recorded firing', () => {
  it('stops where the load is first left to cool: outside, it says nothing about the furnace', () => {
    const api = makeApi();
    const { furnaceId, firingId } = recordHeat(api);
    const row = api.archive.firing(firingId);
    if (!row) throw new Error('no firing');
    const coolAt = row.startedAt + 30 * 60_000;
    const cool = { kind: 'cool', targetCelsius: 50, toleranceCelsius: 10, rateCelsiusPerHour: null };
    const schedule = { ...row.schedule, segments: [...row.schedule.segments, cool] };
    const judgement = { segments: [{}, {}, { startedAt: coolAt }] };
    const cooled = { ...row, schedule, judgement } as unknown as typeof row;
    const { run } = recordedRun(api.archive, furnaceId, cooled, USUAL_CHANNELS);
    expect(run.at(-1)?.atMs).toBeLessThan(coolAt);
    expect(run.at(-1)?.atMs).toBeGreaterThan(coolAt - 60_000);
  });

  it('is cut where the load was silent, and says so', async () => {
    const api = makeApi();
    const load = (celsius: number, minute: number) => (minute > 5 && minute < 15 ? null : celsius);
    const { furnaceId, firingId } = recordHeat(api, { load });
    const row = api.archive.firing(firingId);
    if (!row) throw new Error('no firing');
    const { run, whole } = recordedRun(api.archive, furnaceId, row, USUAL_CHANNELS);
    expect(whole).toBe(false);
    expect(run[0]?.atMs).toBeGreaterThanOrEqual(row.startedAt + 15 * 60_000);
    const tried = await api.call('POST', `/api/v1/furnaces/${furnaceId}/fit/try`, { firingId, ...BAR });
    expect(tried.body.flags.map((flag: { code: string }) => flag.code)).toContain('run-cut');
  });
});

describe('keeping a fit by its numbers', () => {
  it('is kept with where it comes from, and forgotten again', async () => {
    const api = makeApi();
    const path = `/api/v1/furnaces/${await oven(api)}`;
    const from = { kind: 'text', text: 'the maker of the oven' };
    expect((await api.call('PUT', `${path}/fit`, { ...NUMBERS, from })).body.fit).toMatchObject({
      effectiveEmissivity: 0.62,
      residualCelsius: 3.4,
      separated: true,
      from,
    });
    expect((await api.call('PATCH', path, { note: 'new door' })).body.fit.from).toEqual(from);
    expect((await api.call('DELETE', `${path}/fit`)).status).toBe(204);
    expect((await api.call('GET', path)).body.fit).toBeNull();
  });

  it('is refused without a residual, with one too large, and for a furnace that is not there', async () => {
    const api = makeApi();
    const path = `/api/v1/furnaces/${await oven(api)}/fit`;
    const { residualCelsius: _, ...bare } = NUMBERS;
    expect(await api.call('PUT', path, bare)).toMatchObject({ status: 400 });
    const rough = await api.call('PUT', path, { ...NUMBERS, residualCelsius: 31 });
    expect(rough).toMatchObject({ status: 422, body: { code: 'not-applicable' } });
    expect(await api.call('PUT', '/api/v1/furnaces/none/fit', NUMBERS)).toMatchObject({ status: 404 });
  });
});

describe('a question about a furnace', () => {
  const heating = { ...BAR, initialCelsius: 20, surroundingsCelsius: 850 };

  it.each([
    ['electric-oven', { emissivity: 0.7, filmWattsPerSquareMetreKelvin: 10 }],
    ['gas-forge', { emissivity: 0.75, filmWattsPerSquareMetreKelvin: 25 }],
    ['salt-bath', { emissivity: 0, filmWattsPerSquareMetreKelvin: 600 }],
  ])('takes the usual values of a %s that was never fitted, and says so', async (kind, usual) => {
    const api = makeApi();
    const furnace = await oven(api, kind);
    const { body } = await api.call('POST', '/api/v1/compute/conduction', { ...heating, furnace });
    expect(body.exposure).toEqual(usual);
    expect(body.exposureFrom).toMatchObject({
      by: 'usual-of-kind',
      furnaceId: furnace,
      residualCelsius: null,
    });
    expect(body.exposureFrom.text).toContain('never fitted');
  });

  it('follows the fit while it is kept: a stronger furnace brings the core up sooner', async () => {
    const api = makeApi();
    const furnace = await oven(api);
    const seconds = async () =>
      (await api.call('POST', '/api/v1/compute/conduction', { ...heating, furnace })).body
        .timeToToleranceSeconds;
    const before = await seconds();
    const strong = { ...NUMBERS, effectiveEmissivity: 0.95, filmWattsPerSquareMetreKelvin: 60 };
    await api.call('PUT', `/api/v1/furnaces/${furnace}/fit`, strong);
    expect(await seconds()).toBeLessThan(before * 0.8);
    await api.call('DELETE', `/api/v1/furnaces/${furnace}/fit`);
    expect(await seconds()).toBe(before);
  });

  it('says where a fit is doubtful, and where a pair that hangs together is far from its heat', async () => {
    const api = makeApi();
    const furnace = await oven(api);
    const fit = {
      ...NUMBERS,
      residualCelsius: 14.6,
      separated: false,
      loadLowCelsius: 20,
      loadHighCelsius: 600,
    };
    await api.call('PUT', `/api/v1/furnaces/${furnace}/fit`, fit);
    const { body } = await api.call('POST', '/api/v1/compute/conduction', { ...heating, furnace });
    const codes = body.exposureFrom.flags.map((flag: { code: string }) => flag.code);
    expect(codes).toEqual(['doubtful-fit', 'far-from-fit']);
    expect(body.exposureFrom.text).toContain('15 °C (rms)');
    const near = { ...heating, surroundingsCelsius: 650, furnace };
    const answer = await api.call('POST', '/api/v1/compute/conduction', near);
    expect(answer.body.exposureFrom.flags).toHaveLength(1);
  });

  it('refuses a furnace beside numbers or a medium, and one that is not there', async () => {
    const api = makeApi();
    const furnace = await oven(api);
    const ask = (more: object) =>
      api.call('POST', '/api/v1/compute/conduction', { ...heating, furnace, ...more });
    expect(await ask({ emissivity: 0.5 })).toMatchObject({ status: 400 });
    expect(await ask({ medium: 'still-air' })).toMatchObject({ status: 400 });
    expect(await ask({ furnace: 'none' })).toMatchObject({ status: 404 });
  });

  it('lets a piece cool in the closed furnace that was fitted, and in no other medium', async () => {
    const api = makeApi();
    const furnace = await oven(api);
    await api.call('PUT', `/api/v1/furnaces/${furnace}/fit`, NUMBERS);
    const cooling = { ...BAR, initialCelsius: 800, furnace };
    const ask = (medium: string) => api.call('POST', '/api/v1/compute/cooling', { ...cooling, medium });
    expect((await ask('closed-furnace')).body.exposureFrom).toMatchObject({
      by: 'furnace-fit',
      furnaceId: furnace,
    });
    expect(await ask('still-air')).toMatchObject({ status: 422, body: { code: 'bad-input' } });
  });
});
