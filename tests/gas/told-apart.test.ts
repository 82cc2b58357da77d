import { describe, expect, it } from 'vitest';
import type { BehaviourInput } from '../../sensors-sim/behaviours/behaviour.ts';
import { type GasRun, type Measured, runGas } from './sim-kit.ts';

/**
 * Every trouble that the simulated shop can have with its gas, each told and told apart from its neighbours: by gauge,
 * scale and cylinder together, by gauge and scale, and by the gauge alone, where less can be told and less is said.
 */

const MINUTE = 60;
const at = (minute: number, behaviour: BehaviourInput): readonly BehaviourInput[] => [
  { ...behaviour, startSeconds: minute * MINUTE },
];

/** Kinds in the order in which they are first told. */
function toldOf(measured: Measured, run: Omit<GasRun, 'measured'>): readonly string[] {
  return runGas({ measured, ...run }).kinds;
}

describe('a good firing', () => {
  it.each([1, 3])('raises nothing, however much is measured (seed %i)', (seed) => {
    for (const measured of ['whole', 'scale', 'pressure'] as const) {
      expect(toldOf(measured, { minutes: 75, seed })).toEqual([]);
    }
  });

  it('raises nothing after closing time when the cylinder was shut', () => {
    expect(toldOf('scale', { minutes: 90, closesAtMinute: 60 })).toEqual([]);
  });
});

describe('with gauge, scale and cylinder measured', () => {
  it.each<readonly [string, Omit<GasRun, 'measured'>, readonly string[]]>([
    [
      'the last of a warm cylinder',
      { minutes: 60, behaviours: at(30, { name: 'empty-cylinder' }) },
      ['gas-will-not-last', 'gas-empty'],
    ],
    [
      'a cylinder in the frost',
      { minutes: 40, behaviours: at(20, { name: 'cold-cylinder' }) },
      ['gas-chill'],
    ],
    [
      'a valve that is shut',
      { minutes: 45, behaviours: at(32, { name: 'shut-valve' }) },
      ['gas-lost', 'gas-valve-shut'],
    ],
    [
      'a second burner on a tired regulator',
      { minutes: 60, behaviours: at(20, { name: 'regulator-droop' }) },
      ['gas-droop'],
    ],
    ['a leaking seat', { minutes: 90, behaviours: at(10, { name: 'regulator-creep' }) }, ['gas-creep']],
    ['a kinked hose', { minutes: 60, behaviours: at(20, { name: 'hose-restriction' }) }, ['gas-restricted']],
    ['dirt in the jet', { minutes: 60, behaviours: at(32, { name: 'blocked-jet' }) }, ['gas-restricted']],
    ['a flame that goes out', { minutes: 60, behaviours: at(32, { name: 'flame-out' }) }, ['gas-flame-out']],
    [
      'gas left on behind a shut burner',
      { minutes: 90, behaviours: at(10, { name: 'gas-left-on' }), closesAtMinute: 70 },
      ['gas-left-on'],
    ],
    ['a hose that leaks', { minutes: 60, behaviours: at(20, { name: 'gas-escape' }) }, ['gas-escaping']],
    ['a change of cylinders', { minutes: 70, behaviours: at(32, { name: 'cylinder-change' }) }, []],
    [
      'too little from the start',
      { minutes: 40, cylinder: { massKilograms: 0.5, liquidCelsius: 17 } },
      ['gas-will-not-last', 'gas-empty'],
    ],
  ])('%s', (_name, run, told) => {
    expect(toldOf('whole', run)).toEqual(told);
  });

  it('gas that flows unlit after the heat is a flame-out, and then gas that is lost', () => {
    const run = { minutes: 70, behaviours: at(10, { name: 'gas-left-on', burner: 'unlit' }) };
    const { kinds, standing } = runGas(run);
    expect(kinds).toEqual(['gas-flame-out', 'gas-escaping']);
    expect(standing).toEqual(kinds);
  });

  it('ice in the regulator shuts the way little by little: restricted, then under the band', () => {
    const { told } = runGas({ minutes: 60, behaviours: at(32, { name: 'falling-gas' }) });
    expect(told.map(({ kind }) => kind)).toEqual(['gas-restricted', 'gas-off-band']);
  });
});

describe('with less measured less is said, and nothing wrong', () => {
  it('a gauge alone cannot tell an empty cylinder from a shut valve, and does not pretend to', () => {
    const empty = runGas({
      measured: 'pressure',
      minutes: 60,
      behaviours: at(30, { name: 'empty-cylinder' }),
    });
    const shut = runGas({ measured: 'pressure', minutes: 45, behaviours: at(32, { name: 'shut-valve' }) });
    expect(empty.kinds).toEqual(['gas-lost']);
    expect(shut.kinds).toEqual(['gas-lost']);
  });

  it('a gauge alone still sees a flame-out within a minute and a half', () => {
    const { told } = runGas({ measured: 'pressure', minutes: 45, behaviours: at(32, { name: 'flame-out' }) });
    expect(told.map(({ kind }) => kind)).toEqual(['gas-flame-out']);
    expect(told[0]?.minute).toBeLessThan(33.5);
  });

  it('a hose under pressure behind a shut burner looks like a flame-out to a gauge alone, and is told as one', () => {
    const behaviours = at(10, { name: 'gas-left-on' });
    expect(toldOf('pressure', { minutes: 60, behaviours })).toEqual(['gas-flame-out']);
    expect(toldOf('scale', { minutes: 60, behaviours })).toEqual([]);
  });

  it('a kinked hose without a gauge on the cylinder is not told: it could be the smith', () => {
    expect(toldOf('scale', { minutes: 60, behaviours: at(20, { name: 'hose-restriction' }) })).toEqual([]);
  });
});
