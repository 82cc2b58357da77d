import { describe, expect, test } from 'vitest';
import { type BehaviourInput, behaviour } from '../../sensors-sim/behaviours/behaviour.ts';
import type { PlannedFiring } from '../../sensors-sim/operators/firing-desk.ts';
import { FORGE_ANNEAL, OVEN_TEMPER } from '../../sensors-sim/plans.ts';
import { type Emission, simulate } from '../../sensors-sim/run.ts';
import { arrivals } from './packs.ts';

const START = 1_700_000_000_000;
const PLAN: readonly PlannedFiring[] = [
  { plan: FORGE_ANNEAL, startMs: START, operator: 'good' },
  { plan: OVEN_TEMPER, startMs: START, operator: 'good' },
];

function run(seconds: number, seed = 1, behaviours: readonly BehaviourInput[] = [], bufferLimit = 3600) {
  const simulation = simulate({
    seed,
    startMs: START,
    seconds,
    furnacePlan: PLAN,
    behaviours: behaviours.map(behaviour),
    bufferLimit,
  });
  return { emissions: [...simulation], simulation };
}

const bytes = (emissions: readonly Emission[]) => emissions.map((each) => JSON.stringify(each)).join('\n');

describe('a simulation', () => {
  test('repeats itself to the byte with the same seed and not with another', () => {
    const one = bytes(run(300, 7).emissions);
    expect(bytes(run(300, 7).emissions)).toBe(one);
    expect(bytes(run(300, 8).emissions)).not.toBe(one);
  });

  test('publishes every channel of every node about once a second, online first', () => {
    const { emissions } = run(60);
    expect(emissions[0]).toEqual({
      atMs: START + 1000,
      topic: 'soakwatch/forge-node/status',
      payload: 'online',
      qos: 1,
      retain: true,
    });
    const channels = ['chamber', 'load', 'supply-pressure', 'cylinder-mass'];
    for (const channel of channels) expect(arrivals(emissions, 'forge-node', channel)).toHaveLength(60);
    expect(arrivals(emissions, 'forge-node', 'supply-pressure')[0]?.unit).toBe('Pa');
    expect(arrivals(emissions, 'oven-node', 'load').map((each) => each.atMs)).toEqual(
      Array.from({ length: 60 }, (_, second) => START + 1000 * (second + 1)),
    );
    expect(
      arrivals(emissions, 'air-node', 'co').every((each) => each.unit === 'ppm' && each.value >= 0),
    ).toBe(true);
  });

  test('answers temperatures in quarter degrees', () => {
    const { emissions } = run(600);
    const read = ['forge-node', 'oven-node'].flatMap((node) => arrivals(emissions, node, 'chamber'));
    expect(read.every((each) => Number.isInteger(each.value * 4))).toBe(true);
    expect(new Set(read.map((each) => each.value)).size).toBeGreaterThan(200);
  });

  test('draws from the cylinder exactly what flowed through the jet', () => {
    const { simulation } = run(2400);
    const flowed = simulation.truth.reduce((sum, truth) => sum + truth.gasKilogramsPerSecond, 0);
    const last = simulation.truth.at(-1)?.cylinderKilograms ?? Number.NaN;
    expect(flowed).toBeGreaterThan(0.3);
    expect(8.2 - last).toBeCloseTo(flowed, 9);
  });

  test('does not let one behaviour change the noise of another sensor', () => {
    const plain = run(120).emissions;
    const broken = run(120, 1, [{ name: 'thermocouple-break' }]).emissions;
    expect(arrivals(broken, 'oven-node', 'chamber')).toEqual(arrivals(plain, 'oven-node', 'chamber'));
    expect(arrivals(broken, 'forge-node', 'load')).toEqual(arrivals(plain, 'forge-node', 'load'));
  });

  test('takes the same way in steps of a second and of half a second, but for the noise', () => {
    const coarse = simulate({ seed: 1, startMs: START, seconds: 900, furnacePlan: PLAN });
    const fine = simulate({ seed: 1, startMs: START, seconds: 900, stepSeconds: 0.5, furnacePlan: PLAN });
    for (const each of [coarse, fine]) expect([...each].length).toBe(3 * 900 + 3);
    const [one, two] = [coarse, fine].map((each) => each.truth.at(-1)?.forge.chamberCelsius ?? Number.NaN);
    expect(Math.abs((one ?? 0) - (two ?? 0))).toBeLessThan(1);
  });

  test('refuses a publishing interval that is no whole number of steps', () => {
    const odd = {
      seed: 1,
      startMs: START,
      seconds: 10,
      stepSeconds: 2,
      publishEverySeconds: 3,
      furnacePlan: [],
    };
    expect(() => simulate(odd)).toThrowError(expect.objectContaining({ code: 'bad-option' }));
  });
});

describe('a node that drops off', () => {
  const drop: BehaviourInput = { name: 'node-drop', startSeconds: 60, durationSeconds: 120 };

  test('is silent, says offline and online again, and then sends everything in time order', () => {
    const { emissions, simulation } = run(300, 1, [drop]);
    const read = arrivals(emissions, 'forge-node', 'chamber');
    expect(read.map((each) => each.atMs)).toEqual(
      Array.from({ length: 300 }, (_, s) => START + 1000 * (s + 1)),
    );
    const arrived = read.filter(
      (each) => each.arrivedMs >= START + 60_000 && each.arrivedMs < START + 180_000,
    );
    expect(arrived).toHaveLength(0);
    const status = emissions.filter((each) => each.topic === 'soakwatch/forge-node/status');
    expect(status.map((each) => [each.payload, (each.atMs - START) / 1000])).toEqual([
      ['online', 1],
      ['offline', 60],
      ['online', 180],
    ]);
    expect(simulation.dropped.get('forge-node')).toBe(0);
  });

  test('gives up its oldest readings when its buffer is full, and says how many', () => {
    const { emissions, simulation } = run(300, 1, [drop], 50);
    expect(simulation.dropped.get('forge-node')).toBe(71);
    const read = arrivals(emissions, 'forge-node', 'chamber');
    expect(read).toHaveLength(300 - 71);
    const missing = read.findIndex((each, index) => each.atMs !== START + 1000 * (index + 1));
    expect(missing).toBe(59);
  });

  test('does not keep the other nodes waiting', () => {
    const { emissions } = run(300, 1, [drop]);
    const late = arrivals(emissions, 'oven-node', 'chamber').filter((each) => each.arrivedMs !== each.atMs);
    expect(late).toHaveLength(0);
  });
});
