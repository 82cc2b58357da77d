import { describe, expect, test } from 'vitest';
import { readSettings } from '../../sensors-sim/options.ts';

describe('the command line', () => {
  test('has a default for everything', () => {
    expect(readSettings([])).toMatchObject({
      mqttUrl: 'mqtt://127.0.0.1:1883',
      speed: 1,
      seed: 7,
      historyHours: 10,
      behaviours: [],
      forgePlan: undefined,
      liveMs: undefined,
    });
  });

  test('takes several behaviours, plans and an instant', () => {
    const settings = readSettings([
      '--behaviour',
      'overshoot:excessCelsius=25@3',
      '--behaviour=node-drop@5',
      '--oven-plan=none',
      '--forge-plan=forge-normalise',
      '--now-ms=1700000000999',
    ]);
    expect(settings.behaviours.map((each) => [each.name, each.startSeconds])).toEqual([
      ['overshoot', 180],
      ['node-drop', 300],
    ]);
    expect(settings.ovenPlan).toBeNull();
    expect(settings.forgePlan?.name).toBe('forge-normalise');
    expect(settings.liveMs).toBe(1_700_000_000_000);
  });

  test.each([
    [['--speed', 'fast'], /--speed takes a number from 0.1 to 3600, not 'fast'/],
    [['--speed', '0'], /--speed/],
    [['--seed', '1.5'], /--seed takes a whole number/],
    [['--history-hours', '100'], /0 to 48/],
    [['--mqtt', '127.0.0.1:1883'], /mqtt:\/\/127.0.0.1:1883/],
    [['--mqtt', 'http://127.0.0.1'], /--mqtt/],
    [['--forge-plan', 'oven-temper'], /forge-anneal, forge-normalise, forge-anneal-thick or none/],
    [['--nonsense'], /--nonsense/],
    [['stray'], /stray/],
    [['--seed'], /--seed/],
    [['--seed', ''], /--seed/],
  ])('%j is refused and says why', (args, reason) => {
    const refused = expect.objectContaining({ code: 'bad-flag', message: expect.stringMatching(reason) });
    expect(() => readSettings(args)).toThrowError(refused);
  });

  test('refuses a bad behaviour by its own code', () => {
    const refused = expect.objectContaining({ code: 'bad-behaviour' });
    expect(() => readSettings(['--behaviour', 'explode@1'])).toThrowError(refused);
  });
});
