import { createHash } from 'node:crypto';
import { describe, expect, it } from 'vitest';
import { type Api, makeApi } from './api-client.ts';

const MILD = { composition: { C: 0.2, Mn: 0.45, Si: 0.2 } };
const JPEG = '\xff\xd8\xff\xe0 not much of a picture';

interface WithPiece extends Api {
  readonly pieceId: string;
  see(seen: object, extra?: object): ReturnType<Api['call']>;
  attach(content: string, type: string, query?: string): ReturnType<Api['call']>;
}

async function ready(steel: object = { grade: '1095' }): Promise<WithPiece> {
  const api = makeApi();
  const draft = { mark: 'A-1', steel, section: { shape: 'plate', thicknessMm: 6 } };
  const pieceId = (await api.call('POST', '/api/v1/pieces', draft)).body.id;
  const path = `/api/v1/pieces/${pieceId}`;
  return {
    ...api,
    pieceId,
    see: (seen, extra = {}) => api.call('POST', `${path}/observations`, { seen, ...extra }),
    attach: (content, type, query = '') =>
      api.call('POST', `${path}/attachments${query}`, content, { 'content-type': type }),
  };
}

describe('what is seen on a piece', () => {
  it.each([
    [
      {
        kind: 'hardness',
        scale: 'HRC',
        readings: [
          { value: 61.5, position: 'edge' },
          { value: 58, position: '' },
        ],
      },
    ],
    [{ kind: 'straightness', outMm: 0.4, overMm: 300 }],
    [{ kind: 'file', result: 'skates', position: 'tip' }],
    [{ kind: 'crack', found: false, position: '' }],
    [{ kind: 'note', text: 'scale came off grey' }],
  ])('is kept as it was said: %j', async (seen) => {
    const api = await ready();
    const made = await api.see(seen, { by: 'Ada', note: 'after the second temper' });
    expect(made).toMatchObject({
      status: 201,
      body: { seen, by: 'Ada', at: api.clock.now(), firingId: null },
    });
    expect((await api.call('GET', `/api/v1/pieces/${api.pieceId}/observations`)).body).toEqual([made.body]);
    expect((await api.call('DELETE', `/api/v1/observations/${made.body.id}`)).status).toBe(204);
    expect((await api.call('GET', `/api/v1/pieces/${api.pieceId}/observations`)).body).toEqual([]);
  });

  it.each([
    [
      'a hardness off the scale',
      { kind: 'hardness', scale: 'HRC', readings: [{ value: 650 }] },
      '/seen/readings/0/value',
    ],
    ['no hardness at all', { kind: 'hardness', scale: 'HV', readings: [] }, '/seen/readings'],
    ['a scale nobody reads', { kind: 'hardness', scale: 'HRX', readings: [{ value: 60 }] }, '/seen/scale'],
    ['a bend below nothing', { kind: 'straightness', outMm: -1 }, '/seen/outMm'],
    ['a file as an observation of its own making', { kind: 'attachment', attachmentId: 'x' }, '/seen/kind'],
  ])('is refused with its place: %s', async (_, seen, path) => {
    const answer = await (await ready()).see(seen);
    expect(answer).toMatchObject({ status: 400, body: { code: 'invalid-request' } });
    expect(answer.body.errors.map((error: { path: string }) => error.path)).toContain(path);
  });

  it('refers only to what is there, and not to the future', async () => {
    const api = await ready();
    const note = { kind: 'note', text: 'x' };
    expect((await api.see(note, { firingId: 'nope' })).body.code).toBe('not-found');
    expect((await api.see(note, { stepId: 'nope' })).body.code).toBe('not-found');
    expect((await api.see(note, { at: api.clock.now() + 1 })).body.code).toBe('invalid-request');
    expect((await api.call('DELETE', '/api/v1/observations/nope')).body.code).toBe('not-found');
  });
});

describe('the magnet that lets go', () => {
  // Curie point of ferrite 770 °C: from memory, physics handbooks. Mild steel still has ferrite then.
  it('is given the temperature measured at that instant and the one it should be', async () => {
    const api = await ready(MILD);
    const furnace = api.furnace('Oven', 'electric-oven');
    const channel = api.channel({ name: 'chamber', furnace });
    api.say(channel, 760);
    const tapped = api.clock.now();
    api.clock.advance(5_000);
    api.say(channel, 900);
    const { body } = await api.see({ kind: 'magnet', furnaceId: furnace.id }, { at: tapped });
    expect(body.seen).toMatchObject({
      channelId: channel.id,
      readingAt: tapped,
      measuredCelsius: 760,
      expected: { celsius: 770, lowCelsius: 765, highCelsius: 775, cause: 'curie' },
      differenceCelsius: -10,
      agrees: 'below',
    });
    expect((await api.see({ kind: 'magnet', furnaceId: furnace.id })).body.seen).toMatchObject({
      measuredCelsius: 900,
      agrees: 'above',
    });
  });

  it('is compared with the coldest thermocouple of that furnace, not of another', async () => {
    const api = await ready(MILD);
    const [oven, forge] = [api.furnace('Oven', 'electric-oven'), api.furnace('Forge')];
    const [left, right] = [
      api.channel({ name: 'left', furnace: oven }),
      api.channel({ name: 'right', furnace: oven }),
    ];
    const other = api.channel({ name: 'forge', furnace: forge });
    for (const [channel, celsius] of [
      [left, 790],
      [right, 771],
      [other, 300],
    ] as const)
      api.say(channel, celsius);
    const { body } = await api.see({ kind: 'magnet', furnaceId: oven.id });
    expect(body.seen).toMatchObject({ channelId: right.id, measuredCelsius: 771, agrees: 'inside' });
  });

  it('has no temperature from an old or a bad reading: blindness is said, not bridged', async () => {
    const api = await ready(MILD);
    const furnace = api.furnace('Oven', 'electric-oven');
    const channel = api.channel({ name: 'chamber', furnace });
    api.say(channel, 760);
    api.clock.advance(21_000);
    const old = await api.see({ kind: 'magnet', furnaceId: furnace.id });
    expect(old.body.seen).toMatchObject({
      measuredCelsius: null,
      differenceCelsius: null,
      agrees: 'not-known',
    });
    api.say(channel, 760, api.clock.now(), 'bad');
    const bad = await api.see({ kind: 'magnet', furnaceId: furnace.id });
    expect(bad.body.seen).toMatchObject({ channelId: null, agrees: 'not-known', expected: { celsius: 770 } });
    expect((await api.see({ kind: 'magnet', furnaceId: 'nope' })).body.code).toBe('not-found');
  });
});

describe('a photo or file', () => {
  it('comes back byte for byte, to be saved and never shown as a page', async () => {
    const api = await ready();
    const content = Buffer.from(JPEG, 'latin1');
    const path = `/api/v1/pieces/${api.pieceId}/attachments?fileName=${encodeURIComponent('Bruch "Ä".jpg')}&note=break`;
    const made = await api.raw('POST', path, content, { 'content-type': 'image/jpeg' });
    expect(made.status).toBe(201);
    const { seen, note } = await made.json();
    expect(note).toBe('break');
    expect(seen).toMatchObject({
      kind: 'attachment',
      fileName: 'Bruch Ä.jpg',
      contentType: 'image/jpeg',
      bytes: content.byteLength,
      sha256: createHash('sha256').update(content).digest('hex'),
    });
    const back = await api.raw('GET', `/api/v1/attachments/${seen.attachmentId}`);
    expect(Buffer.from(await back.arrayBuffer()).equals(content)).toBe(true);
    expect(back.headers.get('content-type')).toBe('image/jpeg');
    expect(back.headers.get('x-content-type-options')).toBe('nosniff');
    expect(back.headers.get('content-disposition')).toBe(
      'attachment; filename="Bruch _.jpg"; filename*=UTF-8\'\'Bruch%20%C3%84.jpg',
    );
  });

  it.each([
    ['a page', '<script>alert(1)</script>', 'text/html', 415, 'unsupported-media-type'],
    [
      'a drawing that can hold a script',
      '<svg onload="x()"/>',
      'image/svg+xml',
      415,
      'unsupported-media-type',
    ],
    ['a page that says it is a picture', '<html>', 'image/jpeg', 415, 'unsupported-media-type'],
    ['bytes that say they are text', 'a\0b', 'text/plain', 415, 'unsupported-media-type'],
    ['nothing', '', 'text/plain', 400, 'invalid-request'],
    ['more than a photo', JPEG.padEnd(8 * 1024 * 1024 + 1, 'x'), 'image/jpeg', 413, 'payload-too-large'],
  ])('is refused when it is %s, and nothing is kept', async (_, content, type, status, code) => {
    const api = await ready();
    const path = `/api/v1/pieces/${api.pieceId}/attachments`;
    const answer = await api.raw('POST', path, Buffer.from(content, 'latin1'), { 'content-type': type });
    expect(answer.status).toBe(status);
    expect(await answer.json()).toMatchObject({ code });
    expect((await api.call('GET', `/api/v1/pieces/${api.pieceId}/observations`)).body).toEqual([]);
  });

  it('goes with its observation, and is not found any more', async () => {
    const api = await ready();
    const { body } = await api.attach('ground with 400 grit', 'text/plain', '?fileName=../../etc/passwd');
    expect(body.seen).toMatchObject({ fileName: 'passwd', contentType: 'text/plain' });
    await api.call('DELETE', `/api/v1/observations/${body.id}`);
    expect((await api.call('GET', `/api/v1/attachments/${body.seen.attachmentId}`)).body.code).toBe(
      'not-found',
    );
  });
});
