import { describe, expect, it } from 'vitest';
import type { ChannelUncertainty } from '../../hub/contract/probe.ts';
import { type Api, makeApi } from './api-client.ts';

const EMF = { kind: 'emf', emfChannel: 'tc-emf', coldJunctionChannel: 'junction' };

interface Bench extends Api {
  readonly furnaceId: string;
  add(name: string, quantity: string, more?: object): ReturnType<Api['call']>;
}

async function ready(): Promise<Bench> {
  const api = makeApi();
  const furnace = await api.call('POST', '/api/v1/furnaces', {
    name: 'Forge',
    kind: 'gas-forge',
    ratedCelsius: 1300,
  });
  const add: Bench['add'] = (name, quantity, more = {}) =>
    api.call('POST', '/api/v1/channels', { node: 'forge-1', name, quantity, ...more });
  return { ...api, furnaceId: furnace.body.id, add };
}

describe('setting up the probe of a channel', () => {
  it('comes with the channel or later, and is told back whole', async () => {
    const api = await ready();
    const made = await api.add('chamber', 'temperature', { probe: { type: 'K', tolerance: 'iec-2' } });
    expect(made).toMatchObject({ status: 201, body: { probe: { type: 'K', source: { kind: 'celsius' } } } });
    const path = `/api/v1/channels/${made.body.id}`;
    const changed = await api.call('PATCH', path, { probe: { type: 'N', source: EMF } });
    expect(changed.body.probe).toMatchObject({ type: 'N', tolerance: null, source: EMF });
    expect((await api.call('PATCH', path, { label: 'Front' })).body.probe).toEqual(changed.body.probe);
    expect((await api.call('PATCH', path, { probe: null })).body.probe).toBeNull();
    expect(api.catalogueChanges()).toBe(4);
  });

  it('says the place of every fault', async () => {
    const api = await ready();
    const answer = await api.add('chamber', 'temperature', {
      probe: { type: 'X', source: { ...EMF, coldJunctionChannel: 'tc-emf' } },
    });
    expect(answer).toMatchObject({ status: 400, body: { code: 'invalid-request' } });
    expect(answer.body.errors).toContainEqual({
      path: '/probe/type',
      message: 'the letter on the probe, one of B, E, J, K, N, R, S, T',
    });
  });

  it.each([
    ['/probe/tolerance', { type: 'B', tolerance: 'iec-1' }],
    ['/probe/source/emfChannel', { type: 'K', source: { ...EMF, emfChannel: 'gas' } }],
    ['/probe/source/coldJunctionChannel', { type: 'K', source: { ...EMF, coldJunctionChannel: 'gas' } }],
    ['/probe/source/coldJunctionChannel', { type: 'K', source: { ...EMF, coldJunctionChannel: 'other' } }],
  ])('names the field that does not fit the node: %s', async (path, probe) => {
    const api = await ready();
    await api.add('gas', 'pressure');
    await api.add('other', 'temperature', { probe: { type: 'K' } });
    const { body } = await api.add('chamber', 'temperature', { probe });
    expect(body.errors).toEqual([{ path, message: body.detail }]);
  });

  it.each([
    [{ type: 'B', tolerance: 'iec-1' }, 'choose one of iec-2, iec-3, astm-standard, astm-special, or none'],
    [{ type: 'K', source: { ...EMF, emfChannel: 'chamber' } }, 'it cannot be computed from itself'],
    [{ type: 'K', source: { ...EMF, emfChannel: 'gas' } }, 'gas is a channel of gas pressure'],
    [{ type: 'K', source: { ...EMF, coldJunctionChannel: 'gas' } }, 'one of temperature is needed there'],
    [{ type: 'K', source: { ...EMF, coldJunctionChannel: 'other' } }, 'other has a probe of its own'],
  ])('refuses what does not fit the node: %j', async (probe, said) => {
    const api = await ready();
    await api.add('gas', 'pressure');
    await api.add('other', 'temperature', { probe: { type: 'K' } });
    const { body } = await api.add('chamber', 'temperature', { probe });
    expect(body.code).toBe('invalid-request');
    expect(body.detail).toContain(said);
    expect(api.archive.channels().map(({ name }) => name)).toEqual(['gas', 'other']);
  });

  it('refuses one for a pressure, and one for the sensor that another probe leans on', async () => {
    const api = await ready();
    const gas = await api.add('gas', 'pressure', { probe: { type: 'K' } });
    expect(gas.body.detail).toContain('a probe belongs to a temperature channel');
    await api.add('chamber', 'temperature', { probe: { type: 'K', source: EMF } });
    const junction = await api.add('junction', 'temperature', { probe: { type: 'T' } });
    expect(junction.body.detail).toContain('chamber takes junction for its terminals');
  });

  it('takes names that the node has not spoken yet', async () => {
    const api = await ready();
    const made = await api.add('chamber', 'temperature', { probe: { type: 'K', source: EMF } });
    expect(made.status).toBe(201);
  });
});

/** The ± in the record of a firing with a soak at this temperature, for a chamber with this probe. */
async function recorded(
  probe: object | null,
  targetCelsius: number,
): Promise<ChannelUncertainty | undefined> {
  const api = await ready();
  await api.add('chamber', 'temperature', { furnaceId: api.furnaceId, probe });
  await api.add('spare', 'temperature', { probe: { type: 'K', tolerance: 'iec-1' } });
  const schedule = await api.call('POST', '/api/v1/schedules', {
    name: 'Anneal',
    segments: [
      { kind: 'ramp', targetCelsius: targetCelsius - 60 },
      { kind: 'soak', targetCelsius: targetCelsius - 60, durationSeconds: 60 },
      { kind: 'ramp', targetCelsius },
      { kind: 'soak', targetCelsius, durationSeconds: 900 },
      { kind: 'ramp', targetCelsius: targetCelsius + 20 },
    ],
  });
  const { body } = await api.call('POST', '/api/v1/firings', {
    furnaceId: api.furnaceId,
    scheduleId: schedule.body.id,
  });
  const record = await api.call('GET', `/api/v1/firings/${body.id}/record?format=json`);
  expect(record.body.uncertainty).toHaveLength(1);
  return record.body.uncertainty[0];
}

describe('the ± in the record of a firing', () => {
  it('is that of the class and the digitiser at the highest soak target', async () => {
    const found = await recorded({ type: 'K', tolerance: 'iec-2', digitiserStepCelsius: 0.25 }, 860);
    // IEC 60584-1, type K class 2: 0.0075 t; rectangular limits and a digital step by GUM 4.3.7 and F.2.2.1; k = 2.
    const expected = 2 * Math.hypot((0.0075 * 860) / Math.sqrt(3), 0.25 / Math.sqrt(12));
    expect(found).toMatchObject({ atCelsius: 860, coverageFactor: 2 });
    expect(found?.expandedCelsius).toBeCloseTo(expected, 9);
    expect(found?.budget.map(({ name }) => name)).toEqual(['class iec-2', 'digitiser step']);
    expect(found?.text).toContain('That class is for new wire');
  });

  it('is that of the correction where there is one: it replaces the class', async () => {
    const correction = { offsetCelsius: 2, standardUncertaintyCelsius: 1.1 };
    const found = await recorded({ type: 'K', tolerance: 'iec-2', correction }, 860);
    expect(found?.expandedCelsius).toBeCloseTo(2.2, 12);
    expect(found?.text).toMatch(/^± 2\.2 °C at 860 °C \(k = 2\), from the correction of this probe/);
  });

  it.each([
    ['nobody has said what probe it is', null, 860, 'Nobody has said what probe this is'],
    [
      'only its digitiser is known',
      { type: 'K', digitiserStepCelsius: 0.25 },
      860,
      'Neither a tolerance class',
    ],
    ['its class does not reach so far', { type: 'K', tolerance: 'iec-1' }, 1010, 'does not reach 1010 °C'],
    [
      'its type does not reach so far',
      { type: 'T', correction: { offsetCelsius: 0, standardUncertaintyCelsius: 1 } },
      860,
      'Type T does not reach 860 °C',
    ],
  ])('is none, with the reason, when %s', async (_when, probe, target, said) => {
    const found = await recorded(probe, target);
    expect(found).toMatchObject({ expandedCelsius: null, coverageFactor: null, budget: [] });
    expect(found?.text).toContain(said);
    expect(found?.text).not.toContain('± 0');
  });
});
