import { describe, expect, it } from 'vitest';
import { groupAlarms } from '../../hub/contract/alarm-groups.ts';
import { worded } from '../../hub/watch/alarm-words.ts';
import { gasFitted } from './gas-fitting.ts';
import { runScenario, type Scenario } from './scenario.ts';

/** The gas through the whole hub. What tells each trouble from its neighbours is in tests/gas/told-apart.test.ts. */

const MINUTE = 60;

function expectLaw(scenario: Scenario): void {
  expect(scenario.replayed()).toEqual(scenario.firing.judgement);
  expect(scenario.shop.faults).toEqual([]);
}

describe('the gas of the simulated shop through the whole hub', () => {
  it('a good anneal with gauge, scale and cylinder measured raises no alarm, and its gas is told as it was', () => {
    const scenario = runScenario({ minutes: 46, publishEverySeconds: 5, ...gasFitted('whole', '18:00') });
    expect(scenario.kinds).toEqual([]);
    const { watch, clock } = scenario.shop;
    const used = watch.gas(clock.now()).use.used(scenario.firing, clock.now());
    const [first, last] = [scenario.simulation.truth[0], scenario.simulation.truth.at(-1)];
    const burned = (first?.cylinderKilograms ?? 0) - (last?.cylinderKilograms ?? 0);
    expect(used?.kilograms.low).toBeLessThan(burned);
    expect(used?.kilograms.high).toBeGreaterThan(burned);
    expectLaw(scenario);
  });

  it('an empty cylinder leads, and the stalled soak follows from it', () => {
    const behaviours = [{ name: 'empty-cylinder' as const, startSeconds: 30 * MINUTE }];
    const scenario = runScenario({ minutes: 52, publishEverySeconds: 5, behaviours, ...gasFitted('scale') });
    expect(scenario.kinds).toContain('gas-empty');
    expect(scenario.kinds).toContain('soak-stalled');
    const groups = groupAlarms(scenario.shop.archive.alarms({ limit: 50 }).map((row) => worded(row, 'Cel')));
    const led = groups.find(({ lead }) => lead.kind === 'gas-empty');
    expect(led?.followers.map(({ kind }) => kind)).toContain('soak-stalled');
    expect(scenario.kinds.filter((kind) => kind.startsWith('gas-') && kind !== 'gas-will-not-last')).toEqual([
      'gas-empty',
    ]);
  });

  it('a flame that goes out is a danger that says to close the gas first, and stands through a restart', () => {
    const behaviours = [{ name: 'flame-out' as const, startSeconds: 32 * MINUTE, noticedAfterSeconds: 1200 }];
    const scenario = runScenario({
      minutes: 40,
      publishEverySeconds: 5,
      behaviours,
      ...gasFitted('pressure'),
    });
    const told = scenario.shop.changes.find(
      (change) => change.type === 'alarm' && change.alarm.kind === 'gas-flame-out',
    );
    expect(told?.type === 'alarm' && told.alarm.priority).toBe('danger');
    expect(told?.type === 'alarm' && told.alarm.guidance[0]).toContain('Close the gas');
    const again = scenario.shop.restart();
    again.tick();
    expect(again.alarms.open().some(({ kind, active }) => kind === 'gas-flame-out' && active)).toBe(true);
    expect(scenario.kinds.filter((kind) => kind === 'gas-flame-out')).toHaveLength(1);
  });
});
