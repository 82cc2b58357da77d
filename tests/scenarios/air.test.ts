import { describe, expect, it } from 'vitest';
import { runScenario, type Scenario, type ScenarioOptions } from './scenario.ts';

/**
 * The cross-checks of the air, each in the whole hub with the simulated shop, and each told apart from its
 * neighbours: what is expected is everything that is raised, not only what is looked for.
 */

const kindsOf = (scenario: Scenario): string[] => [...new Set(scenario.kinds)];
const air = (options: ScenarioOptions): Scenario => runScenario({ publishEverySeconds: 5, ...options });

describe('one trouble, and nothing else', () => {
  it('another source: carbon monoxide in a shop where every furnace is cold', () => {
    const behaviours = [{ name: 'other-co-source' as const, startSeconds: 600, gramsPerHour: 9 }];
    const scenario = air({ coldMinutes: 40, minutes: 42, behaviours });
    expect(kindsOf(scenario)).toEqual(['air-other-source']);
    const [told] = scenario.alarms;
    expect(told?.params).toMatchObject({ label: 'co' });
  });

  it('a flame that runs rich raises the limits, and no other source', () => {
    const behaviours = [{ name: 'co-buildup' as const, startSeconds: 600 }];
    const scenario = air({ minutes: 30, behaviours, fittings: ['second-co', 'air-climate'] });
    expect(kindsOf(scenario)).not.toContain('air-other-source');
    expect(kindsOf(scenario)).toContain('unsafe-air-second');
    expect(kindsOf(scenario).filter((kind) => kind.startsWith('air-'))).toEqual([]);
  });

  it('a dead cell beside one that sees the gas: flat, and not a disagreement', () => {
    const behaviours = [
      { name: 'flat-sensor' as const, startSeconds: 300, channel: 'co-corner', value: 2 },
      { name: 'co-buildup' as const, startSeconds: 600 },
    ];
    const scenario = air({ minutes: 30, behaviours, fittings: ['second-co'] });
    const sensors = scenario.alarms.filter(({ kind }) => kind.startsWith('air-'));
    expect(sensors.map(({ kind }) => kind)).toEqual(['air-sensor-flat']);
    expect(sensors[0]?.params).toMatchObject({ label: 'co-corner', why: 'others-move' });
  });

  it('an old cell beside a good one: they disagree, and neither is flat', () => {
    const behaviours = [
      { name: 'aged-sensor' as const, startSeconds: 0, channel: 'co-corner', lostShare: 0.8 },
      { name: 'co-buildup' as const, startSeconds: 600 },
    ];
    const scenario = air({ minutes: 40, behaviours, fittings: ['second-co'] });
    const sensors = scenario.alarms.filter(({ kind }) => kind.startsWith('air-'));
    expect(sensors.map(({ kind }) => kind)).toEqual(['air-sensors-disagree']);
    expect(sensors[0]?.params).toMatchObject({ label: 'co', otherLabel: 'co-corner' });
  });

  it('a cell at the end of its scale is told as that, before it can be taken for flat', () => {
    const behaviours = [
      { name: 'saturated-sensor' as const, startSeconds: 0, ceiling: 50 },
      { name: 'co-buildup' as const, startSeconds: 600 },
    ];
    const scenario = air({ minutes: 30, behaviours, fullScalePpm: 50 });
    expect(kindsOf(scenario)).toContain('unsafe-air-saturated');
    expect(kindsOf(scenario)).not.toContain('air-sensor-flat');
    expect(kindsOf(scenario)).not.toContain('unsafe-air-second');
  });

  it('a silent air node beside a hot furnace is blindness, and no trouble of a sensor', () => {
    const behaviours = [
      { name: 'node-drop' as const, node: 'air-node' as const, startSeconds: 900, durationSeconds: 600 },
    ];
    const scenario = air({ minutes: 26, behaviours });
    expect(kindsOf(scenario).every((kind) => kind.startsWith('not-watching'))).toBe(true);
    expect(kindsOf(scenario)).toContain('not-watching-air');
  });
});

describe('a good day', () => {
  it('with every sensor that a shop may have raises nothing at all', () => {
    const scenario = air({ minutes: 75, fittings: ['second-co', 'air-climate'] });
    expect(scenario.kinds).toEqual([]);
    expect(scenario.shop.faults).toEqual([]);
  });

  it('measures the ventilation when the forge has gone out, close to what the room has', () => {
    // The room of the simulation changes its air three times an hour here; the sensor lags, rounds and trembles.
    const behaviours = [{ name: 'co-buildup' as const, startSeconds: 600, airChangesPerHour: 3 }];
    const scenario = air({ minutes: 140, behaviours });
    const [measured] = scenario.shop.archive.airChanges(10);
    expect(measured?.fit.airChangesPerHour).toBeGreaterThan(2.8);
    expect(measured?.fit.airChangesPerHour).toBeLessThan(3.2);
    expect(measured?.fit.conditionsHeld).not.toBe(false);
  });
});
