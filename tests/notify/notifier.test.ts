import { afterEach, describe, expect, it } from 'vitest';
import { makeShop } from '../harness/shop.ts';
import { listener } from './servers.ts';
import { notifyingShop, webhookWay } from './shop-kit.ts';

const closing: (() => Promise<void>)[] = [];
afterEach(async () => {
  for (const close of closing.splice(0)) await close();
});

async function open(...args: Parameters<typeof listener>) {
  const server = await listener(...args);
  closing.push(server.close);
  return server;
}

type Parts = ReturnType<typeof notifyingShop>;

/** Carbon monoxide far above every limit, until the judges have said so. */
async function badAir({ shop, watch, notifier }: Parts): Promise<void> {
  const co = shop.channel({ name: 'co', quantity: 'carbon-monoxide' });
  watch.setupChanged();
  for (let second = 0; second < 20; second++) {
    const { name, node } = co;
    const reading = {
      name,
      quantity: co.quantity,
      at: shop.clock.now(),
      value: 400,
      quality: 'good',
    } as const;
    const write = { node, receivedAt: shop.clock.now(), readings: [reading], refusals: [] };
    watch.committed(shop.archive.commitIntake([write]));
    shop.clock.advance(1000);
  }
  await notifier.settled();
}

async function pass({ shop, notifier }: Parts, seconds: number): Promise<void> {
  for (let second = 0; second < seconds; second++) {
    shop.clock.advance(1000);
    await notifier.settled();
  }
}

const bodies = (server: Awaited<ReturnType<typeof open>>) =>
  server.heard.map(({ body }) => JSON.parse(body.toString()));

describe('an alarm of the shop', () => {
  it('reaches people with its words, and the log says so', async () => {
    const server = await open();
    const parts = notifyingShop();
    parts.desk.changeSettings({ allowedNetworks: ['127.0.0.1'] });
    parts.desk.createWay(webhookWay(server.url));
    await badAir(parts);
    const [first] = bodies(server);
    expect(first).toMatchObject({ reason: 'raised', shop: 'My shop' });
    expect(first.title).toMatch(/^My shop: DANGER: /);
    expect(first.alarms[0]).toMatchObject({ priority: 'danger', state: 'unacknowledged' });
    expect(first.text).toContain('does not replace a certified alarm');
    expect(parts.desk.log(10).at(-1)).toMatchObject({
      outcome: 'sent',
      way: 'The watchman',
      reason: 'raised',
    });
    expect(parts.shop.faults).toEqual([]);
    await parts.stop();
  });

  it('is not told again by a hub that was started again', async () => {
    const server = await open();
    const shop = makeShop();
    const before = notifyingShop(shop);
    before.desk.changeSettings({ allowedNetworks: ['127.0.0.1'] });
    before.desk.createWay(webhookWay(server.url));
    await badAir(before);
    const told = server.heard.length;
    expect(told).toBeGreaterThan(0);
    await before.stop();
    const after = notifyingShop(shop);
    await pass(after, 10);
    expect(server.heard).toHaveLength(told);
    await after.stop();
  });
});

describe('a way that does not get through', () => {
  it('is an alarm of its own, told by another way, and ends with a test that gets through', async () => {
    let works = false;
    const broken = await open((response) => response.writeHead(works ? 200 : 401).end());
    const good = await open();
    const parts = notifyingShop();
    parts.desk.changeSettings({ allowedNetworks: ['127.0.0.1'] });
    const way = parts.desk.createWay(webhookWay(broken.url, { name: 'Broken' }));
    parts.desk.createWay(webhookWay(good.url));
    await badAir(parts);
    await pass(parts, 2);
    const open_ = () => parts.watch.alarms.open().filter(({ kind }) => kind === 'notify-failed');
    expect(open_()).toMatchObject([{ subject: way.id, state: 'unacknowledged', params: { way: 'Broken' } }]);
    const titles = bodies(good).flatMap(({ alarms }) => alarms.map(({ title }: { title: string }) => title));
    expect(titles.filter((title: string) => title === 'Nobody is told by Broken')).toHaveLength(1);
    expect(JSON.stringify(bodies(broken))).not.toContain('Nobody is told');
    expect(parts.desk.ways()[0]?.trouble).toMatchObject({ code: 'other-side-refused' });
    works = true;
    expect(await parts.desk.test(way.id)).toEqual({ ok: true, code: null, detail: '' });
    await pass(parts, 2);
    expect(open_()).toMatchObject([{ state: 'returned-unacknowledged' }]);
    expect(parts.desk.ways()[0]?.trouble).toBeNull();
    await parts.stop();
  });

  it('writes down what failed and why', async () => {
    const parts = notifyingShop();
    const way = parts.desk.createWay(webhookWay('http://127.0.0.1:9/'));
    const result = await parts.desk.test(way.id);
    expect(result).toMatchObject({ ok: false, code: 'network-refused' });
    expect(parts.desk.log(10)).toMatchObject([
      { outcome: 'failed', code: 'network-refused', reason: 'test', detail: result.detail, attempt: 1 },
    ]);
    expect(parts.notifier.findings()).toEqual([]);
    await parts.stop();
  });
});

describe('the ping to a watchdog outside', () => {
  it('comes when it is set and then every so many minutes; the log says only what changed', async () => {
    let works = true;
    const server = await open((response) => response.writeHead(works ? 200 : 500).end());
    const parts = notifyingShop();
    parts.desk.changeSettings({
      allowedNetworks: ['127.0.0.1'],
      pingUrl: `${server.url}/ping/key`,
      pingEveryMinutes: 1,
    });
    await pass(parts, 125);
    expect(server.heard.map(({ method, path }) => `${method} ${path}`)).toEqual(
      Array(3).fill('GET /ping/key'),
    );
    expect(parts.desk.log(10)).toMatchObject([{ kind: 'ping', outcome: 'sent' }]);
    works = false;
    await pass(parts, 120);
    expect(parts.desk.log(10)).toMatchObject([
      { outcome: 'failed', code: 'other-side-failed' },
      { outcome: 'sent' },
    ]);
    await parts.stop();
  });
});

describe('the keys of Web Push', () => {
  it('are made once and kept', async () => {
    const shop = makeShop();
    const first = notifyingShop(shop);
    const key = first.desk.settings().pushPublicKey;
    await first.stop();
    const second = notifyingShop(shop);
    expect(second.desk.settings().pushPublicKey).toBe(key);
    // An uncompressed point of P-256: 0x04 and two coordinates of 32 bytes (RFC 8292 section 3.2).
    expect(Buffer.from(key, 'base64url')).toHaveLength(65);
    expect(Buffer.from(key, 'base64url')[0]).toBe(4);
    await second.stop();
  });
});
