import { describe, expect, it } from 'vitest';
import { type Api, makeApi } from './api-client.ts';

const SPRING = { name: 'Leaf spring of the old lorry', composition: { C: 0.6, Mn: 0.8, Si: 1.8 } };
const WINDOW = {
  step: 'austenitise',
  lowCelsius: 830,
  highCelsius: 860,
  from: "maker's data sheet 12/2019",
};

const add = (api: Api, steel: object = SPRING) => api.call('POST', '/api/v1/steels', steel);
const ask = (api: Api, name: string, question: object) =>
  api.call('POST', `/api/v1/compute/${name}`, question);

describe('a steel of the shop', () => {
  it('stands in the list behind the catalogue, and is found by name and by id', async () => {
    const api = makeApi();
    const { status, body } = await add(api, { ...SPRING, windows: [WINDOW] });
    expect(status).toBe(201);
    const list = (await api.call('GET', '/api/v1/steels')).body;
    expect(list.at(-1)).toMatchObject({ id: body.id, title: SPRING.name, origin: 'own' });
    expect(list[0].origin).toBe('catalogue');
    const spelled = await api.call('GET', '/api/v1/steels/leaf-spring%20OF%20the%20old%20lorry');
    expect(spelled.body.own).toEqual(body);
    expect((await api.call('GET', `/api/v1/steels/${body.id}`)).body).toEqual(spelled.body);
  });

  it('is computed with by every question about a steel', async () => {
    const api = makeApi();
    const { body } = await add(api);
    const steel = SPRING.name;
    const named = await ask(api, 'critical-temperatures', { steel });
    const bare = await ask(api, 'critical-temperatures', { composition: SPRING.composition });
    expect(named.body.ac1).toEqual(bare.body.ac1);
    expect(named.body.steel).toMatchObject({ id: body.id, title: SPRING.name });
    for (const [name, question] of [
      ['tempering', { steel, celsius: 400, hours: 1 }],
      ['martensite', { steel }],
      ['hardenability', { steel, shape: 'bar', thicknessMm: 10, medium: 'still-oil' }],
      ['magnet', { steel }],
      ['steel-windows', { steel }],
    ] as const) {
      expect(await ask(api, name, question), name).toMatchObject({
        status: 200,
        body: { steel: { id: body.id } },
      });
    }
  });

  it('puts a stated window in the place of the computed one of its step, with where it comes from', async () => {
    const api = makeApi();
    await add(api, { ...SPRING, windows: [WINDOW] });
    const { windows } = (await ask(api, 'steel-windows', { steel: SPRING.name })).body;
    const [austenitise, ...more] = windows.filter(
      (window: { step: string }) => window.step === 'austenitise',
    );
    expect(austenitise).toMatchObject({
      lowCelsius: 830,
      highCelsius: 860,
      from: { source: expect.stringContaining(WINDOW.from) },
    });
    expect(more).toEqual([]);
    expect(windows.map((window: { step: string }) => window.step)).toContain('normalise');
  });

  it('may not hide a grade of the catalogue, nor another steel of the shop', async () => {
    const api = makeApi();
    const code = async (name: string) => (await add(api, { ...SPRING, name })).body.code;
    expect(await code('aisi 1084')).toBe('already-exists');
    expect(await code('1.1545')).toBe('already-exists');
    await add(api);
    expect(await code('LEAF SPRING of-the-old lorry')).toBe('already-exists');
    expect(await code('- -')).toBe('bad-input');
  });

  it.each([
    [{ C: 3.2 }, 'out-of-range'],
    [{ C: 0.5, Cr: 60 }, 'out-of-range'],
    [{ C: 0.5, Mn: -1 }, 'bad-input'],
  ])('is refused with the code of the science: %j', async (composition, code) => {
    expect(await add(makeApi(), { ...SPRING, composition })).toMatchObject({ status: 422, body: { code } });
  });

  it('says the place of a fault: an element, a window upside down, two of one step', async () => {
    const api = makeApi();
    const paths = async (steel: object) =>
      (await add(api, { ...SPRING, ...steel })).body.errors.map((error: { path: string }) => error.path);
    expect(await paths({ composition: { C: 0.5, mn: 0.7 } })).toEqual(['/composition']);
    expect(await paths({ windows: [{ ...WINDOW, lowCelsius: 900 }] })).toEqual(['/windows/0/highCelsius']);
    expect(await paths({ windows: [WINDOW, WINDOW] })).toEqual(['/windows']);
    expect(await paths({ windows: [{ ...WINDOW, from: '' }] })).toEqual(['/windows/0/from']);
  });

  it('is changed in part, put away, and its name is free again; what was recorded still finds it', async () => {
    const api = makeApi();
    const { body } = await add(api);
    const path = `/api/v1/steels/${body.id}`;
    const changed = await api.call('PATCH', path, { note: 'rear axle' });
    expect(changed.body).toMatchObject({ note: 'rear axle', composition: SPRING.composition });
    expect((await api.call('PATCH', path, { composition: { C: 9 } })).body.code).toBe('out-of-range');
    expect((await api.call('DELETE', path)).status).toBe(204);
    expect((await api.call('GET', '/api/v1/steels')).body.map((s: { id: string }) => s.id)).not.toContain(
      body.id,
    );
    expect(await ask(api, 'magnet', { steel: SPRING.name })).toMatchObject({ status: 422 });
    expect(await ask(api, 'magnet', { steel: body.id })).toMatchObject({ status: 200 });
    expect((await add(api)).status).toBe(201);
  });

  it('leaves the catalogue as it is', async () => {
    const api = makeApi();
    expect(await api.call('PATCH', '/api/v1/steels/1084', { note: 'x' })).toMatchObject({ status: 409 });
    expect(await api.call('DELETE', '/api/v1/steels/1084')).toMatchObject({ status: 409 });
  });
});

describe('a mill certificate', () => {
  const HEAT = {
    heatNumber: 'A 4711',
    date: '2026-01-31',
    composition: { C: 0.83, Mn: 0.72, Si: 0.22, P: 0.011, S: 0.009 },
  };
  const keep = (api: Api, steel: string, heat: object = HEAT) =>
    api.call('POST', `/api/v1/steels/${steel}/certificates`, heat);

  it('is kept under a grade by any of its names, and computed with by its id', async () => {
    const api = makeApi();
    const { status, body } = await keep(api, 'AISI-1084');
    expect(status).toBe(201);
    expect(body).toMatchObject({ steel: '1084', heatNumber: 'A 4711', note: '' });
    expect((await api.call('GET', '/api/v1/steels/1084')).body.certificates).toEqual([body]);
    const byId = await ask(api, 'critical-temperatures', { certificate: body.id });
    const byHand = await ask(api, 'critical-temperatures', { steel: '1084', composition: HEAT.composition });
    expect(byId.body.ac1).toEqual(byHand.body.ac1);
    expect(byId.body.steel).toMatchObject({ id: '1084', title: '1084, by its certificate A 4711' });
  });

  it('tells what lies outside its grade', async () => {
    const api = makeApi();
    const { body } = await keep(api, '1084', { ...HEAT, composition: { ...HEAT.composition, C: 1.05 } });
    const answer = await ask(api, 'steel-windows', { certificate: body.id });
    expect(answer.body.outsideLimits).toMatchObject([{ element: 'C', percent: 1.05 }]);
    expect(answer.body.flags).toMatchObject([{ code: 'outside-grade-limits' }]);
  });

  it('belongs to a steel of the shop as well, whose stated windows stay', async () => {
    const api = makeApi();
    const own = (await add(api, { ...SPRING, windows: [WINDOW] })).body;
    const { body } = await keep(api, own.id, { ...HEAT, composition: { C: 0.57, Mn: 0.85, Si: 1.9 } });
    const answer = (await ask(api, 'steel-windows', { certificate: body.id })).body;
    expect(answer.steel).toMatchObject({ id: own.id, composition: { C: 0.57 } });
    expect(answer.windows[0]).toMatchObject({ step: 'austenitise', lowCelsius: 830 });
  });

  it('is refused twice for one heat, beside a steel in a question, and with a wrong composition', async () => {
    const api = makeApi();
    const { body } = await keep(api, '1084');
    expect((await keep(api, '1084')).body.code).toBe('already-exists');
    expect((await keep(api, '1095')).status).toBe(201);
    expect((await keep(api, '1084', { ...HEAT, heatNumber: 'B', composition: { C: 4 } })).body.code).toBe(
      'out-of-range',
    );
    expect((await keep(api, '1084', { ...HEAT, heatNumber: 'B', date: '31.1.2026' })).body.code).toBe(
      'invalid-request',
    );
    expect((await keep(api, 'nothing')).status).toBe(404);
    expect((await ask(api, 'magnet', { certificate: body.id, steel: '1084' })).status).toBe(400);
    expect((await ask(api, 'magnet', { certificate: 'none' })).status).toBe(404);
  });

  it('is changed in part and put away', async () => {
    const api = makeApi();
    const { body } = await keep(api, '1084');
    const path = `/api/v1/certificates/${body.id}`;
    expect((await api.call('PATCH', path, { note: 'bar 3' })).body).toMatchObject({
      note: 'bar 3',
      date: HEAT.date,
    });
    expect((await api.call('DELETE', path)).status).toBe(204);
    expect((await api.call('GET', '/api/v1/steels/1084/certificates')).body).toEqual([]);
    expect((await ask(api, 'magnet', { certificate: body.id })).status).toBe(200);
    expect((await keep(api, '1084')).status).toBe(201);
  });
});
