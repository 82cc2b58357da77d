import { describe, expect, test } from 'vitest';
import { historyPlan, plannedHistory } from '../../sensors-sim/history.ts';
import { ListedAgenda } from '../../sensors-sim/operators/agenda.ts';
import { FORGE_NORMALISE } from '../../sensors-sim/plans.ts';
import { Shop } from '../../sensors-sim/shop.ts';

const NOW = 1_700_000_000_000;
const HOUR = 3_600_000;

describe('the past of the shop', () => {
  test('holds complete firings of each kind, one of them with an overshoot, none overlapping its like', () => {
    const { past, startMs } = historyPlan(7, NOW);
    expect(startMs).toBe(NOW - 10 * HOUR);
    expect(past.map((each) => `${each.plan} ${each.course}`)).toEqual([
      'oven-harden good',
      'forge-anneal overshoot',
      'oven-temper good',
      'forge-normalise good',
    ]);
    for (const furnace of ['forge', 'oven']) {
      const mine = past.filter((each) => each.furnace === furnace);
      mine.slice(1).forEach((each, index) => {
        expect(each.startMs).toBeGreaterThan(mine[index]?.endMs ?? Number.NaN);
      });
    }
    expect(past.every((each) => each.endMs > each.startMs + 20 * 60_000 && each.endMs < NOW)).toBe(true);
  });

  test('leads into a forge that reaches its soak within minutes and an oven that is in its soak', () => {
    for (const seed of [1, 7, 23]) {
      const { startMs, firings } = plannedHistory(seed, NOW);
      const shop = new Shop({ seed, startMs, agenda: new ListedAgenda(firings) });
      while (shop.nowMs < NOW) shop.step(1);
      expect([shop.truth().forge.segment, shop.truth().oven.segment]).toEqual([0, 1]);
      while (shop.truth().forge.segment === 0) shop.step(1);
      expect(shop.nowMs - NOW).toBeGreaterThan(60_000);
      expect(shop.nowMs - NOW).toBeLessThan(6 * 60_000);
    }
  });

  test('is the same for the same seed and instant, and moves with the instant', () => {
    const one = historyPlan(3, NOW);
    expect(historyPlan(3, NOW)).toEqual(one);
    const later = historyPlan(3, NOW + HOUR);
    expect(later.past.map((each) => each.endMs - HOUR)).toEqual(one.past.map((each) => each.endMs));
  });

  test('tells the firings under way apart from those that are over', () => {
    const { live } = historyPlan(7, NOW, { hours: 4, forgePlan: FORGE_NORMALISE, ovenPlan: null });
    expect(live).toEqual([
      {
        furnace: 'forge',
        plan: 'forge-normalise',
        kind: 'normalise',
        course: 'good',
        startMs: expect.closeTo(NOW - 23 * 60_000, -4),
      },
    ]);
  });

  test('of no length has nothing in it but what begins now', () => {
    const { past, live, startMs } = historyPlan(7, NOW, { hours: 0 });
    expect(startMs).toBe(NOW);
    expect(past).toEqual([]);
    expect(live.map((each) => each.startMs)).toEqual([NOW, NOW]);
  });

  test('of a negative length, or that ends between two seconds, is refused', () => {
    const refused = expect.objectContaining({ code: 'bad-option' });
    expect(() => historyPlan(7, NOW, { hours: -1 })).toThrowError(refused);
    expect(() => historyPlan(7, NOW + 0.5)).toThrowError(refused);
  });
});
