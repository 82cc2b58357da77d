import { describe, expect, it } from 'vitest';
import { OVEN_HARDEN, OVEN_TEMPER, PLANS } from '../../sensors-sim/plans.ts';
import { jumping, reversed, runningAway, shorted, tampering } from './probe-tampering.ts';
import { runScenario, type Scenario, type ScenarioOptions } from './scenario.ts';

/** Every alarm that was told, with the fault it named, each once, in order of first appearance. */
function toldOf(scenario: Scenario): string[] {
  const told = scenario.shop.changes.flatMap((change) => {
    if (change.type !== 'alarm') return [];
    const { kind, params } = change.alarm;
    return [typeof params.fault === 'string' ? `${kind}: ${params.fault}` : kind];
  });
  return [...new Set(told)];
}

/** The same, of what names a fault. */
const faultsOf = (scenario: Scenario): string[] => toldOf(scenario).filter((told) => told.includes(': '));

const MINUTE = 60;
const frozen: ScenarioOptions = {
  minutes: 30,
  behaviours: [{ name: 'frozen-sensor', startSeconds: 15 * MINUTE }],
};
const broken: ScenarioOptions = {
  minutes: 35,
  behaviours: [{ name: 'thermocouple-break', startSeconds: 30 * MINUTE, mode: 'high' }],
};

describe('each fault of a probe is told from the others', () => {
  it.each<readonly [string, ScenarioOptions]>([
    ['not-watching-channel: open', broken],
    ['not-watching-channel: reversed', { minutes: 10, tamper: tampering(reversed) }],
    ['probe-fault: shorted', { minutes: 20, tamper: tampering(shorted) }],
    ['probe-fault: stuck', frozen],
    ['probe-fault: step', { minutes: 35, tamper: tampering(jumping(30 * MINUTE, 300)) }],
    ['probe-fault: step', { minutes: 35, tamper: tampering(jumping(30 * MINUTE, -300)) }],
    ['probe-fault: rate', { minutes: 35, tamper: tampering(runningAway(30 * MINUTE, 1300)) }],
  ])('%s', (told, options) => {
    const scenario = runScenario({ ...options, loads: true });
    expect(faultsOf(scenario)).toEqual([told]);
    expect(scenario.shop.faults).toEqual([]);
  });

  it('in a slow oven a reversed pair is told before its readings run off the scale', () => {
    const tamper = tampering(reversed, 'oven-node');
    const scenario = runScenario({ plan: OVEN_HARDEN, minutes: 20, loads: true, tamper });
    expect(faultsOf(scenario)).toEqual(['probe-fault: reversed', 'not-watching-channel: reversed']);
  });
});

describe('one trouble, one alarm', () => {
  it('a shorted probe is not a stalled ramp as well', () => {
    const scenario = runScenario({ minutes: 40, loads: true, tamper: tampering(shorted) });
    expect(toldOf(scenario)).toEqual(['probe-fault: shorted']);
    const [alarm] = scenario.alarms;
    expect(alarm).toMatchObject({ priority: 'warning', firingId: scenario.firing.id, active: true });
    expect(Number(alarm?.params.othersMovedCelsius)).toBeGreaterThan(200);
  });

  it('a broken wire is blindness, and the alarm names the cause', () => {
    const scenario = runScenario({ ...broken, loads: true });
    expect(scenario.kinds).toEqual(['not-watching-channel']);
    const told = scenario.shop.changes.findLast((change) => change.type === 'alarm');
    expect(told?.type === 'alarm' && told.alarm.message).toContain('the input reads open');
  });

  it('stands through a restart of the hub: it is found again in the archive', () => {
    const scenario = runScenario({ ...frozen, loads: true });
    const again = scenario.shop.restart();
    again.tick();
    expect(again.alarms.open()).toMatchObject([{ kind: 'probe-fault', active: true }]);
    expect(scenario.kinds).toEqual(['probe-fault']);
  });
});

describe('nothing is said of probes that are in order', () => {
  it.each(PLANS.map((plan) => [plan.title, plan] as const))(
    '%s, a probe on the piece too',
    (_title, plan) => {
      const minutes = plan === OVEN_TEMPER ? 160 : 110;
      expect(runScenario({ seed: 3, plan, minutes, loads: true }).kinds).toEqual([]);
    },
  );

  it('nor of a lone probe with nothing beside it to tell by', () => {
    expect(faultsOf(runScenario({ minutes: 20, tamper: tampering(shorted) }))).toEqual([]);
  });
});
