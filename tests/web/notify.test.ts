import { describe, expect, it } from 'vitest';
import { type Api, makeApi } from './api-client.ts';

const HOOK = { kind: 'webhook', url: 'https://hooks.example/a', secret: 'sixteen letters and more' };
const add = (api: Api, way: object) => api.call('POST', '/api/v1/notify/ways', way);

describe('the ways of reaching people over the API', () => {
  it('are added with a cautious rule, changed field by field, and removed', async () => {
    const api = makeApi();
    const { status, body } = await add(api, { name: 'Hook', target: HOOK });
    expect(status).toBe(201);
    expect(body).toMatchObject({
      enabled: true,
      trouble: null,
      rule: {
        priorities: ['danger'],
        hours: null,
        afterMinutes: 0,
        repeatMinutes: null,
        dangerAnyHour: true,
      },
    });
    const at = `/api/v1/notify/ways/${body.id}`;
    const rule = { priorities: ['danger', 'warning'], hours: { days: [1, 2], from: '22:00', to: '06:00' } };
    expect((await api.call('PATCH', at, { rule })).body.rule).toMatchObject(rule);
    expect((await api.call('PATCH', at, { enabled: false })).body).toMatchObject({
      name: 'Hook',
      enabled: false,
      rule,
    });
    expect((await api.call('DELETE', at)).status).toBe(204);
    expect((await api.call('GET', '/api/v1/notify/ways')).body).toEqual([]);
    expect((await api.call('DELETE', at)).status).toBe(404);
  });

  it.each([
    [{ name: '', target: HOOK }, '/name'],
    [{ name: 'x', target: { ...HOOK, secret: 'short' } }, '/target/secret'],
    [{ name: 'x', target: { kind: 'webhook', url: HOOK.url } }, '/target/secret'],
    [{ name: 'x', target: { kind: 'push' } }, '/target/subscription'],
    [{ name: 'x', target: HOOK, rule: { priorities: [] } }, '/rule/priorities'],
    [{ name: 'x', target: HOOK, rule: { afterMinutes: -1 } }, '/rule/afterMinutes'],
    [
      { name: 'x', target: HOOK, rule: { hours: { days: [8], from: '07:00', to: '08:00' } } },
      '/rule/hours/days/0',
    ],
    [
      { name: 'x', target: HOOK, rule: { hours: { days: [1], from: '7:00', to: '24:00' } } },
      '/rule/hours/from',
    ],
    [
      {
        name: 'x',
        target: { kind: 'e-mail', host: 'm.example', user: 'a', from: 'a@b.example', to: ['c@d.example'] },
      },
      '/target/password',
    ],
  ])('are refused with the place of the fault: case %#', async (way, path) => {
    const { status, body } = await add(makeApi(), way);
    expect(status).toBe(400);
    expect(body.errors.map((error: { path: string }) => error.path)).toContain(path);
  });

  it('want a contact before a phone is added', async () => {
    const api = makeApi();
    const keys = { p256dh: 'A'.repeat(87), auth: 'A'.repeat(22) };
    const phone = {
      name: 'Phone',
      target: { kind: 'push', subscription: { endpoint: 'https://push.example/a', keys } },
    };
    expect((await add(api, phone)).body.errors).toMatchObject([{ path: '/contact' }]);
    await api.call('PATCH', '/api/v1/notify/settings', { contact: 'smith@shop.example' });
    const { body } = await add(api, phone);
    expect(body.target).toEqual({ kind: 'push', origin: 'https://push.example' });
  });

  it('stay what they are', async () => {
    const api = makeApi();
    const { body } = await add(api, { name: 'Hook', target: HOOK });
    const mail = { kind: 'e-mail', host: 'm.example', from: 'a@b.example', to: ['c@d.example'] };
    const changed = await api.call('PATCH', `/api/v1/notify/ways/${body.id}`, { target: mail });
    expect(changed.body.errors).toMatchObject([{ path: '/target/kind' }]);
  });
});

describe('what all ways share', () => {
  const patch = (api: Api, change: object) => api.call('PATCH', '/api/v1/notify/settings', change);

  it('has its defaults, and keeps what a change does not name', async () => {
    const api = makeApi();
    const before = (await api.call('GET', '/api/v1/notify/settings')).body;
    expect(before).toMatchObject({
      topicPrefix: null,
      heartbeatSeconds: 10,
      allowedNetworks: [],
      pingOrigin: null,
    });
    expect(before.topicPrefixInUse).toBe(`soakwatch-out/${api.archive.shop().id.slice(0, 8)}`);
    await patch(api, { timeZone: 'Europe/Berlin', pingUrl: 'https://ping.example/x' });
    const after = (await patch(api, { topicPrefix: 'my-shop/light' })).body;
    expect(after).toMatchObject({
      timeZoneInUse: 'Europe/Berlin',
      topicPrefixInUse: 'my-shop/light',
      pingOrigin: 'https://ping.example',
    });
    expect((await patch(api, { pingUrl: null })).body.pingOrigin).toBeNull();
  });

  it.each([
    [{ timeZone: 'Middle/Earth' }, '/timeZone'],
    [{ topicPrefix: 'soakwatch/oven' }, '/topicPrefix'],
    [{ topicPrefix: 'a/#' }, '/topicPrefix'],
    [{ topicPrefix: '$SYS' }, '/topicPrefix'],
    [{ allowedNetworks: ['192.168.1.0/24', '0.0.0.0/0'] }, '/allowedNetworks/1'],
    [{ heartbeatSeconds: 0 }, '/heartbeatSeconds'],
    [{ contact: 'nobody' }, '/contact'],
  ])('refuses %j', async (change, path) => {
    const api = makeApi();
    const { status, body } = await patch(api, change);
    expect(status).toBe(400);
    expect(body.errors[0].path).toBe(path);
    expect((await api.call('GET', '/api/v1/notify/settings')).body.allowedNetworks).toEqual([]);
  });
});
