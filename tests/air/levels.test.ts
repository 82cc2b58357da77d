import { describe, expect, it } from 'vitest';
import { airFindings, startAir, stepAir } from '../../hub/air/judge.ts';
import type { AirConfig } from '../../hub/air/types.ts';
import type { Quality } from '../../hub/contract/reading.ts';

const CONFIG: AirConfig = {
  channels: [
    { id: 'co', label: 'CO', staleAfterSeconds: 30, fullScale: 1500 },
    { id: 'co2', label: 'CO2', staleAfterSeconds: 120, gas: 'carbon-dioxide' },
    { id: 'o2', label: 'O2', staleAfterSeconds: 120, gas: 'oxygen' },
  ],
  firstPpm: 20,
  secondPpm: 60,
  ceilingPpm: 125,
  idlhPpm: 1200,
};

type Told = readonly [seconds: number, channel: string, value: number, quality?: Quality];

function found(told: readonly Told[], config = CONFIG) {
  const state = told.reduce(
    (now, [seconds, channel, value, quality = 'good']) =>
      stepAir(config, now, {
        kind: 'reading',
        reading: { channel, at: seconds * 1000, value, quality },
      }),
    startAir(config),
  );
  return airFindings(config, state);
}
const kinds = (told: readonly Told[], config = CONFIG) => found(told, config).map(({ kind }) => kind);

describe('carbon monoxide at the instant', () => {
  // NIOSH: IDLH 1200 ppm (1994), ceiling 200; ACGIH excursion 125 ppm, five times the TLV (from memory).
  it.each([
    [1201, ['unsafe-air-idlh', 'unsafe-air-second', 'unsafe-air-ceiling']],
    [1200, ['unsafe-air-second', 'unsafe-air-ceiling']],
    [126, ['unsafe-air-second', 'unsafe-air-ceiling']],
    [125, ['unsafe-air-second']],
    [61, ['unsafe-air-second']],
    [60, []],
  ])('at %d ppm, one reading, tells %j', (ppm, expected) => {
    expect(kinds([[1, 'co', ppm]])).toEqual(expected);
  });

  it('knows no ceiling where the profile sets none', () => {
    const { ceilingPpm: _none, ...bare } = CONFIG;
    expect(kinds([[1, 'co', 400]], bare)).toEqual(['unsafe-air-second']);
  });
});

describe('a sensor at the end of its scale', () => {
  it('is told at once, also when the reading itself counts as impossible', () => {
    expect(kinds([[1, 'co', 1500]])[0]).toBe('unsafe-air-idlh');
    expect(kinds([[1, 'co', 1500]])).toContain('unsafe-air-saturated');
    expect(kinds([[1, 'co', 2000, 'bad']])).toEqual(['unsafe-air-saturated']);
  });

  it('is not told of high air that the sensor can still tell, nor without a known scale', () => {
    expect(kinds([[1, 'co', 1499]])).not.toContain('unsafe-air-saturated');
    expect(kinds([[1, 'co2', 900_000]])).not.toContain('unsafe-air-saturated');
  });

  it('is not ended by silence or by readings that are not good', () => {
    expect(
      kinds([
        [1, 'co', 2000, 'bad'],
        [400, 'co2', 420],
        [500, 'co', 3, 'uncertain'],
      ]),
    ).toEqual(['unsafe-air-saturated']);
    expect(
      kinds([
        [1, 'co', 2000, 'bad'],
        [2, 'co', 3],
        [33, 'co', 3],
      ]),
    ).toEqual([]);
  });
});

describe('other gases', () => {
  // OSHA, ACGIH, EU 5000 ppm; short-term 30 000 ppm (secondary tables), both on the instant reading.
  it('tells carbon dioxide above 30 000 ppm at once, above 5000 after two readings', () => {
    expect(kinds([[1, 'co2', 30_001]])).toEqual(['unsafe-air-carbon-dioxide-second']);
    expect(kinds([[1, 'co2', 5001]])).toEqual([]);
    expect(
      kinds([
        [1, 'co2', 5001],
        [2, 'co2', 5001],
      ]),
    ).toEqual(['unsafe-air-carbon-dioxide-first']);
    expect(
      kinds([
        [1, 'co2', 5000],
        [2, 'co2', 5000],
      ]),
    ).toEqual([]);
  });

  // 29 CFR 1910.146: below 19.5 % or above 23.5 % oxygen is a hazardous atmosphere.
  it('tells oxygen on both sides, in percent', () => {
    const [low] = found([[1, 'o2', 19.4]]);
    expect(low).toMatchObject({
      kind: 'unsafe-air-low-oxygen',
      params: { percent: 19.4, limitPercent: 19.5 },
    });
    expect(
      kinds([
        [1, 'o2', 19.5],
        [2, 'o2', 20.9],
        [3, 'o2', 23.5],
      ]),
    ).toEqual([]);
    expect(
      kinds([
        [1, 'o2', 23.6],
        [2, 'o2', 23.6],
      ]),
    ).toEqual(['unsafe-air-high-oxygen']);
  });

  it('tells the lower of two oxygen sensors', () => {
    const channels = [...CONFIG.channels, { ...CONFIG.channels[2], id: 'o2-floor', label: 'Floor' }];
    const config = { ...CONFIG, channels: channels as AirConfig['channels'] };
    const [low] = found(
      [
        [1, 'o2', 19.2],
        [2, 'o2-floor', 18.8],
      ],
      config,
    );
    expect(low?.params).toMatchObject({ channel: 'o2-floor', percent: 18.8 });
  });

  it('never takes one gas for another', () => {
    expect(
      kinds([
        [1, 'co2', 800],
        [2, 'co2', 800],
        [3, 'o2', 20.9],
      ]),
    ).toEqual([]);
  });
});
