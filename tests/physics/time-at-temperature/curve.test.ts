import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { heldAt, integrate } from '../../../hub/physics/time-at-temperature/curve.ts';

const WIDE = { low: 0, high: 1500 };

describe('integral over a measured curve', () => {
  it('of 1 is the time, split into below, within and above', () => {
    const ramp = [
      { atMs: 0, celsius: 500 },
      { atMs: 1_000_000, celsius: 1500 },
    ];
    const whole = integrate(ramp, { low: 700, high: 1200 }, () => 1);
    expect(whole.secondsInRange).toBeCloseTo(500, 6);
    expect(whole.secondsBelow).toBeCloseTo(200, 6);
    expect(whole.secondsAbove).toBeCloseTo(300, 6);
    expect(whole.value).toBeCloseTo(500, 6);
  });

  it('of an exponential along a ramp agrees with its closed form', () => {
    const ramp = [
      { atMs: 0, celsius: 600 },
      { atMs: 3_600_000, celsius: 900 },
    ];
    const { value } = integrate(ramp, WIDE, (celsius) => Math.exp(celsius / 30));
    const exact = 3600 * (30 / 300) * (Math.exp(30) - Math.exp(20));
    expect(value / exact).toBeCloseTo(1, 3);
  });

  it('does not care where a straight curve is cut, nor about the time of day', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.05, max: 0.95, noNaN: true }),
        fc.integer({ min: 0, max: 2_000_000_000_000 }),
        (share, offset) => {
          const at = (s: number) => ({ atMs: offset + Math.round(s * 6e6), celsius: 700 + 300 * s });
          const cut = at(Math.round(share * 6e6) / 6e6);
          const one = integrate([at(0), at(1)], WIDE, (c) => Math.exp(c / 100)).value;
          const two = integrate([at(0), cut, at(1)], WIDE, (c) => Math.exp(c / 100)).value;
          expect(two / one).toBeCloseTo(1, 4);
        },
      ),
      { seed: 22, numRuns: 40 },
    );
  });

  it('reports the longest gap that it bridged', () => {
    const [first, last] = heldAt(800, 60);
    const gap = { atMs: 1_000_000, celsius: 800 };
    expect(
      integrate(
        [first, last, gap].flatMap((p) => p ?? []),
        WIDE,
        () => 0,
      ).longestGapSeconds,
    ).toBe(940);
  });

  it('refuses a curve that is none', () => {
    const refused = expect.objectContaining({ code: 'bad-input' });
    expect(() => integrate([], WIDE, () => 1)).toThrow(refused);
    expect(() => integrate([{ atMs: 0, celsius: 1 }], WIDE, () => 1)).toThrow(refused);
    expect(() => integrate(heldAt(800, -1), WIDE, () => 1)).toThrow(refused);
    expect(() => integrate(heldAt(Number.NaN, 10), WIDE, () => 1)).toThrow(
      expect.objectContaining({ code: 'out-of-range' }),
    );
  });
});
