import { describe, expect, it } from 'vitest';
import type { Quantity } from '../../hub/contract/units.ts';
import { coldJunctionCases } from '../reference/its90-cold-junction.ts';
import { EMF, emf, junction, latestOf, probeBench, READINGS, SECOND, STRAIGHT } from './probe-support.ts';
import { message, NOW } from './support.ts';

describe('emf and the temperature of its terminals', () => {
  it.each(coldJunctionCases)(
    'type $type: $millivolts mV with terminals at $coldJunctionCelsius °C become $hotCelsius °C',
    async ({ type, millivolts, coldJunctionCelsius, hotCelsius }) => {
      const shop = probeBench({ type, source: EMF });
      await shop.take(message(READINGS, [emf(millivolts), junction(coldJunctionCelsius)]));

      expect(shop.values('forge-1', 'chamber')).toEqual([expect.closeTo(hotCelsius, 3)]);
      expect(shop.values('forge-1', 'tc-emf')).toEqual([expect.closeTo(millivolts / 1000, 12)]);
      expect(shop.values('forge-1', 'junction')).toEqual([coldJunctionCelsius]);
      expect(shop.refused('forge-1')).toEqual({});
    },
  );

  it.each([
    ['uV', 30_000],
    ['mV', 30],
    ['V', 0.03],
  ])('give the same temperature in %s', async (unit, value) => {
    const shop = probeBench({ type: 'K', source: EMF });
    await shop.take(message(READINGS, [junction(25), emf(value, unit)]));
    expect(shop.values('forge-1', 'chamber')).toEqual([expect.closeTo(744.862, 3)]);
  });

  it('serve each instant of a payload that was buffered', async () => {
    const shop = probeBench({ type: 'K', source: EMF });
    await shop.take(
      message(READINGS, [
        { bt: NOW / 1000 - 7200, ...junction(25) },
        emf(30),
        junction(40, { t: 300 }),
        emf(48, 'mV', { t: 300 }),
      ]),
    );
    expect(shop.values('forge-1', 'chamber')).toEqual([
      expect.closeTo(744.862, 3),
      expect.closeTo(1221.29, 3),
    ]);
  });

  it('may come through bindings of foreign topics, one payload each', async () => {
    const shop = probeBench({ type: 'K', source: EMF });
    const bind = (topic: string, channel: string, quantity: Quantity, unit: string) =>
      shop.archive.createBinding(
        {
          topic,
          node: 'forge-1',
          channel,
          quantity,
          unit,
          scale: 1,
          offset: 0,
          decoder: { kind: 'number' },
        },
        NOW,
      );
    bind('plc/terminals', 'junction', 'temperature', 'Cel');
    bind('plc/microvolts', 'tc-emf', 'emf', 'uV');
    shop.intake.refresh();
    await shop.take(message('plc/terminals', '25'));
    await shop.take(message('plc/microvolts', '30000', { receivedAt: NOW + SECOND }));
    expect(shop.values('forge-1', 'chamber')).toEqual([expect.closeTo(744.862, 3)]);
  });
});

describe('what cannot be a temperature', () => {
  it('outside the table is kept as emf, computed to nothing, and counted', async () => {
    const shop = probeBench({ type: 'K', source: EMF });
    // 54.886 mV is the last entry of type K (NIST SRD 60); with warm terminals the sum lies beyond it.
    await shop.take(message(READINGS, [emf(54.8), junction(25)]));
    expect(shop.values('forge-1', 'chamber')).toEqual([]);
    expect(shop.values('forge-1', 'tc-emf')).toEqual([expect.closeTo(0.0548, 12)]);
    expect(shop.refused('forge-1')).toEqual({ 'outside-table': 1 });
  });

  it('type B near room temperature has two answers, so it has none', async () => {
    const shop = probeBench({ type: 'B', source: EMF });
    await shop.take(message(READINGS, [emf(0.001), junction(25)]));
    expect(shop.values('forge-1', 'chamber')).toEqual([]);
    expect(shop.refused('forge-1')).toEqual({ 'outside-table': 1 });
    expect(shop.archive.refusals({ limit: 1 })[0]?.detail).toContain('two-valued');
  });

  it('a temperature at the end of its type is a broken wire, not heat', async () => {
    const shop = probeBench({ type: 'K' });
    await shop.take(message(READINGS, [{ n: 'chamber', u: 'Cel', v: 1371.75 }]));
    expect(latestOf(shop)?.quality).toBe('good');
    await shop.take(message(READINGS, [{ n: 'chamber', u: 'Cel', v: 1372 }], { receivedAt: NOW + SECOND }));
    expect(latestOf(shop)).toMatchObject({ value: 1372, quality: 'bad', reason: 'out-of-range' });
  });

  it('a temperature sent under the name of a computed channel is not mixed into it', async () => {
    const shop = probeBench({ type: 'K', source: EMF });
    await shop.take(
      message(READINGS, [{ n: 'chamber', u: 'Cel', v: 700 }, emf(30, 'mV', { t: -1 }), junction(25)]),
    );
    expect(shop.values('forge-1', 'chamber')).toEqual([expect.closeTo(744.862, 3)]);
    expect(shop.refused('forge-1')).toEqual({ 'computed-here': 1 });
  });
});

describe('a digitiser that assumes a straight line', () => {
  /** Terminals at 25 °C; true, reported (computed from NIST SRD 60 and 41.276 µV/°C, Maxim 19-5793). */
  it.each([
    [500, 500.92],
    [800, 806.93],
    [1000, 1000.76],
    [1250, 1227.72],
    [-100, -85.33],
  ])('at %d °C: the reported temperature becomes the true one', async (trueCelsius, reported) => {
    const shop = probeBench({ type: 'K', source: STRAIGHT });
    await shop.take(message(READINGS, [{ n: 'chamber', u: 'Cel', v: reported }, junction(25)]));
    expect(Math.abs((shop.values('forge-1', 'chamber')[0] ?? 0) - trueCelsius)).toBeLessThan(0.02);
    expect(shop.refused('forge-1')).toEqual({});
  });

  it('without its terminals is kept as it was sent, as bad, and counted', async () => {
    const shop = probeBench({
      type: 'K',
      source: STRAIGHT,
      correction: { offsetCelsius: 9, standardUncertaintyCelsius: 1 },
    });
    await shop.take(message(READINGS, [{ n: 'chamber', u: 'Cel', v: 806.93 }]));
    expect(latestOf(shop)).toEqual({
      at: NOW,
      value: 806.93,
      quality: 'bad',
      reason: 'no-cold-junction',
    });
    expect(shop.refused('forge-1')).toEqual({ 'no-cold-junction': 1 });
  });

  it('with a broken wire is out of range and outside the table', async () => {
    const shop = probeBench({ type: 'K', source: STRAIGHT });
    await shop.take(message(READINGS, [{ n: 'chamber', u: 'Cel', v: 2047.75 }, junction(25)]));
    expect(latestOf(shop)).toMatchObject({ value: 2047.75, quality: 'bad', reason: 'out-of-range' });
    expect(shop.refused('forge-1')).toEqual({ 'outside-table': 1 });
  });
});

describe('a correction', () => {
  const correction = { offsetCelsius: -3.5, standardUncertaintyCelsius: 1.1 };

  it.each([
    ['a temperature', { kind: 'celsius' }, [{ n: 'chamber', u: 'Cel', v: 800 }], 796.5],
    ['emf', EMF, [emf(30), junction(25)], 741.362],
    ['a straight line', STRAIGHT, [{ n: 'chamber', u: 'Cel', v: 806.93 }, junction(25)], 796.5],
  ])('of %s is added as the last step', async (_what, source, pack, expected) => {
    const shop = probeBench({ type: 'K', source, correction });
    await shop.take(message(READINGS, pack));
    expect(Math.abs((shop.values('forge-1', 'chamber')[0] ?? 0) - expected)).toBeLessThan(0.02);
  });

  it('is made before the value is held against what the sensor can mean', async () => {
    const shop = probeBench({ type: 'K', correction }, { possibleHigh: 1300 });
    await shop.take(message(READINGS, [{ n: 'chamber', u: 'Cel', v: 1303 }]));
    expect(latestOf(shop)).toMatchObject({ value: 1299.5, quality: 'good' });
    await shop.take(message(READINGS, [{ n: 'chamber', u: 'Cel', v: 1304 }], { receivedAt: NOW + SECOND }));
    expect(latestOf(shop)).toMatchObject({ value: 1300.5, quality: 'bad', reason: 'out-of-range' });
  });

  it('is of the channel that has it: the others stay as they are', async () => {
    const shop = probeBench({ type: 'K', correction });
    await shop.take(message(READINGS, [{ n: 'chamber', u: 'Cel', v: 800 }, junction(25), emf(30)]));
    expect(shop.values('forge-1', 'junction')).toEqual([25]);
    expect(shop.values('forge-1', 'tc-emf')).toEqual([0.03]);
  });
});
