import { describe, expect, test } from 'vitest';
import { Probe } from '../../../sensors-sim/plant/probe.ts';
import { seededRandom } from '../../../sensors-sim/random.ts';

const stream = () => seededRandom(1, 'probe');

describe('a probe', () => {
  test('has made nine tenths of a step after its T90', () => {
    // SOURCE: first-order lag, T90 = ln(10) time constants.
    const traits = { lagSeconds: 30 / Math.LN10, noise: 0, resolution: 0.001, floor: 0 };
    const probe = new Probe(traits, stream(), 0);
    for (let second = 0; second < 30; second += 1) probe.step(100, 1);
    expect(probe.reading).toBeCloseTo(90, 2);
  });

  test('lags behind a ramp by rate times time constant', () => {
    const probe = new Probe({ lagSeconds: 90, noise: 0, resolution: 0.001, floor: 0 }, stream(), 0);
    for (let second = 1; second <= 1800; second += 1) probe.step((5 / 60) * second, 1);
    // SOURCE: 5 °C/min and 90 s give 7.5 °C.
    expect(150 - probe.reading).toBeCloseTo(7.5, 1);
  });

  test('answers in quarter degrees and trembles by its noise', () => {
    const probe = new Probe({ lagSeconds: 1, noise: 0.4, resolution: 0.25, floor: -250 }, stream(), 800);
    const seen = Array.from({ length: 500 }, () => {
      probe.step(800.1, 1);
      return probe.reading;
    });
    expect(seen.every((value) => Number.isInteger(value * 4))).toBe(true);
    expect(new Set(seen).size).toBeGreaterThan(4);
    expect(Math.max(...seen)).toBeLessThan(802.5);
  });

  test('never reads below its floor', () => {
    const probe = new Probe({ lagSeconds: 1, noise: 2, resolution: 0.1, floor: 0 }, stream(), 0);
    const seen = Array.from({ length: 200 }, () => {
      probe.step(0.2, 1);
      return probe.reading;
    });
    expect(Math.min(...seen)).toBe(0);
  });
});
