import { describe, expect, it } from 'vitest';
import { runScenario } from './scenario.ts';

describe('a night when nothing is wrong', () => {
  it('raises no alarm from the evening to the first fire of the morning', () => {
    // Everything a shop may hang on its wall, cold and quiet for ten hours; then the forge is lit.
    const scenario = runScenario({
      seed: 5,
      coldMinutes: 600,
      minutes: 604,
      publishEverySeconds: 10,
      loads: true,
      fittings: ['second-co', 'air-climate', 'cylinder-gauges'],
    });
    expect(scenario.kinds).toEqual([]);
    expect(scenario.firing.status).toBe('running');
    const heard = scenario.shop.archive.channels().filter(({ latest }) => latest !== null);
    expect(heard.length).toBeGreaterThanOrEqual(10);
  }, 180_000);
});
