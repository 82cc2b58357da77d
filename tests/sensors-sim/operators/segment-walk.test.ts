import { describe, expect, test } from 'vitest';
import { SegmentWalk } from '../../../sensors-sim/operators/segment-walk.ts';
import { FORGE_ANNEAL } from '../../../sensors-sim/plans.ts';

const at = (chamberCelsius: number, loadCelsius = chamberCelsius) => ({ chamberCelsius, loadCelsius });

describe("the smith's own watch", () => {
  test('calls the ramp done only when the colder of chamber and steel is inside the band', () => {
    const walk = new SegmentWalk(FORGE_ANNEAL.segments);
    expect(walk.step(at(860, 700), 1)).toBe(false);
    expect(walk.step(at(845, 845), 1)).toBe(false);
    expect(walk.step(at(847, 846), 1)).toBe(true);
    expect(walk.segment?.kind).toBe('soak');
  });

  test('counts only the time inside the band towards the soak, and a little more than the plan asks', () => {
    const walk = new SegmentWalk(FORGE_ANNEAL.segments);
    walk.step(at(860), 1);
    for (let second = 0; second < 900; second += 1) walk.step(at(860), 1);
    for (let second = 0; second < 600; second += 1) expect(walk.step(at(860, 840), 1)).toBe(false);
    for (let second = 0; second < 44; second += 1) expect(walk.step(at(860), 1)).toBe(false);
    expect(walk.step(at(860), 1)).toBe(true);
    expect(walk.segment?.kind).toBe('cool');
  });

  test('is over when the steel is cold, and stays over', () => {
    const walk = new SegmentWalk(
      [FORGE_ANNEAL.segments[2] ?? FORGE_ANNEAL.segments[0]].flatMap((s) => s ?? []),
    );
    expect(walk.step(at(20, 551), 1)).toBe(false);
    expect(walk.step(at(20, 550), 1)).toBe(true);
    expect(walk.segment).toBeNull();
    expect(walk.step(at(20, 20), 1)).toBe(false);
  });
});
