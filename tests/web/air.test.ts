import { describe, expect, it } from 'vitest';
import type { Channel } from '../../hub/contract/shop.ts';
import { type Api, makeApi } from './api-client.ts';

function withAir(settings: object = {}): { api: Api; co: Channel; chamber: Channel; pressure: Channel } {
  const api = makeApi();
  const furnace = api.furnace();
  const chamber = api.channel({ name: 'chamber', furnace });
  const pressure = api.channel({ name: 'supply', furnace, quantity: 'pressure' });
  const co = api.channel({ name: 'co', quantity: 'carbon-monoxide' });
  api.archive.saveSettings({ ...api.archive.shop().settings, ...settings }, api.clock.now());
  api.watch.setupChanged();
  return { api, co, chamber, pressure };
}

const air = async (api: Api) => (await api.call('GET', '/api/v1/air')).body;

describe('the air over the web', () => {
  it('says of a shop without a sensor that nobody knows, and never that it is good', async () => {
    const body = await air(makeApi());
    expect(body).toMatchObject({ profile: 'strictest', sensors: [], exposure: [], workRate: 'heavy' });
    expect(body.notices.map((each: { code: string }) => each.code)).toContain('no-claim');
    expect(body.ventilation).toMatchObject({ tags: null, measured: null, secondsUntilBelow: null });
  });

  it('shows what is fresh, and nothing at all for what is old', async () => {
    const { api, co } = withAir();
    api.say(co, 12);
    api.clock.advance(5000);
    expect((await air(api)).sensors[0]).toMatchObject({ label: 'co', value: 12, fresh: true, unit: '[ppm]' });
    api.clock.advance(60_000);
    const [old] = (await air(api)).sensors;
    expect(old).toMatchObject({ value: null, fresh: false });
    expect(old.at).toBe(api.clock.now() - 65_000);
  });

  it('adds up exposure, coverage, blood and dose against the limits of the shop', async () => {
    const { api, co, chamber } = withAir();
    api.run(20 * 60, (second) =>
      second % 5 === 0
        ? [
            [co, 30 + (second % 10) / 10],
            [chamber, 900],
          ]
        : [],
    );
    const { exposure, limits, fires, furnaces, shift } = await air(api);
    expect(exposure[0].stel.ppm).toBeCloseTo(30.25, 1);
    expect(exposure[0].stel.coverage).toBeGreaterThan(0.95);
    expect(exposure[0].coverage).toBeGreaterThan(0.95);
    expect(shift.to - shift.from).toBeGreaterThan(19 * 60_000);
    expect(exposure[0].blood.lowPercent).toBeLessThanOrEqual(exposure[0].blood.highPercent);
    expect(exposure[0].doseShare).toBe(0);
    expect(limits.map((each: { kind: string }) => each.kind)).toEqual([
      'twa',
      'stel',
      'excursion',
      'ceiling',
      'idlh',
    ]);
    expect(furnaces[0]).toMatchObject({ hot: true });
    expect(fires).toHaveLength(1);
    expect(fires[0].to).toBeNull();
  });

  it('judges by the profile that the shop chooses, and refuses a custom one without its limits', async () => {
    const { api } = withAir();
    const change = (patch: object) => api.call('PATCH', '/api/v1/shop', patch);
    expect((await change({ airProfile: 'custom' })).status).toBe(400);
    expect((await change({ workRate: 'rest' })).status).toBe(400);
    const own = { airProfile: 'custom', airCustomLimits: { stelPpm: 40, source: 'the keeper' } };
    expect((await change(own)).status).toBe(200);
    const body = await air(api);
    expect(body.limits).toHaveLength(1);
    expect(body.limits[0].limit).toMatchObject({ ppm: 40, body: 'the keeper' });
    await change({ airProfile: 'niosh' });
    expect((await air(api)).convention).toEqual({ kind: 'mean-of-shift', leastHours: 8, mostHours: 10 });
  });

  it('keeps no custom limits that the judge would refuse, and goes on judging by the old ones', async () => {
    const api = makeApi();
    for (const limits of [{ twaPpm: 0.2 }, { stelPpm: 20_000 }, {}]) {
      const airCustomLimits = { source: 'the shop', ...limits };
      const refused = await api.call('PATCH', '/api/v1/shop', { airProfile: 'custom', airCustomLimits });
      expect(refused).toMatchObject({ status: 400, body: { code: 'invalid-request' } });
    }
    const { body } = await api.call('GET', '/api/v1/shop');
    expect(body.shop.settings).toMatchObject({ airProfile: 'strictest', airCustomLimits: null });
    expect((await api.call('GET', '/api/v1/air')).body.profile).toBe('strictest');
  });

  it('keeps the dates of a sensor, and tells when it is overdue', async () => {
    const { api, co } = withAir();
    const calibrationDueAt = api.clock.now() + 60_000;
    const patched = await api.call('PATCH', `/api/v1/channels/${co.id}`, { calibrationDueAt });
    expect(patched.body).toMatchObject({ calibrationDueAt, calibratedAt: null });
    api.clock.advance(90_000);
    const kinds = api.watch.alarms.open().map((alarm) => alarm.kind);
    expect(kinds).toEqual(['air-sensor-overdue']);
    await api.call('PATCH', `/api/v1/channels/${co.id}`, { calibrationDueAt: null });
    api.clock.advance(30_000);
    expect(api.watch.alarms.open().filter((alarm) => alarm.active)).toEqual([]);
  });
});

describe('how the shop stands', () => {
  it('is said as tags, once each, and stays until said otherwise', async () => {
    const { api } = withAir();
    const put = (body: object) => api.call('PUT', '/api/v1/air/tags', body);
    const said = await put({ tags: ['door open', 'door open', 'fan on'] });
    expect(said.body).toMatchObject({ tags: ['door open', 'fan on'], by: 'wall' });
    api.clock.advance(1000);
    await put({ tags: [], by: 'Anna' });
    const { ventilation } = await air(api);
    expect(ventilation.tags).toEqual([]);
    expect(ventilation.knownTags).toEqual(['door open', 'fan on']);
    expect((await put({ tags: [' '] })).status).toBe(400);
    expect((await put({})).status).toBe(400);
  });
});

describe('ventilation measured by the way', () => {
  const PER_HOUR = 6;
  async function afterWork(settings: object): Promise<{ api: Api; body: Awaited<ReturnType<typeof air>> }> {
    const { api, co, chamber, pressure } = withAir(settings);
    await api.call('PUT', '/api/v1/air/tags', { tags: ['fan on'] });
    const every = (second: number, ppm: number, pascals: number) =>
      second % 10 === 0
        ? ([
            [co, ppm],
            [chamber, 800],
            [pressure, pascals],
          ] as const)
        : [];
    api.run(300, (second) => every(second, 1 + (second % 20) / 100, 0));
    api.run(600, (second) => every(second, 60 + (second % 20) / 20, 30_000));
    api.run(3300, (second) => every(second, 1 + 59 * Math.exp((-PER_HOUR * second) / 3600), 0));
    return { api, body: await air(api) };
  }

  it('keeps the air changes with the tags of that hour, and says what the room carries', async () => {
    const { api, body } = await afterWork({ roomCubicMetres: 60 });
    const { measured, highestSourceCubicMetresPerHour: source, history, limitPpm } = body.ventilation;
    expect(measured.fit.airChangesPerHour).toBeCloseTo(PER_HOUR, 1);
    expect(measured.tags).toEqual(['fan on']);
    expect(history).toHaveLength(1);
    // A V (L - Cb) / K with K = 3: 6 x 60 x 19 ppm / 3.
    expect(source.value).toBeCloseTo((PER_HOUR * 60 * (limitPpm - measured.backgroundPpm) * 1e-6) / 3, 4);
    expect(source.low).toBeLessThanOrEqual(source.value);
    expect(api.faults).toEqual([]);
  });

  it('tells nothing of a room with other doors, and no source without the size of the room', async () => {
    const { api, body } = await afterWork({});
    expect(body.ventilation.highestSourceCubicMetresPerHour).toBeNull();
    await api.call('PUT', '/api/v1/air/tags', { tags: ['door open'] });
    const { ventilation } = await air(api);
    expect(ventilation.measured).toBeNull();
    expect(ventilation.history).toHaveLength(1);
  });

  it('tells how long until the limit, as a time to wait, only while nothing burns', async () => {
    const { api } = await afterWork({});
    const channel = (name: string) => api.archive.channels().find((each) => each.name === name) as Channel;
    const say = (ppm: number, pascals: number) => {
      api.run(30, () => [
        [channel('co'), ppm],
        [channel('chamber'), 500],
        [channel('supply'), pascals],
      ]);
    };
    say(80, 30_000);
    expect((await air(api)).ventilation.secondsUntilBelow).toBeNull();
    say(80, 0);
    const { secondsUntilBelow: wait, measured } = (await air(api)).ventilation;
    // t = ln((C0 - Cb)/(L - Cb)) / A, perfect mixing; three times that at the high end.
    const hours = Math.log((80 - measured.backgroundPpm) / (20 - measured.backgroundPpm)) / PER_HOUR;
    expect(wait.value / 3600).toBeCloseTo(hours, 1);
    expect(wait.high).toBeGreaterThan(2.5 * wait.value);
  });

  it('keeps one measurement of one fall, also when a second hub judges it again', async () => {
    const { api, body } = await afterWork({});
    api.restart();
    api.clock.advance(20_000);
    expect(api.archive.airChanges(10)).toEqual(body.ventilation.history);
  });
});
