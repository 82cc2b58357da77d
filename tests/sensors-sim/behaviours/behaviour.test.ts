import { describe, expect, test } from 'vitest';
import { BEHAVIOUR_NAMES, behaviour, isActive } from '../../../sensors-sim/behaviours/behaviour.ts';
import { conditionsAt } from '../../../sensors-sim/behaviours/conditions.ts';
import { cylinderChange } from '../../../sensors-sim/behaviours/gas-conditions.ts';
import { parseBehaviour } from '../../../sensors-sim/behaviours/parse-behaviour.ts';
import { SimError } from '../../../sensors-sim/errors.ts';

function refusal(text: string): SimError {
  try {
    parseBehaviour(text);
  } catch (error) {
    if (error instanceof SimError) return error;
  }
  throw new Error(`'${text}' was not refused`);
}

describe('a behaviour on the command line', () => {
  test('has a name, parameters and a starting minute', () => {
    expect(parseBehaviour('co-buildup:equivalenceRatio=1.3,escapeShare=0.05@10.5')).toEqual({
      name: 'co-buildup',
      startSeconds: 630,
      durationSeconds: null,
      equivalenceRatio: 1.3,
      escapeShare: 0.05,
      airChangesPerHour: 0.3,
    });
  });

  test.each(BEHAVIOUR_NAMES.map((name) => [name]))('%s needs nothing but its name', (name) => {
    expect(parseBehaviour(name)).toMatchObject({ name, startSeconds: 0 });
  });

  test.each([
    ['explode@3', /explode/],
    ['overshoot:excess=3', /overshoot.*excess/],
    ['overshoot:excessCelsius=hot', /excessCelsius/],
    ['overshoot:excessCelsius=-3', /excessCelsius/],
    ['overshoot@soon', /form name/],
    ['overshoot:excessCelsius', /parameter=value/],
    ['frozen-sensor:node=air-node,channel=chamber', /no channel 'chamber'; it has co/],
    ['thermocouple-break:channel=cylinder-mass', /not a thermocouple/],
    ['clock-skew:node=hub', /node/],
  ])('%s is refused and says why', (text, reason) => {
    const error = refusal(text);
    expect(error.code).toBe('bad-behaviour');
    expect(error.message).toMatch(reason);
  });
});

describe('a behaviour in time', () => {
  test('is on from its start until its duration is over', () => {
    const drop = behaviour({ name: 'node-drop', startSeconds: 60, durationSeconds: 30 });
    expect([59, 60, 89, 90].map((second) => isActive(drop, second))).toEqual([false, true, true, false]);
  });

  test('does not touch the past before the simulation', () => {
    expect(isActive(behaviour({ name: 'overshoot' }), -1)).toBe(false);
  });

  test('of several watches over one furnace the one that began last counts', () => {
    const list = [
      behaviour({ name: 'overshoot', startSeconds: 10, excessCelsius: 30 }),
      behaviour({ name: 'good-firing', startSeconds: 100 }),
    ];
    expect(conditionsAt(list, 5).attention).toEqual({ forge: 'as-planned', oven: 'as-planned' });
    expect(conditionsAt(list, 50).attention.forge).toEqual({ excessCelsius: 30 });
    expect(conditionsAt(list, 100).attention).toEqual({ forge: 'good', oven: 'as-planned' });
  });

  test('a cylinder is changed once', () => {
    const list = [behaviour({ name: 'weak-cylinder', startSeconds: 10 })];
    expect(cylinderChange(list, 9, 10)).toBeNull();
    expect(cylinderChange(list, 10, 11)).toMatchObject({ massKilograms: 0.4, liquidCelsius: -38 });
    expect(cylinderChange(list, 11, 12)).toBeNull();
  });
});
