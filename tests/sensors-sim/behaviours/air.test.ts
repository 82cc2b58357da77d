/** What fouls the air and what carries it off, and what the sensors make of it. */
import { describe, expect, test } from 'vitest';
import { decayReport } from '../../../hub/physics/ventilation/decay-report.ts';
import { VENTILATION } from '../../../sensors-sim/behaviours/air-behaviours.ts';
import type { BehaviourInput } from '../../../sensors-sim/behaviours/behaviour.ts';
import { FORGE_ANNEAL } from '../../../sensors-sim/plans.ts';
import { fire } from '../fire.ts';

const mean = (values: readonly number[]) => values.reduce((sum, each) => sum + each, 0) / values.length;

describe('a rich flame', () => {
  test('makes more carbon monoxide the richer it runs, with everything else as it was', () => {
    const most = ([1.03, 1.15, 1.3] as const).map((equivalenceRatio) => {
      const { truth } = fire({
        plan: FORGE_ANNEAL,
        minutes: 30,
        every: 30,
        behaviours: [{ name: 'rich-flame', equivalenceRatio }],
      });
      return Math.max(...truth.map((each) => each.coPpm));
    });
    expect(most).toEqual([...most].sort((one, two) => one - two));
    expect(most[0]).toBeLessThan(5);
    expect(most[2]).toBeGreaterThan(10);
  });
});

describe('ventilation', () => {
  /** Carbon monoxide of another source that stops: nothing burns, so only the draught carries it off. */
  const clearing = (state: keyof typeof VENTILATION) =>
    fire({
      plan: null,
      minutes: 55,
      every: 10,
      behaviours: [
        { name: 'other-co-source', durationSeconds: 900, gramsPerHour: 250 },
        { name: 'ventilation', state },
      ],
    });

  test.each(['ajar', 'open', 'fan'] as const)('%s is measured in the fall of the sensor', (state) => {
    const samples = clearing(state)
      .readings('air-node', 'co')
      .filter(({ seconds, value }) => seconds > 1020 && value > 8)
      .map(({ seconds, value }) => ({ atMs: seconds * 1000, ppm: value }));
    const report = decayReport({ backgroundPpm: 0.5, samples });
    expect(report.airChangesPerHour).toBeGreaterThan(0.85 * VENTILATION[state]);
    expect(report.airChangesPerHour).toBeLessThan(1.15 * VENTILATION[state]);
  });

  test('shut clears next to nothing in half an hour', () => {
    const { at } = clearing('shut');
    expect(at(50).coPpm).toBeGreaterThan(0.75 * at(17).coPpm);
  });

  test('takes a number of its own where one is given', () => {
    const behaviours: BehaviourInput[] = [{ name: 'ventilation', state: 'shut', airChangesPerHour: 3 }];
    expect(fire({ plan: null, minutes: 2, behaviours }).at(1).airChangesPerHour).toBe(3);
  });
});

describe('another source', () => {
  test('raises carbon monoxide past the limits with every furnace cold', () => {
    const { truth, readings } = fire({
      plan: null,
      minutes: 40,
      behaviours: [{ name: 'other-co-source', startSeconds: 600 }],
    });
    expect(Math.max(...truth.map((each) => each.forge.chamberCelsius))).toBeLessThan(25);
    const read = readings('air-node', 'co');
    expect(Math.max(...read.filter(({ seconds }) => seconds < 600).map(({ value }) => value))).toBeLessThan(
      5,
    );
    expect(read.at(-1)?.value).toBeGreaterThan(60);
  });
});

describe('carbon dioxide, oxygen and water', () => {
  test('follow what burns: three of dioxide for five of oxygen', () => {
    const { at, truth } = fire({
      plan: FORGE_ANNEAL,
      minutes: 30,
      behaviours: [{ name: 'ventilation', airChangesPerHour: 0 }],
    });
    // C3H8 + 5 O2 -> 3 CO2 + 4 H2O; somebody breathes as well, and that is 0.01 m³ in half an hour.
    const [start, end] = [truth[0], at(29)];
    const breathed = (0.02 / 60) * 1e6 * ((end.atMs - (start?.atMs ?? 0)) / 3.6e6);
    const dioxide = end.carbonDioxidePpm - (start?.carbonDioxidePpm ?? 0) - breathed;
    const oxygen = (start?.oxygenPpm ?? 0) - end.oxygenPpm;
    expect(oxygen / dioxide).toBeCloseTo(5 / 3, 1);
    expect(end.roomCelsius).toBeGreaterThan(start?.roomCelsius ?? 100);
  });

  test('are read by sensors of their own, in the units of the channels', () => {
    const { readings } = fire({ plan: null, minutes: 10 });
    const last = (channel: string) =>
      mean(
        readings('air-node', channel)
          .slice(-30)
          .map(({ value }) => value),
      );
    expect(last('co2')).toBeGreaterThan(400);
    expect(last('co2')).toBeLessThan(500);
    expect(last('o2')).toBeCloseTo(0.2095, 3);
    expect(last('humidity')).toBeGreaterThan(20);
    expect(last('humidity')).toBeLessThan(80);
    expect(last('room')).toBeCloseTo(17, -1);
  });
});

describe('a second sensor in the corner', () => {
  test('follows the first one late, and agrees with it in the end', () => {
    const behaviours: BehaviourInput[] = [{ name: 'other-co-source', startSeconds: 60, gramsPerHour: 120 }];
    const { readings } = fire({ plan: null, minutes: 60, behaviours });
    const [near, far] = [readings('air-node', 'co'), readings('air-node', 'co-corner')];
    const gap = (from: number, to: number) =>
      mean(
        near.flatMap(({ seconds, value }, i) =>
          seconds >= from && seconds < to ? [value - (far[i]?.value ?? 0)] : [],
        ),
      );
    expect(gap(240, 480)).toBeGreaterThan(8);
    expect(Math.abs(gap(3200, 3600))).toBeLessThan(1.5);
  });
});
