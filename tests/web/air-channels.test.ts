import { expect, it } from 'vitest';
import type { Quantity } from '../../hub/contract/units.ts';
import { makeApi } from './api-client.ts';

const FURNACE = { name: 'Forge', kind: 'gas-forge', ratedCelsius: 1300 };
const SENT: readonly (readonly [string, Quantity, number])[] = [
  ['co', 'carbon-monoxide', 4],
  ['co2', 'carbon-dioxide', 640],
  ['o2', 'oxygen', 20.9],
  ['humidity', 'relative-humidity', 43],
  ['room', 'temperature', 19],
];

function withNode() {
  const api = makeApi();
  const at = api.clock.now();
  const readings = SENT.map(([name, quantity, value]) => ({
    name,
    quantity,
    at,
    value,
    quality: 'good' as const,
  }));
  api.archive.commitIntake([{ node: 'air-node', receivedAt: at, readings, refusals: [] }]);
  return api;
}

it('takes an air node in with every gas, humidity and the temperature of the room, none of it the furnace’s', async () => {
  const api = withNode();
  const furnace = await api.call('POST', '/api/v1/furnaces', FURNACE);
  await api.call('POST', '/api/v1/nodes/air-node/adopt', { furnaceId: furnace.body.id });
  const { body } = await api.call('GET', '/api/v1/channels');
  const taken = body.filter((each: { node: string }) => each.node === 'air-node');
  expect(taken).toHaveLength(SENT.length);
  for (const channel of taken) expect(channel).toMatchObject({ role: 'room-air', furnaceId: null });
  expect(
    Object.fromEntries(taken.map((c: { name: string; baseUnit: string }) => [c.name, c.baseUnit])),
  ).toEqual({
    co: '[ppm]',
    co2: '[ppm]',
    o2: '%',
    humidity: '%RH',
    room: 'Cel',
  });
});

it('lets a person say that a sensor nobody has accepted yet is one of carbon dioxide after all', async () => {
  const api = withNode();
  const draft = { node: 'air-node', name: 'co', quantity: 'carbon-dioxide', unit: 'ppm' };
  const made = await api.call('POST', '/api/v1/channels', draft);
  expect(made.body).toMatchObject({ quantity: 'carbon-dioxide', role: 'room-air', latest: null });
  const again = await api.call('POST', '/api/v1/channels', { ...draft, quantity: 'oxygen', unit: '%' });
  expect(again.status).toBe(409);
});

it('refuses a unit of another quantity for a channel and for a binding', async () => {
  const api = makeApi();
  const channel = { node: 'n', name: 'o2', quantity: 'oxygen' };
  expect((await api.call('POST', '/api/v1/channels', { ...channel, unit: '%RH' })).body.code).toBe(
    'invalid-request',
  );
  expect((await api.call('POST', '/api/v1/channels', { ...channel, unit: '%' })).status).toBe(201);
  const binding = {
    topic: 'a/b',
    node: 'n',
    channel: 'co2',
    quantity: 'carbon-dioxide',
    decoder: { kind: 'number' },
  };
  expect((await api.call('POST', '/api/v1/bindings', { ...binding, unit: 'kPa' })).body.code).toBe(
    'invalid-request',
  );
  expect((await api.call('POST', '/api/v1/bindings', { ...binding, unit: 'ppm' })).status).toBe(201);
});
