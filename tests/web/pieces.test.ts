import { describe, expect, it } from 'vitest';
import { type Api, makeApi } from './api-client.ts';

const SECTION = { shape: 'plate', thicknessMm: 6 };
const CHISEL = { mark: 'C-1', title: 'Cold chisel', steel: { grade: '1095' }, section: SECTION };
const HEATS = [
  { kind: 'heat', step: 'normalise' },
  { kind: 'heat', step: 'harden' },
  { kind: 'heat', step: 'temper' },
];

async function templateId(api: Api, name: string): Promise<string> {
  const { body } = await api.call('GET', '/api/v1/route-templates');
  return body.find((template: { name: string }) => template.name === name).id;
}

describe('pieces', () => {
  it('takes its route from a template, each step with an id of its own and nothing ticked', async () => {
    const api = makeApi();
    const id = await templateId(api, 'Plain forged tool');
    const { status, body } = await api.call('POST', '/api/v1/pieces', { ...CHISEL, templateId: id });
    expect(status).toBe(201);
    const kinds = body.route.map(
      (s: { step?: string; work?: string; check?: string }) => s.step ?? s.work ?? s.check,
    );
    expect(kinds).toEqual([
      'full-anneal',
      'shape',
      'normalise',
      'normalise',
      'normalise',
      'harden',
      'temper',
      'temper',
      'hardness',
      'finish',
    ]);
    expect(new Set(body.route.map((step: { id: string }) => step.id)).size).toBe(10);
    expect(body.route.every((step: { done: unknown }) => step.done === null)).toBe(true);
  });

  it('keeps the tick of a step that stays when the route is changed', async () => {
    const api = makeApi();
    const { body: piece } = await api.call('POST', '/api/v1/pieces', { ...CHISEL, route: HEATS });
    const [first, second] = piece.route;
    const path = `/api/v1/pieces/${piece.id}`;
    await api.call('POST', `${path}/route/${first.id}/done`, { by: 'Ada' });
    const { done: _, ...kept } = first;
    const changed = await api.call('PATCH', path, { route: [{ kind: 'work', work: 'grind' }, kept] });
    expect(changed.body.route.map((step: { done: { by: string } | null }) => step.done?.by ?? null)).toEqual([
      null,
      'Ada',
    ]);
    const stale = await api.call('PATCH', path, { route: [{ kind: 'work', work: 'grind', id: second.id }] });
    expect(stale).toMatchObject({ status: 409, body: { code: 'conflict' } });
    expect((await api.call('GET', path)).body).toMatchObject({ title: 'Cold chisel', mark: 'C-1' });
  });

  it('ticks with an empty body, and takes a tick away', async () => {
    const api = makeApi();
    const { body: piece } = await api.call('POST', '/api/v1/pieces', { ...CHISEL, route: HEATS });
    const done = `/api/v1/pieces/${piece.id}/route/${piece.route[0].id}/done`;
    expect((await api.call('POST', done)).body.route[0].done).toEqual({
      at: api.clock.now(),
      by: '',
      firingId: null,
      outcome: 'done',
    });
    expect((await api.call('DELETE', done)).body.route[0].done).toBeNull();
    expect((await api.call('POST', done, { at: api.clock.now() + 1 })).body.code).toBe('invalid-request');
    expect((await api.call('POST', done, { firingId: 'nope' })).body.code).toBe('not-found');
    expect((await api.call('POST', done.replace(piece.route[0].id, 'nope'))).body.code).toBe('not-found');
  });

  it('lets one piece at a time carry a mark, whatever its case; putting away sets it free', async () => {
    const api = makeApi();
    const { body: first } = await api.call('POST', '/api/v1/pieces', CHISEL);
    const again = await api.call('POST', '/api/v1/pieces', { ...CHISEL, mark: 'c-1' });
    expect(again).toMatchObject({ status: 409, body: { code: 'already-exists' } });
    await api.call('DELETE', `/api/v1/pieces/${first.id}`);
    const { body: second } = await api.call('POST', '/api/v1/pieces', { ...CHISEL, mark: 'c-1' });
    const back = await api.call('PATCH', `/api/v1/pieces/${first.id}`, { archived: false });
    expect(back.body.code).toBe('already-exists');
    const found = await api.call('GET', '/api/v1/pieces?mark=C-1');
    expect(found.body.pieces.map((piece: { id: string }) => piece.id)).toEqual([second.id]);
    const any = await api.call('GET', '/api/v1/pieces?mark=C-1&archived=any');
    expect(any.body.pieces).toHaveLength(2);
  });

  it('finds every word wherever it stands, and pages without losing or repeating one', async () => {
    const api = makeApi();
    for (let n = 0; n < 7; n++) {
      const title = n % 2 === 0 ? 'Gouge for Ångström' : 'Drawknife';
      await api.call('POST', '/api/v1/pieces', { ...CHISEL, mark: `K${n}`, title });
      if (n < 5) api.clock.advance(1000);
    }
    const marks = (answer: { body: { pieces: { mark: string }[] } }) => answer.body.pieces.map((p) => p.mark);
    const first = await api.call('GET', '/api/v1/pieces?limit=3');
    const second = await api.call('GET', `/api/v1/pieces?limit=3&after=${first.body.next}`);
    const third = await api.call('GET', `/api/v1/pieces?limit=3&after=${second.body.next}`);
    const all = [...marks(first), ...marks(second), ...marks(third)];
    expect(all).toEqual(['K6', 'K5', 'K4', 'K3', 'K2', 'K1', 'K0']);
    expect(third.body.next).toBeNull();
    const q = encodeURIComponent('ÅNGSTRÖM 1095');
    expect(marks(await api.call('GET', `/api/v1/pieces?q=${q}`))).toEqual(['K6', 'K4', 'K2', 'K0']);
    expect(marks(await api.call('GET', '/api/v1/pieces?q=gouge+drawknife'))).toEqual([]);
    expect(marks(await api.call('GET', '/api/v1/pieces?q=100%25'))).toEqual([]);
  });

  it.each([
    ['no steel at all', { ...CHISEL, steel: {} }, 400, 'invalid-request'],
    ['a grade nobody knows', { ...CHISEL, steel: { grade: 'unobtainium' } }, 422, 'bad-input'],
    ['a certificate nobody has', { ...CHISEL, steel: { certificateId: 'nope' } }, 404, 'not-found'],
    ['a mark that cannot be stamped', { ...CHISEL, mark: 'a b' }, 400, 'invalid-request'],
    ['a template that is not there', { ...CHISEL, templateId: 'nope' }, 404, 'not-found'],
    ['an unknown heat', { ...CHISEL, route: [{ kind: 'heat', step: 'boil' }] }, 400, 'invalid-request'],
    ['a step of another piece', { ...CHISEL, route: [{ ...HEATS[0], id: 'x' }] }, 409, 'conflict'],
  ])('refuses %s', async (_, body, status, code) => {
    const api = makeApi();
    expect(await api.call('POST', '/api/v1/pieces', body)).toMatchObject({ status, body: { code } });
    expect((await api.call('GET', '/api/v1/pieces')).body.pieces).toEqual([]);
  });
});

describe('templates of routes', () => {
  it('are given to a new shop, each of steps that are valid, and a deleted one stays away', async () => {
    const api = makeApi();
    const { body } = await api.call('GET', '/api/v1/route-templates');
    expect(body.map((template: { name: string }) => template.name)).toContain('Forged blade');
    for (const { id, name, note, steps } of body) {
      const put = await api.call('PUT', `/api/v1/route-templates/${id}`, { name, note, steps });
      expect(put, name).toMatchObject({ status: 200, body: { steps } });
    }
    const [first] = body;
    expect((await api.call('DELETE', `/api/v1/route-templates/${first.id}`)).status).toBe(204);
    expect((await api.call('GET', `/api/v1/route-templates/${first.id}`)).body.code).toBe('not-found');
  });

  it('belong to the user: a change changes no piece', async () => {
    const api = makeApi();
    const draft = { name: 'Hot work', steps: HEATS };
    const { body: template } = await api.call('POST', '/api/v1/route-templates', draft);
    const { body: piece } = await api.call('POST', '/api/v1/pieces', { ...CHISEL, templateId: template.id });
    const path = `/api/v1/route-templates/${template.id}`;
    await api.call('PUT', path, { ...draft, steps: [HEATS[2]] });
    expect((await api.call('GET', path)).body.steps).toHaveLength(1);
    expect((await api.call('GET', `/api/v1/pieces/${piece.id}`)).body.route).toHaveLength(3);
  });

  it('say of every reminder that it has no source', async () => {
    const { body } = await makeApi().call('GET', '/api/v1/reminders');
    expect(body.length).toBeGreaterThanOrEqual(4);
    for (const reminder of body) {
      expect(reminder).toMatchObject({ standing: 'common-practice', source: '' });
      expect(reminder.text.length).toBeGreaterThan(20);
    }
  });
});
