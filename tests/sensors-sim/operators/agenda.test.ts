import { describe, expect, test } from 'vitest';
import { EndlessAgenda, ListedAgenda } from '../../../sensors-sim/operators/agenda.ts';
import {
  FiringDesk,
  type FurnaceEvent,
  type PlannedFiring,
} from '../../../sensors-sim/operators/firing-desk.ts';
import { FORGE_ANNEAL, FORGE_NORMALISE, OVEN_TEMPER } from '../../../sensors-sim/plans.ts';
import { seededRandom } from '../../../sensors-sim/random.ts';

const planned = (plan: PlannedFiring['plan'], startMs: number): PlannedFiring => ({
  plan,
  startMs,
  operator: 'good',
});

describe('a listed agenda', () => {
  test('hands out each firing once, when it is due, to its own furnace', () => {
    const agenda = new ListedAgenda([planned(FORGE_NORMALISE, 5000), planned(OVEN_TEMPER, 1000)]);
    expect(agenda.take('forge', 4999)).toBeNull();
    expect(agenda.take('oven', 4999)?.plan.name).toBe('oven-temper');
    expect(agenda.take('forge', 5000)?.plan.name).toBe('forge-normalise');
    expect(agenda.take('forge', 9000)).toBeNull();
  });
});

describe('an endless agenda', () => {
  const agenda = () => new EndlessAgenda([planned(FORGE_ANNEAL, 1000)], seededRandom(3, 'agenda'));

  test('runs the list first and then goes on inventing after a pause', () => {
    const busy = agenda();
    expect(busy.take('forge', 0, 0)).toBeNull();
    expect(busy.take('forge', 1000, 0)?.plan).toBe(FORGE_ANNEAL);
    expect(busy.take('forge', 10_000, 10_000)).toBeNull();
    const invented = busy.take('forge', 10_000 + 1_500_000, 10_000);
    expect(invented?.plan.furnace).toBe('forge');
    expect((invented?.startMs ?? 0) - 10_000).toBeGreaterThanOrEqual(600_000);
  });

  test('invents the same for the same seed', () => {
    const one = agenda().take('oven', 1e9, 0);
    expect(agenda().take('oven', 1e9, 0)).toEqual(one);
    expect(one?.plan.furnace).toBe('oven');
  });
});

describe('the desk of a furnace', () => {
  test('waits until the furnace is cold enough for the plan, then notes what begins and ends', () => {
    const notes: FurnaceEvent[] = [];
    const agenda = new ListedAgenda([planned(OVEN_TEMPER, 0)]);
    const desk = new FiringDesk('oven', agenda, 0, (event) => notes.push(event));
    const hot = { chamberCelsius: 400, loadCelsius: 20 };
    expect(desk.step(1000, hot, 1)).toBe('nothing');
    expect(desk.firing).toBeNull();
    expect(desk.step(2000, { chamberCelsius: 150, loadCelsius: 20 }, 1)).toBe('started');
    expect(desk.step(3000, { chamberCelsius: 200, loadCelsius: 200 }, 1)).toBe('segment');
    expect(notes.map((note) => [note.atMs, note.what, note.segmentIndex])).toEqual([
      [2000, 'started', 0],
      [3000, 'segment', 1],
    ]);
  });
});
