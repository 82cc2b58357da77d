import { describe, expect, it } from 'vitest';
import { blindnessFindings } from '../../hub/blindness/findings.ts';
import { startBlindness, stepBlindness } from '../../hub/blindness/judge.ts';
import type { BlindnessConfig, BlindnessInput, BlindnessState } from '../../hub/blindness/types.ts';

const config: BlindnessConfig = {
  channels: [
    {
      id: 'chamber',
      label: 'Chamber',
      quantity: 'temperature',
      role: 'chamber',
      furnaceId: 'forge',
      node: 'hot',
      staleAfterSeconds: 20,
    },
    {
      id: 'rear',
      label: 'Rear',
      quantity: 'temperature',
      role: 'chamber',
      furnaceId: 'forge',
      node: 'hot',
      staleAfterSeconds: 20,
    },
    {
      id: 'oven',
      label: 'Oven',
      quantity: 'temperature',
      role: 'chamber',
      furnaceId: 'oven',
      node: 'ovens',
      staleAfterSeconds: 20,
    },
    {
      id: 'co',
      label: 'CO',
      quantity: 'carbon-monoxide',
      role: 'room-air',
      furnaceId: null,
      node: 'air',
      staleAfterSeconds: 30,
    },
    {
      id: 'room',
      label: 'Room',
      quantity: 'temperature',
      role: 'room-air',
      furnaceId: null,
      node: 'air',
      staleAfterSeconds: 30,
    },
    {
      id: 'gas',
      label: 'Gas',
      quantity: 'pressure',
      role: 'supply-pressure',
      furnaceId: 'forge',
      node: 'hot',
      staleAfterSeconds: 30,
    },
  ],
  furnaces: [
    { id: 'forge', name: 'Big forge', kind: 'gas-forge' },
    { id: 'oven', name: 'Oven', kind: 'electric-oven' },
  ],
  hotAboveCelsius: 100,
  watchCarbonMonoxideFor: 'any-furnace',
};

const ms = (seconds: number) => 1_000_000 + seconds * 1000;
const heard = (seconds: number, channel: string, value: number): BlindnessInput => ({
  kind: 'reading',
  reading: { channel, at: ms(seconds), value, quality: 'good' },
});
const tick = (seconds: number): BlindnessInput => ({ kind: 'tick', at: ms(seconds) });
const node = (seconds: number, name: string, status: 'online' | 'offline'): BlindnessInput => ({
  kind: 'node-status',
  at: ms(seconds),
  node: name,
  status,
});
const running = (seconds: number, watched = ['chamber', 'rear']): BlindnessInput => ({
  kind: 'firing-running',
  at: ms(seconds),
  firingId: 'firing-1',
  furnaceId: 'forge',
  watched,
});

function run(inputs: readonly BlindnessInput[], own = config): BlindnessState {
  return inputs.reduce((state, input) => stepBlindness(own, state, input), startBlindness(own, ms(0)));
}
const found = (inputs: readonly BlindnessInput[], own = config) => blindnessFindings(own, run(inputs, own));
const named = (inputs: readonly BlindnessInput[], own = config) =>
  found(inputs, own).map((finding) => `${finding.kind} ${finding.subject}`);

describe('a quiet cold shop at night', () => {
  it('raises nothing, however old its readings are and whoever goes offline', () => {
    const cold = [heard(1, 'chamber', 22), heard(1, 'oven', 60), heard(1, 'co', 0)];
    expect(named([...cold, node(2, 'hot', 'offline'), node(2, 'air', 'offline'), tick(30_000)])).toEqual([]);
  });

  it('raises nothing when nothing was ever heard', () => {
    expect(named([tick(100_000)])).toEqual([]);
  });
});

describe('a running firing', () => {
  const eyes = (s: number) => [heard(s, 'chamber', 700), heard(s, 'rear', 690), heard(s, 'co', 3)];

  it('is in order while all that it watches speaks, and the air too', () => {
    expect(named([running(0), ...eyes(1), tick(20)])).toEqual([]);
  });

  it('tells a watched channel that has gone old, with its last word', () => {
    const inputs = [running(0), ...eyes(1), heard(15, 'chamber', 710), heard(15, 'co', 3), tick(21)];
    expect(found(inputs)).toMatchObject([
      {
        kind: 'not-watching-channel',
        subject: 'rear',
        since: ms(21),
        params: {
          firingId: 'firing-1',
          furnaceName: 'Big forge',
          ageSeconds: 20,
          lastCelsius: 690,
          label: 'Rear',
        },
      },
    ]);
  });

  it('gives a channel that was never heard its own time, and no more', () => {
    const inputs = [running(0), heard(1, 'chamber', 700), heard(1, 'co', 3), heard(15, 'chamber', 700)];
    expect(named([...inputs, tick(19)])).toEqual([]);
    expect(named([...inputs, tick(20)])).toEqual(['not-watching-channel rear']);
    expect(found([...inputs, tick(20)])[0]?.params.ageSeconds).toBeNull();
  });

  it('takes a bad reading for no reading', () => {
    const bad: BlindnessInput = {
      kind: 'reading',
      reading: { channel: 'rear', at: ms(20), value: 1800, quality: 'bad' },
    };
    const inputs = [running(0), ...eyes(1), heard(20, 'chamber', 700), bad, tick(21)];
    expect(named(inputs)).toEqual(['not-watching-channel rear']);
  });

  it('does not mind a channel that it does not watch', () => {
    expect(named([running(0), heard(1, 'gas', 9), ...eyes(100), tick(110)])).toEqual([]);
  });

  it('tells a node that went offline once, in place of its channels', () => {
    const inputs = [running(0), ...eyes(1), node(5, 'hot', 'offline'), heard(25, 'co', 3), tick(40)];
    expect(named(inputs)).toEqual(['not-watching-node hot']);
    expect(found(inputs)[0]).toMatchObject({ since: ms(5), params: { channels: 2, firingId: 'firing-1' } });
    expect(named([...inputs, node(41, 'hot', 'online'), ...eyes(42)])).toEqual([]);
  });

  it('tells its channels again when the node is back but they are not', () => {
    const inputs = [
      running(0),
      ...eyes(1),
      node(5, 'hot', 'offline'),
      heard(35, 'co', 3),
      node(40, 'hot', 'online'),
    ];
    expect(named(inputs)).toEqual(['not-watching-channel chamber', 'not-watching-channel rear']);
  });

  it('does not mind a node that carries nothing of it', () => {
    expect(named([running(0), ...eyes(1), node(5, 'ovens', 'offline'), tick(10)])).toEqual([]);
  });

  it('leaves nothing behind when it is over and the furnace was cold', () => {
    const inputs = [running(0), heard(1, 'chamber', 30), heard(1, 'co', 0), tick(60)];
    expect(named(inputs).length).toBeGreaterThan(0);
    expect(named([...inputs, { kind: 'firing-over', at: ms(61), firingId: 'firing-1' }])).toEqual([]);
  });
});

describe('a furnace that is hot without a firing', () => {
  const air = (s: number) => heard(s, 'co', 3);

  it('is missed when it goes silent, for up to four hours', () => {
    expect(named([heard(0, 'oven', 400), air(0), air(25), tick(25)])).toEqual(['not-watching-channel oven']);
    expect(named([heard(0, 'oven', 400), air(14_390), tick(14_400)])).toEqual(['not-watching-channel oven']);
    expect(named([heard(0, 'oven', 400), air(14_390), tick(14_401)])).toEqual([]);
  });

  it('does not flicker about the limit', () => {
    const swings = [101, 99, 101, 92].flatMap((celsius, i) => [heard(i, 'oven', celsius)]);
    expect(named([...swings, air(25), tick(30)])).toEqual(['not-watching-channel oven']);
    expect(named([...swings, heard(4, 'oven', 90), air(25), tick(30)])).toEqual([]);
  });

  it('is missed by its node when that goes offline', () => {
    const inputs = [heard(0, 'oven', 400), air(0), node(3, 'ovens', 'offline'), tick(4)];
    expect(named(inputs)).toEqual(['not-watching-node ovens']);
    expect(found(inputs)[0]?.params).toMatchObject({ furnaceName: 'Oven', firingId: null });
  });
});

describe('the air', () => {
  const hot = (s: number) => heard(s, 'oven', 400);

  it('is not watched when the only CO sensor has gone old while a furnace is hot', () => {
    const inputs = [heard(0, 'co', 3), hot(0), hot(15), tick(29)];
    expect(named(inputs)).toEqual([]);
    expect(found([...inputs, tick(30)])).toMatchObject([
      { kind: 'not-watching-air', subject: 'shop', since: ms(30), params: { channels: 1, ageSeconds: 30 } },
    ]);
  });

  it('is not watched without a CO channel, whatever else hangs in the room', () => {
    const bare = { ...config, channels: config.channels.filter((channel) => channel.id !== 'co') };
    const inputs = [hot(0), heard(1, 'room', 20), tick(2)];
    expect(found(inputs, bare)).toMatchObject([{ kind: 'not-watching-air', params: { channels: 0 } }]);
  });

  it('is watched as long as one of several sensors is fresh', () => {
    const second = { ...config.channels[3], id: 'co-2' } as BlindnessConfig['channels'][number];
    const two = { ...config, channels: [...config.channels, second] };
    expect(named([heard(0, 'co', 3), hot(0), hot(40), heard(40, 'co-2', 3), tick(45)], two)).toEqual([]);
  });

  it('must be watched from the first moment of a firing, cold or not', () => {
    const inputs = [
      running(0),
      heard(1, 'chamber', 20),
      heard(1, 'rear', 20),
      heard(25, 'chamber', 20),
      heard(25, 'rear', 20),
    ];
    expect(named([...inputs, tick(29)])).toEqual([]);
    expect(named([...inputs, tick(30)])).toEqual(['not-watching-air shop']);
  });

  it('is nobody’s need for an electric oven where only fuel is to be watched', () => {
    const fuel = { ...config, watchCarbonMonoxideFor: 'fuel-burning' as const };
    expect(named([hot(0), hot(90), tick(100)], fuel)).toEqual([]);
    expect(named([heard(0, 'chamber', 400), heard(90, 'chamber', 400), tick(100)], fuel)).toEqual([
      'not-watching-air shop',
    ]);
  });

  it('is missed both ways when its node is offline and its last word is old', () => {
    const inputs = [heard(0, 'co', 3), hot(0), node(2, 'air', 'offline'), hot(30), tick(31)];
    expect(named(inputs)).toEqual(['not-watching-node air', 'not-watching-air shop']);
  });
});

describe('time', () => {
  it('never runs back', () => {
    const state = run([tick(10)]);
    expect(() => stepBlindness(config, state, tick(9))).toThrowError(
      expect.objectContaining({ code: 'time-runs-back' }),
    );
  });
});
