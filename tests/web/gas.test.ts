import { describe, expect, it } from 'vitest';
import { GasView } from '../../hub/contract/gas.ts';
import type { Channel, Furnace } from '../../hub/contract/shop.ts';
import { type Api, makeApi } from './api-client.ts';

const BURNER = { boreMm: 0.889, dischargeCoefficient: 0.85, lowPascals: 14_000, highPascals: 138_000 };
const PLAN = {
  name: 'Anneal',
  displayUnit: 'Cel' as const,
  segments: [
    { kind: 'ramp' as const, targetCelsius: 860, rateCelsiusPerHour: 1800, toleranceCelsius: 15 },
    { kind: 'soak' as const, targetCelsius: 860, toleranceCelsius: 15, durationSeconds: 7200 },
  ],
};

interface Piped {
  readonly api: Api;
  readonly furnace: Furnace;
  readonly pressure: Channel;
  readonly chamber: Channel;
}

async function piped(): Promise<Piped> {
  const api = makeApi();
  const furnace = api.furnace();
  const pressure = api.channel({ name: 'pressure', furnace, quantity: 'pressure' });
  const chamber = api.channel({ name: 'chamber', furnace });
  await api.call('PATCH', `/api/v1/furnaces/${furnace.id}`, { gas: BURNER });
  await api.call('PATCH', '/api/v1/shop', {
    gasPricePerKilogram: 3,
    currency: '€',
    gasCylinderKilograms: 9.07,
  });
  return { api, furnace, pressure, chamber };
}

const view = async (api: Api): Promise<GasView> => GasView.parse((await api.call('GET', '/api/v1/gas')).body);

describe('the gas over the API', () => {
  it('says nothing and alarms nothing in a shop without gas', async () => {
    const api = makeApi();
    api.furnace('Oven', 'electric-oven');
    api.clock.advance(60_000);
    expect(await view(api)).toMatchObject({ furnaces: [], supplies: [], firings: [], notSetUp: [] });
    expect(api.watch.alarms.open()).toEqual([]);
  });

  it('names a gas furnace whose burner nobody has entered, and judges nothing of it', async () => {
    const api = makeApi();
    const furnace = api.furnace();
    const pressure = api.channel({ name: 'pressure', furnace, quantity: 'pressure' });
    api.run(240, () => [[pressure, 90_000]]);
    expect((await view(api)).notSetUp).toEqual([{ furnaceId: furnace.id, name: 'Forge' }]);
    expect(api.watch.alarms.open()).toEqual([]);
  });

  it('tells flow and heat by the jet: 1.059 kg/h and 13.6 kW at 15 psi through 0.889 mm', async () => {
    const { api, pressure, chamber } = await piped();
    api.run(60, (second) => [
      [pressure, 103_421],
      [chamber, 300 + second],
    ]);
    const [now] = (await view(api)).furnaces;
    // Isentropic nozzle flow, textbook: 0.889 mm, Cd 0.85, k 1.13, 15 °C.
    expect(now?.kilogramsPerHour?.value).toBeCloseTo(1.059, 2);
    expect(now?.kilowattsNet?.value).toBeCloseTo(13.6, 1);
    expect(now?.regime).toBe('choked');
    expect(now?.kilogramsPerHour?.high).toBeCloseTo(1.059 * 1.15, 2);
  });

  it('counts down from a noted fill, and the range only grows', async () => {
    const { api, furnace, pressure, chamber } = await piped();
    const noted = await api.call('POST', '/api/v1/gas/changes', { kilograms: 9.07, by: 'Ann' });
    expect(noted.status).toBe(201);
    api.run(300, (second) => [
      [pressure, 103_421],
      [chamber, 300 + second / 3],
    ]);
    const [supply] = (await view(api)).supplies;
    // 5 minutes at 1.059 kg/h.
    expect(supply?.contents?.value).toBeCloseTo(9.07 - 0.088, 2);
    expect(supply?.contentsFrom).toBe('counted');
    const width = (supply?.contents?.high ?? 0) - (supply?.contents?.low ?? 0);
    api.clock.advance(1_800_000);
    const [blind] = (await view(api)).supplies;
    expect((blind?.contents?.high ?? 0) - (blind?.contents?.low ?? 0)).toBeGreaterThan(width + 0.5);
    expect((await view(api)).furnaces[0]).toMatchObject({
      furnaceId: furnace.id,
      pressurePascals: null,
      kilogramsPerHour: null,
    });
  });

  it('refuses a change from before it can count, and takes one back', async () => {
    const { api } = await piped();
    const old = { kilograms: 9, at: api.clock.now() - 5 * 3_600_000 };
    expect((await api.call('POST', '/api/v1/gas/changes', old)).status).toBe(400);
    const { body } = await api.call('POST', '/api/v1/gas/changes', { kilograms: 9 });
    api.clock.advance(20_000);
    expect((await view(api)).supplies[0]?.contents?.value).toBeCloseTo(9, 1);
    expect((await api.call('DELETE', `/api/v1/gas/changes/${body.id}`)).status).toBe(204);
    api.clock.advance(20_000);
    expect((await view(api)).supplies[0]?.contents).toBeNull();
    expect((await api.call('DELETE', '/api/v1/gas/changes/none')).status).toBe(404);
  });

  it('says before the start that the gas will not last', async () => {
    const { api, furnace } = await piped();
    const { id: scheduleId } = api.schedule(PLAN);
    const asked = { furnaceId: furnace.id, scheduleId, pieces: [] };
    const codes = async () =>
      (await api.call('POST', '/api/v1/schedules/check', asked)).body.faults.map(
        (f: { code: string }) => f.code,
      );
    expect(await codes()).toContain('gas-not-known');
    await api.call('POST', '/api/v1/gas/changes', { kilograms: 1 });
    api.clock.advance(30_000);
    expect(await codes()).toContain('gas-will-not-suffice');
    api.clock.advance(1000);
    await api.call('POST', '/api/v1/gas/changes', { kilograms: 40 });
    api.clock.advance(30_000);
    expect(await codes()).toEqual([]);
  });

  it('puts what a firing burned into its record, with its cost', async () => {
    const { api, furnace, pressure, chamber } = await piped();
    const { id } = api.start(furnace, api.schedule(PLAN));
    api.run(180, (second) => [
      [pressure, 103_421],
      [chamber, 20 + second],
    ]);
    api.watch.finishFiring(id, undefined, true);
    const { body } = await api.call('GET', `/api/v1/firings/${id}/record`);
    // Three minutes at 1.059 kg/h, 46.34 MJ/kg net (2219.2 kJ/mol gross less condensation; NIST, from memory).
    expect(body.gas.kilograms.value).toBeCloseTo(0.05295, 2);
    expect(body.gas.kilowattHoursNet.value).toBeCloseTo(0.68, 1);
    expect(body.gas.cost.value).toBeCloseTo(0.159, 1);
    expect(body.gas).toMatchObject({ method: 'jet', currency: '€', sharedBy: null });
  });
});
