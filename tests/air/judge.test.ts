import { describe, expect, it } from 'vitest';
import { airFindings, startAir, stepAir } from '../../hub/air/judge.ts';
import type { AirConfig, AirState } from '../../hub/air/types.ts';
import type { Quality } from '../../hub/contract/reading.ts';

const config: AirConfig = {
  channels: [
    { id: 'door', label: 'By the door', staleAfterSeconds: 30 },
    { id: 'forge', label: 'Over the forge', staleAfterSeconds: 30 },
  ],
  firstPpm: 20,
  secondPpm: 60,
};

type Told = readonly [seconds: number, channel: string | 'tick', ppm?: number, quality?: Quality];

function run(told: readonly Told[], from: AirState = startAir(config)): AirState {
  return told.reduce((state, [seconds, channel, ppm = 0, quality = 'good']) => {
    const at = seconds * 1000;
    if (channel === 'tick') return stepAir(config, state, { kind: 'tick', at });
    return stepAir(config, state, { kind: 'reading', reading: { channel, at, value: ppm, quality } });
  }, from);
}

const found = (told: readonly Told[]) => airFindings(config, run(told));
const kinds = (told: readonly Told[]) => found(told).map((finding) => finding.kind);

describe('the first limit', () => {
  it('is told after two readings above it in a row', () => {
    expect(kinds([[1, 'forge', 25]])).toEqual([]);
    expect(
      kinds([
        [1, 'forge', 25],
        [2, 'forge', 25],
      ]),
    ).toEqual(['unsafe-air-first']);
  });

  it('is told after five seconds above it when the sensor speaks seldom', () => {
    expect(
      kinds([
        [1, 'forge', 25],
        [5.9, 'tick'],
      ]),
    ).toEqual([]);
    expect(
      kinds([
        [1, 'forge', 25],
        [6, 'tick'],
      ]),
    ).toEqual(['unsafe-air-first']);
  });

  it('is not told for a single spike, nor at the limit itself', () => {
    expect(
      kinds([
        [1, 'forge', 25],
        [2, 'forge', 19],
        [3, 'forge', 25],
        [4, 'forge', 19],
        [9, 'tick'],
      ]),
    ).toEqual([]);
    expect(
      kinds([
        [1, 'forge', 20],
        [2, 'forge', 20],
        [10, 'tick'],
      ]),
    ).toEqual([]);
  });

  it('does not add the readings of two sensors together', () => {
    expect(
      kinds([
        [1, 'forge', 25],
        [1, 'door', 25],
        [2, 'tick'],
      ]),
    ).toEqual([]);
  });

  it('stays until the value has been a tenth below it for half a minute', () => {
    const up: Told[] = [
      [1, 'forge', 25],
      [2, 'forge', 25],
    ];
    expect(kinds([...up, [3, 'forge', 18.5], [40, 'forge', 18.5], [60, 'forge', 18.5]])).toEqual([
      'unsafe-air-first',
    ]);
    expect(kinds([...up, [3, 'forge', 17], [20, 'forge', 17], [32, 'tick']])).toEqual(['unsafe-air-first']);
    expect(kinds([...up, [3, 'forge', 17], [20, 'forge', 17], [33, 'tick']])).toEqual([]);
  });
});

describe('the second limit', () => {
  it('is told at once, and stands before the first', () => {
    expect(kinds([[1, 'forge', 61]])).toEqual(['unsafe-air-second']);
    expect(
      kinds([
        [1, 'forge', 61],
        [2, 'forge', 61],
      ]),
    ).toEqual(['unsafe-air-second', 'unsafe-air-first']);
  });

  it('tells the worst sensor, its value and the limit', () => {
    const [second] = found([
      [1, 'door', 70],
      [2, 'forge', 95],
      [3, 'door', 72],
    ]);
    expect(second).toMatchObject({ subject: 'shop', since: 1000 });
    expect(second?.params).toEqual({ ppm: 95, limitPpm: 60, channel: 'forge', label: 'Over the forge' });
  });
});

describe('what is not known', () => {
  it('never clears an alarm: a sensor that goes silent above the limit keeps it', () => {
    const told: Told[] = [
      [1, 'forge', 80],
      [2, 'forge', 80],
      [60, 'tick'],
      [3600, 'tick'],
    ];
    expect(kinds(told)).toEqual(['unsafe-air-second', 'unsafe-air-first']);
    expect(kinds([...told, [3601, 'forge', 2], [3620, 'forge', 2], [3630, 'tick']])).toHaveLength(2);
    expect(kinds([...told, [3601, 'forge', 2], [3620, 'forge', 2], [3631, 'tick']])).toEqual([]);
  });

  it('raises none either: readings that are not good are not judged', () => {
    expect(
      kinds([
        [1, 'forge', 900, 'bad'],
        [2, 'forge', 900, 'uncertain'],
        [9, 'tick'],
      ]),
    ).toEqual([]);
  });

  it('is nothing to this judge: no channel, no finding, and channels of others are not heard', () => {
    const none = { ...config, channels: [] };
    const state = stepAir(none, startAir(none), { kind: 'tick', at: 5000 });
    expect(airFindings(none, state)).toEqual([]);
    expect(
      kinds([
        [1, 'elsewhere', 900],
        [2, 'elsewhere', 900],
      ]),
    ).toEqual([]);
  });

  it('refuses to go back in time', () => {
    const state = run([[10, 'tick']]);
    expect(() => run([[9, 'tick']], state)).toThrowError(expect.objectContaining({ code: 'time-runs-back' }));
  });
});
