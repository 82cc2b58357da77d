import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { defaultProbeFaultRules, longestOrdinaryRun } from '../../hub/physics/probe-fault-rules.ts';

/** Chance that a normal value lies within ± x standard deviations, by Simpson's rule. */
function chanceWithin(x: number): number {
  const n = 400;
  const h = x / n;
  const density = (z: number) => Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI);
  let sum = density(0) + density(x);
  for (let i = 1; i < n; i++) sum += density(i * h) * (i % 2 === 1 ? 4 : 2);
  return (2 * sum * h) / 3;
}

describe('longest ordinary run of equal readings', () => {
  it('checks its own integral: ±1.96σ holds 95.0 % (normal distribution tables)', () => {
    expect(chanceWithin(1.96)).toBeCloseTo(0.95, 4);
    expect(chanceWithin(1)).toBeCloseTo(0.6827, 4);
  });

  it('is never shorter than the exact chance asks for', () => {
    const ratios = fc.double({ min: 0.01, max: 6, noNaN: true });
    fc.assert(
      fc.property(ratios, (ratio) => {
        const chance = chanceWithin(ratio / 2);
        const exact = Math.log(1e-6) / Math.log(chance);
        expect(longestOrdinaryRun(ratio, 1)).toBeGreaterThanOrEqual(exact - 1e-3);
      }),
    );
  });

  it('grows with the step and falls with the wander', () => {
    expect(longestOrdinaryRun(0.0078125, 0.2)).toBeLessThan(6);
    expect(longestOrdinaryRun(0.25, 0.2)).toBeGreaterThan(15);
    expect(longestOrdinaryRun(0.25, 0.2)).toBeLessThan(30);
    expect(longestOrdinaryRun(1, 0.2)).toBeGreaterThan(500);
  });

  it('has no end for a reading that does not wander', () => {
    expect(longestOrdinaryRun(0.25, 0)).toBe(Infinity);
    expect(longestOrdinaryRun(0.25, Number.NaN)).toBe(Infinity);
    expect(longestOrdinaryRun(50, 0.1)).toBe(Infinity);
  });
});

describe('default rules', () => {
  it('put the rails at the ends of the reference function', () => {
    expect(defaultProbeFaultRules('K').rails).toEqual({ lowCelsius: -270, highCelsius: 1372 });
    expect(defaultProbeFaultRules('S').rails).toEqual({ lowCelsius: -50, highCelsius: 1768.1 });
  });

  it('allow the fastest start of a 3 mm probe put into a forge', () => {
    // Half-time 23 s in air (SAB cable technical data): time constant 23/ln 2 s, from 20 into 1300 °C.
    const start = (1300 - 20) / (23 / Math.LN2);
    expect(start).toBeGreaterThan(38);
    expect(defaultProbeFaultRules('K').change.maximumRate).toBeGreaterThan(start);
  });
});
