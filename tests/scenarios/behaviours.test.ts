import { describe, expect, it } from 'vitest';
import { OVEN_HARDEN } from '../../sensors-sim/plans.ts';
import { runScenario, type Scenario } from './scenario.ts';

/** Alarms by kind, each once, in order of first appearance. */
const kindsOf = (scenario: Scenario): string[] => [...new Set(scenario.kinds)];

function expectLaw(scenario: Scenario): void {
  const kept = scenario.firing.judgement;
  expect(scenario.replayed()).toEqual(kept);
  expect(scenario.shop.faults).toEqual([]);
}

describe('the simulated shop through the whole hub', () => {
  it.each([1, 2, 3, 4])('a good anneal in the forge raises no alarm at all (seed %i)', (seed) => {
    const scenario = runScenario({ seed, minutes: 75 });
    expect(scenario.kinds).toEqual([]);
    expect(scenario.firing.judgement.verdict).toBe('met');
    expectLaw(scenario);
  });

  it.each([1, 2])('a good hardening in the oven raises no alarm at all (seed %i)', (seed) => {
    const scenario = runScenario({ seed, plan: OVEN_HARDEN, minutes: 150 });
    expect(scenario.kinds).toEqual([]);
    expect(scenario.firing.judgement.verdict).toBe('met');
    expectLaw(scenario);
  });

  it.each([1, 2, 3])(
    'a late operator is warned before the limit is crossed, then told of it (seed %i)',
    (seed) => {
      const scenario = runScenario({ seed, operator: 'late', minutes: 75 });
      expect(kindsOf(scenario)).toEqual(['overshoot-ahead', 'overshoot']);
      const [ahead, over] = scenario.alarms;
      expect((over?.raisedAt ?? 0) - (ahead?.raisedAt ?? 0)).toBeGreaterThan(5_000);
      expect(scenario.firing.judgement.verdict).toBe('not-met');
      expectLaw(scenario);
    },
  );

  it('falling gas stalls the soak, and nothing else is raised', () => {
    const behaviours = [{ name: 'falling-gas' as const, startSeconds: 32 * 60 }];
    const scenario = runScenario({ minutes: 70, behaviours });
    expect(kindsOf(scenario)).toEqual(['soak-stalled']);
    expectLaw(scenario);
  });

  it('carbon monoxide behind a closed door raises the first limit, then the second, and nothing else', () => {
    const behaviours = [{ name: 'co-buildup' as const, startSeconds: 10 * 60 }];
    const scenario = runScenario({ minutes: 70, behaviours });
    expect(kindsOf(scenario)).toEqual(['unsafe-air-first', 'unsafe-air-second']);
    expectLaw(scenario);
  });

  it.each(['high', 'nan'] as const)(
    'a broken thermocouple (%s) blinds the firing, and is never judged as heat',
    (mode) => {
      const behaviours = [{ name: 'thermocouple-break' as const, startSeconds: 30 * 60, mode }];
      const scenario = runScenario({ minutes: 60, behaviours });
      expect(kindsOf(scenario)).toEqual(['not-watching-channel']);
      // At full scale the input itself says what is wrong; a payload that cannot be read says nothing.
      expect(scenario.alarms[0]?.params.fault).toBe(mode === 'high' ? 'open' : undefined);
      expect(Math.max(...scenario.firing.judgement.segments.map((s) => s.peakCelsius ?? 0))).toBeLessThan(
        900,
      );
      expectLaw(scenario);
    },
  );

  it('a node that drops off is told by name; when it backfills, the firing is judged as if it had been there', () => {
    const drop = [
      {
        name: 'node-drop' as const,
        node: 'forge-node' as const,
        startSeconds: 20 * 60,
        durationSeconds: 300,
      },
    ];
    const dropped = runScenario({ seed: 5, minutes: 75, behaviours: drop });
    const whole = runScenario({ seed: 5, minutes: 75 });
    expect(kindsOf(dropped)).toEqual(['not-watching-node']);
    expect(dropped.firing.judgement.segments).toEqual(whole.firing.judgement.segments);
    expectLaw(dropped);
  });

  it('duplicates and disorder change nothing', () => {
    const mess = [{ name: 'duplicate-reorder' as const, node: 'forge-node' as const }];
    const messy = runScenario({ seed: 6, minutes: 75, behaviours: mess });
    const clean = runScenario({ seed: 6, minutes: 75 });
    expect(messy.kinds).toEqual([]);
    expect(messy.firing.judgement.segments).toEqual(clean.firing.judgement.segments);
    expectLaw(messy);
  });

  it('a node whose clock runs ahead is not believed: its readings are kept, marked, and the firing is blind', () => {
    const behaviours = [
      { name: 'clock-skew' as const, node: 'forge-node' as const, startSeconds: 20 * 60, offsetSeconds: 90 },
    ];
    const scenario = runScenario({ minutes: 40, behaviours });
    expect(kindsOf(scenario)).toEqual(['not-watching-channel']);
    const refused = scenario.shop.archive.node('forge-node')?.refused ?? {};
    expect(refused['future-timestamp']).toBeGreaterThan(0);
    expectLaw(scenario);
  });

  it('a frozen sensor in the heat-up shows as a ramp that stalls, while nothing else measures that furnace', () => {
    const behaviours = [{ name: 'frozen-sensor' as const, startSeconds: 15 * 60 }];
    const scenario = runScenario({ minutes: 45, behaviours });
    expect(kindsOf(scenario)).toEqual(['ramp-stalled']);
    expectLaw(scenario);
  });

  // With a second probe that goes on rising, "the ramp stalls" would send the smith to the gas for nothing.
  it('beside a second probe the same frozen sensor is a probe that is stuck, and no stall at all', () => {
    const behaviours = [{ name: 'frozen-sensor' as const, startSeconds: 15 * 60 }];
    const scenario = runScenario({ minutes: 45, behaviours, loads: true });
    expect(kindsOf(scenario)).toEqual(['probe-fault']);
    expect(scenario.alarms[0]?.params.fault).toBe('stuck');
    expectLaw(scenario);
  });

  it('two troubles at once are both told', () => {
    const behaviours = [
      { name: 'co-buildup' as const, startSeconds: 10 * 60 },
      { name: 'thermocouple-break' as const, startSeconds: 40 * 60 },
    ];
    const scenario = runScenario({ minutes: 60, behaviours });
    expect(kindsOf(scenario).sort((a, b) => a.localeCompare(b))).toEqual([
      'not-watching-channel',
      'unsafe-air-first',
      'unsafe-air-second',
    ]);
  });
});
