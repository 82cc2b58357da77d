/** Each behaviour does what its name says, in the truth and in what is published. */
import { describe, expect, test } from 'vitest';
import type { BehaviourInput } from '../../sensors-sim/behaviours/behaviour.ts';
import { OPEN_CIRCUIT_CELSIUS } from '../../sensors-sim/behaviours/sensor-faults.ts';
import {
  FORGE_ANNEAL,
  FORGE_NORMALISE,
  OVEN_HARDEN,
  OVEN_TEMPER,
  type Plan,
} from '../../sensors-sim/plans.ts';
import type { Truth } from '../../sensors-sim/truth/truth.ts';
import { fire, START } from './fire.ts';
import { arrivals } from './packs.ts';

const SEEDS = [1, 2, 3, 4, 5, 6, 7, 8, 9, 10];
/** Ten for the smith's hand; the oven's programme differs between seeds by its noise alone. */
const seedsOf = (plan: Plan) => (plan.furnace === 'forge' ? SEEDS : SEEDS.slice(0, 3));

function extremes(truth: readonly Truth[], plan: Plan, segment: number | 'heated') {
  const during = truth
    .map((each) => each[plan.furnace])
    .filter((each) =>
      segment === 'heated' ? each.segment === 0 || each.segment === 1 : each.segment === segment,
    );
  const read = during.flatMap((each) => [each.chamberCelsius, each.loadCelsius]);
  return { low: Math.min(...read), high: Math.max(...read), samples: during.length };
}

function band(plan: Plan) {
  const soak = plan.segments[1];
  if (soak?.kind !== 'soak') throw new Error('the second segment is the soak');
  const { targetCelsius, toleranceCelsius, durationSeconds } = soak;
  return { low: targetCelsius - toleranceCelsius, high: targetCelsius + toleranceCelsius, durationSeconds };
}

/** Minutes until the heating and the soak are over, with room to spare. */
const FIRINGS: readonly (readonly [Plan, number])[] = [
  [FORGE_ANNEAL, 60],
  [FORGE_NORMALISE, 60],
  [OVEN_HARDEN, 130],
  [OVEN_TEMPER, 180],
];

describe('good firing', () => {
  test.each(FIRINGS)(
    '$name holds its soak inside the band, and keeps the air below 15 ppm',
    (plan, minutes) => {
      const { low, high, durationSeconds } = band(plan);
      for (const seed of seedsOf(plan)) {
        const { truth } = fire({ plan, minutes, seed });
        const soak = extremes(truth, plan, 1);
        expect(soak.samples * 5).toBeGreaterThanOrEqual(durationSeconds);
        expect(soak.low).toBeGreaterThanOrEqual(low);
        expect(extremes(truth, plan, 'heated').high).toBeLessThanOrEqual(high);
        expect(Math.max(...truth.map((each) => each.coPpm))).toBeLessThan(15);
      }
    },
  );
});

describe('overshoot', () => {
  test.each(FIRINGS)('$name by a late operator goes over the band for every seed', (plan, minutes) => {
    for (const seed of seedsOf(plan)) {
      const { truth } = fire({ plan, minutes, seed, operator: 'late' });
      expect(extremes(truth, plan, 'heated').high).toBeGreaterThan(band(plan).high + 5);
    }
  });

  test('switched on in the soak lifts the forge over the band, and only then', () => {
    const behaviours: BehaviourInput[] = [{ name: 'overshoot', startSeconds: 35 * 60, excessCelsius: 30 }];
    const { truth } = fire({ plan: FORGE_ANNEAL, minutes: 50, behaviours });
    const before = truth.filter((each) => each.atMs < START + 35 * 60_000);
    expect(extremes(before, FORGE_ANNEAL, 'heated').high).toBeLessThanOrEqual(875);
    const { high } = extremes(truth, FORGE_ANNEAL, 1);
    expect(high).toBeGreaterThanOrEqual(888);
    expect(high).toBeLessThan(900);
  });

  test('is not seen in a late firing that good firing is switched on for', () => {
    const behaviours: BehaviourInput[] = [{ name: 'good-firing' }];
    const { truth } = fire({ plan: FORGE_ANNEAL, minutes: 60, operator: 'late', behaviours });
    expect(extremes(truth, FORGE_ANNEAL, 'heated').high).toBeLessThanOrEqual(875);
  });
});

describe('falling gas', () => {
  const startSeconds = 33 * 60;
  const gas = () =>
    fire({ plan: FORGE_ANNEAL, minutes: 75, behaviours: [{ name: 'falling-gas', startSeconds }] });

  test('starves the forge in its soak, which then never ends', () => {
    const { truth, events } = gas();
    expect(events.map((event) => event.what)).toEqual(['started', 'segment']);
    const last = truth.at(-1);
    expect(last?.forge.segment).toBe(1);
    expect(last?.forge.chamberCelsius).toBeLessThan(845 - 100);
    expect(last?.supplyGaugePascals).toBeLessThanOrEqual(1000);
  });

  test('shows at the supply while the cylinder still weighs the same', () => {
    const { emissions, truth } = gas();
    const supply = arrivals(emissions, 'forge-node', 'supply-pressure');
    const at = (minute: number) =>
      supply.find((each) => each.atMs >= START + minute * 60_000)?.value ?? Number.NaN;
    expect(at(45)).toBeLessThan(at(32) / 3);
    expect(truth.at(-1)?.cylinderKilograms).toBeGreaterThan(7);
  });

  test('of a cold and nearly empty cylinder looks the same from the forge, and the scale shows it', () => {
    const behaviours: BehaviourInput[] = [{ name: 'weak-cylinder', startSeconds }];
    const { truth, emissions } = fire({ plan: FORGE_ANNEAL, minutes: 75, behaviours });
    expect(truth.at(-1)?.forge.segment).toBe(1);
    expect(truth.at(-1)?.forge.chamberCelsius).toBeLessThan(840);
    expect(arrivals(emissions, 'forge-node', 'cylinder-mass').at(-1)?.value).toBeLessThan(0.4);
  });
});

describe('CO build-up behind a closed door', () => {
  const startSeconds = 600;
  const closed = () =>
    fire({ plan: FORGE_ANNEAL, minutes: 60, behaviours: [{ name: 'co-buildup', startSeconds }] });

  test('crosses 20 and then 60 ppm, in truth and at the sensor, and not before it begins', () => {
    const { truth, emissions } = closed();
    const first = (ppm: number) => truth.find((each) => each.coPpm > ppm)?.atMs ?? Number.NaN;
    expect(first(20)).toBeGreaterThan(START + startSeconds * 1000);
    expect(first(60)).toBeGreaterThan(first(20));
    expect(first(60)).toBeLessThan(START + 30 * 60_000);
    const read = arrivals(emissions, 'air-node', 'co');
    expect(
      read.filter((each) => each.atMs < START + startSeconds * 1000).every((each) => each.value < 15),
    ).toBe(true);
    expect(read.some((each) => each.value > 60)).toBe(true);
  });

  test('follows the box model of the room', () => {
    const { truth } = closed();
    // The rise over the last ten minutes of fire, by hand: dC = (G/V - n (C - Cb)) dt.
    const fired = truth.filter((each) => each.forge.segment === 1);
    let ppm = fired[0]?.coPpm ?? Number.NaN;
    for (const each of fired.slice(1)) {
      const source = (1e6 * (each.coKilogramsPerSecond / 1.1645)) / 60;
      ppm += 5 * (source - (each.airChangesPerHour / 3600) * (ppm - 0.5));
    }
    expect(Math.abs(ppm / (fired.at(-1)?.coPpm ?? Number.NaN) - 1)).toBeLessThan(0.01);
  });

  test('is noticed late: the sensor lags and trembles', () => {
    const { truth, emissions } = closed();
    const read = new Map(arrivals(emissions, 'air-node', 'co').map((each) => [each.atMs, each.value]));
    const rising = truth.filter((each) => each.forge.segment === 0 && each.atMs > START + 700_000);
    const behind = rising.map((each) => each.coPpm - (read.get(each.atMs) ?? Number.NaN));
    const mean = behind.reduce((sum, each) => sum + each, 0) / behind.length;
    expect(mean).toBeGreaterThan(0.3);
    expect(Math.min(...behind)).toBeLessThan(mean);
  });
});

describe('sensor faults', () => {
  test('a broken thermocouple goes to full scale while forge and steel go on as before', () => {
    const behaviours: BehaviourInput[] = [{ name: 'thermocouple-break', startSeconds: 60 }];
    const { emissions, truth } = fire({ plan: FORGE_ANNEAL, minutes: 5, behaviours });
    const read = arrivals(emissions, 'forge-node', 'chamber');
    expect(
      read.filter((each) => each.atMs >= START + 60_000).every((each) => each.value === OPEN_CIRCUIT_CELSIUS),
    ).toBe(true);
    expect(read.filter((each) => each.atMs < START + 60_000).every((each) => each.value < 300)).toBe(true);
    const sound = fire({ plan: FORGE_ANNEAL, minutes: 5 });
    expect(truth).toEqual(sound.truth);
  });

  test('a node that prints NaN sends packs that are not JSON', () => {
    const behaviours: BehaviourInput[] = [{ name: 'thermocouple-break', startSeconds: 60, mode: 'nan' }];
    const { emissions } = fire({ plan: FORGE_ANNEAL, minutes: 3, behaviours });
    const broken = emissions.filter((each) => each.payload.includes('"n":"chamber","u":"Cel","v":NaN'));
    expect(broken).toHaveLength((3 * 60 - 60) / 5 + 1);
    expect(broken.every((each) => each.topic === 'soakwatch/forge-node/readings')).toBe(true);
  });

  test('a frozen sensor repeats one value while its time goes on, then comes back', () => {
    const frozen: BehaviourInput = {
      name: 'frozen-sensor',
      channel: 'load',
      startSeconds: 300,
      durationSeconds: 300,
    };
    const { emissions, truth } = fire({ plan: FORGE_ANNEAL, minutes: 12, behaviours: [frozen] });
    const read = arrivals(emissions, 'forge-node', 'load');
    const during = read.filter((each) => each.atMs >= START + 300_000 && each.atMs < START + 600_000);
    expect(new Set(during.map((each) => each.value)).size).toBe(1);
    expect(new Set(during.map((each) => each.atMs)).size).toBe(60);
    const last = truth.at(-1)?.forge.loadCelsius ?? Number.NaN;
    expect(last).toBeGreaterThan((during[0]?.value ?? 0) + 100);
    expect(Math.abs((read.at(-1)?.value ?? 0) - last)).toBeLessThan(10);
  });

  test('a skewed clock moves the times of one node and nothing else', () => {
    const behaviours: BehaviourInput[] = [
      { name: 'clock-skew', node: 'air-node', startSeconds: 60, offsetSeconds: 90 },
    ];
    const { emissions } = fire({ plan: FORGE_ANNEAL, minutes: 3, behaviours });
    const ahead = arrivals(emissions, 'air-node', 'co').map((each) => (each.atMs - each.arrivedMs) / 1000);
    expect(ahead.slice(0, 11).every((each) => each === 0)).toBe(true);
    expect(ahead.slice(11).every((each) => each === 90)).toBe(true);
    expect(arrivals(emissions, 'forge-node', 'chamber').every((each) => each.atMs === each.arrivedMs)).toBe(
      true,
    );
  });
});

describe('duplicate and reordered messages', () => {
  test('bring every reading, some twice, some late', () => {
    const behaviours: BehaviourInput[] = [{ name: 'duplicate-reorder', durationSeconds: 500 }];
    const { emissions } = fire({ plan: FORGE_ANNEAL, minutes: 10, behaviours, every: 1 });
    const times = arrivals(emissions, 'forge-node', 'chamber').map((each) => each.atMs);
    expect(new Set(times).size).toBe(600);
    expect(times.length).toBeGreaterThan(650);
    expect(times.some((each, index) => each < (times[index - 1] ?? 0))).toBe(true);
  });
});

describe('several behaviours at once', () => {
  test('each keep what they do alone', () => {
    const { truth, emissions } = fire({
      plan: FORGE_ANNEAL,
      minutes: 45,
      behaviours: [
        { name: 'overshoot' },
        { name: 'co-buildup', startSeconds: 600, equivalenceRatio: 1.12 },
        { name: 'frozen-sensor', startSeconds: 900 },
        { name: 'node-drop', node: 'air-node', startSeconds: 1200, durationSeconds: 300 },
      ],
    });
    expect(Math.max(...truth.map((each) => each.forge.chamberCelsius))).toBeGreaterThan(880);
    expect(Math.max(...truth.map((each) => each.coPpm))).toBeGreaterThan(60);
    const frozen = arrivals(emissions, 'forge-node', 'chamber').filter(
      (each) => each.atMs >= START + 900_000,
    );
    expect(new Set(frozen.map((each) => each.value)).size).toBe(1);
    const late = arrivals(emissions, 'air-node', 'co').filter((each) => each.arrivedMs > each.atMs);
    expect(late).toHaveLength(60);
  });
});
