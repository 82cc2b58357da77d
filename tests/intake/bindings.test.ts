import { describe, expect, test } from 'vitest';
import type { Binding } from '../../hub/contract/shop.ts';
import { type Bench, bench, message, NOW } from './support.ts';

type Wanted = Partial<Omit<Binding, 'id' | 'createdAt'>>;

const JSON_TEMP: Binding['decoder'] = {
  kind: 'json',
  valuePointer: '/temp_c',
  timePointer: null,
  timeFormat: 'epoch-seconds',
};

function bind(shop: Bench, wanted: Wanted): void {
  const plain = { topic: 'oven/temp', node: 'oven', channel: 'chamber', quantity: 'temperature' } as const;
  const rest = { unit: 'Cel', scale: 1, offset: 0, decoder: JSON_TEMP };
  shop.archive.createBinding({ ...plain, ...rest, ...wanted }, NOW);
  shop.intake.refresh();
}

describe('a foreign device', () => {
  test('that publishes {"temp_c": 861.5} on its own topic needs no firmware change', async () => {
    const shop = bench();
    bind(shop, {});
    await shop.take(message('oven/temp', '{"temp_c": 861.5}'));

    expect(shop.values('oven', 'chamber')).toEqual([861.5]);
  });

  test('is scaled first, then read in the binding’s unit', async () => {
    const shop = bench();
    // A 0-100 psi transducer, 0.5 to 4.5 V ratiometric at 5 V: 2.5 V is 50 psi (10-90 % of supply; worked example: DigiKey TechForum 4500).
    bind(shop, {
      topic: 'gas/volts',
      quantity: 'pressure',
      channel: 'supply',
      unit: 'psi',
      scale: 25,
      offset: -12.5,
      decoder: { kind: 'number' },
    });
    await shop.take(message('gas/volts', '2.5'));

    expect(shop.values('oven', 'supply')).toEqual([expect.closeTo(50 * 6894.757293168, 3)]);
  });

  test('is named by the first + of the filter when the binding names no node', async () => {
    const shop = bench();
    bind(shop, { topic: 'shop/+/temp/+', node: null });
    await shop.take(message('shop/oven2/temp/a', '{"temp_c": 20}'));
    await shop.take(message('shop/oven3/temp/a', '{"temp_c": 30}'));

    expect(shop.values('oven2', 'chamber')).toEqual([20]);
    expect(shop.values('oven3', 'chamber')).toEqual([30]);
  });

  test('may feed several channels from one payload, one unreadable without the others', async () => {
    const shop = bench();
    bind(shop, {});
    bind(shop, {
      channel: 'supply',
      quantity: 'pressure',
      unit: 'kPa',
      decoder: { ...JSON_TEMP, valuePointer: '/p' },
    });
    bind(shop, { channel: 'gone', decoder: { ...JSON_TEMP, valuePointer: '/gone' } });
    await shop.take(message('oven/temp', '{"temp_c": 20, "p": 3}'));

    expect(shop.values('oven', 'chamber')).toEqual([20]);
    expect(shop.values('oven', 'supply')).toEqual([3000]);
    expect(shop.refused('oven')).toMatchObject({ 'value-not-found': 1 });
  });

  test('tells its own time where the binding says where to look', async () => {
    const shop = bench();
    bind(shop, { decoder: { ...JSON_TEMP, timePointer: '/at', timeFormat: 'iso8601' } });
    await shop.take(message('oven/temp', '{"temp_c": 20, "at": "2023-11-14T20:13:20+01:00"}'));

    const [channel] = shop.archive.channels();
    expect(channel?.latest?.at).toBe(Date.UTC(2023, 10, 14, 19, 13, 20));
  });

  test('whose retained copy carries no time says nothing', async () => {
    const shop = bench();
    bind(shop, {});
    await shop.take(message('oven/temp', '{"temp_c": 20}', { fromRetained: true }));
    await shop.take(message('oven/temp', '{"temp_c": 21}'));

    expect(shop.values('oven', 'chamber')).toEqual([21]);
    expect(shop.refused('oven')).toMatchObject({ 'retained-without-time': 1 });
  });

  test.each([
    ['a wrong unit', { unit: 'bar' }, '{"temp_c": 20}', 'wrong-unit'],
    ['an unknown unit', { unit: 'gas mark' }, '{"temp_c": 20}', 'unknown-unit'],
    ['text for a value', {}, '{"temp_c": "20"}', 'bad-value'],
    ['no JSON', {}, 'temp=20', 'bad-json'],
    ['a scale that overflows', { scale: 1e308 }, '{"temp_c": 20}', 'not-finite'],
    ['a huge payload', {}, `{"temp_c": 20, "x": "${'x'.repeat(300_000)}"}`, 'payload-too-large'],
  ] as const)('with %s is refused and counted', async (_what, wanted, payload, reason) => {
    const shop = bench();
    bind(shop, wanted);
    await shop.take(message('oven/temp', payload));

    expect(shop.values('oven', 'chamber')).toEqual([]);
    expect(shop.refused('oven')).toMatchObject({ [reason]: 1 });
  });

  test('a binding without a node and without a + has nobody to speak for', async () => {
    const shop = bench();
    bind(shop, { node: null });
    await shop.take(message('oven/temp', '{"temp_c": 20}'));

    expect(shop.archive.nodes()).toEqual([]);
    expect(shop.archive.refusals({ limit: 1 })).toMatchObject([{ reason: 'bad-name' }]);
  });
});

test('a binding that is deleted is heard no more after the refresh', async () => {
  const shop = bench();
  bind(shop, {});
  const [binding] = shop.archive.bindings();
  shop.archive.deleteBinding(binding?.id ?? '');
  shop.intake.refresh();
  await shop.take(message('oven/temp', '{"temp_c": 20}'));

  expect(shop.archive.nodes()).toEqual([]);
});

test('an outside broker is asked for our own topics and for those of the bindings, each once', () => {
  const shop = bench();
  bind(shop, {});
  bind(shop, { channel: 'other' });

  expect(shop.intake.subscriptions()).toEqual(['soakwatch/+/readings', 'soakwatch/+/status', 'oven/temp']);
});
