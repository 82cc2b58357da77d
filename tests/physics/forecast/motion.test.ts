import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { MANNERS, processOf } from '../../../hub/physics/forecast/furnace-model.ts';
import { type Matrix, plus, times, transposed } from '../../../hub/physics/forecast/matrix.ts';
import { motionOver } from '../../../hub/physics/forecast/motion.ts';

function expectClose(found: Matrix, wanted: Matrix, share = 1e-9): void {
  found.forEach((row, i) => {
    row.forEach((entry, j) => {
      const target = wanted[i]?.[j] ?? Number.NaN;
      expect(Math.abs(entry - target)).toBeLessThanOrEqual(share * Math.abs(target) + 1e-14);
    });
  });
}

describe('a step of a process, against its closed form', () => {
  it('is that of a slope that walks (integrated Wiener process)', () => {
    // Bar-Shalom, Li and Kirubarajan 2001, 6.2.2: q [[t³/3, t²/2], [t²/2, t]].
    const process = {
      drift: [
        [0, 1],
        [0, 0],
      ],
      diffusion: [
        [0, 0],
        [0, 3],
      ],
    };
    const { transition, noise } = motionOver(process, 4);
    expectClose(transition, [
      [1, 4],
      [0, 1],
    ]);
    expectClose(noise, [
      [64, 24],
      [24, 12],
    ]);
  });

  it.each([0.01, 1, 60, 900])('is that of Ornstein and Uhlenbeck over %f s', (seconds) => {
    const tau = 8;
    const { transition, noise } = motionOver({ drift: [[-1 / tau]], diffusion: [[0.5]] }, seconds);
    expectClose(transition, [[Math.exp(-seconds / tau)]]);
    expectClose(noise, [[(0.5 * tau * -Math.expm1((-2 * seconds) / tau)) / 2]]);
  });

  it('is a probe’s lag behind a rising temperature', () => {
    // p' = (T - p) / 8 with T = t: p = t - 8 (1 - exp(-t / 8)).
    const drift = [
      [-1 / 8, 1 / 8, 0],
      [0, 0, 1],
      [0, 0, 0],
    ];
    const { transition } = motionOver({ drift, diffusion: drift.map((row) => row.map(() => 0)) }, 30);
    expect(transition[0]?.[2]).toBeCloseTo(30 - 8 * (1 - Math.exp(-30 / 8)), 10);
  });

  it('keeps its digits with a quick probe over a long step', () => {
    // The lag of half a second is over 60 times in 30 s: the probe has the variance of the temperature less the lag.
    const process = {
      drift: [
        [-2, 2],
        [0, 0],
      ],
      diffusion: [
        [0, 0],
        [0, 1],
      ],
    };
    const { noise } = motionOver(process, 30);
    // Var p = t - 2·tau (1 - e) + tau/2 (1 - e²) with tau = 0.5; cov = t - tau (1 - e).
    expectClose(noise, [
      [30 - 1 + 0.25, 30 - 0.5],
      [30 - 0.5, 30],
    ]);
  });
});

describe('a step of the furnace', () => {
  const seconds = fc.double({ min: 0.01, max: 300, noNaN: true });

  it('is the same in one or in two parts', () => {
    fc.assert(
      fc.property(seconds, seconds, fc.constantFrom(...MANNERS), (first, second, manner) => {
        const process = processOf(manner, 8);
        const [a, b] = [motionOver(process, first), motionOver(process, second)];
        const whole = motionOver(process, first + second);
        expectClose(times(b.transition, a.transition), whole.transition, 1e-8);
        const noise = plus(times(times(b.transition, a.noise), transposed(b.transition)), b.noise);
        expectClose(noise, whole.noise, 1e-6);
      }),
      { numRuns: 60 },
    );
  });

  it('does nothing in no time, and is refused for a time that cannot be', () => {
    const [manner] = MANNERS;
    const process = manner === undefined ? { drift: [], diffusion: [] } : processOf(manner, 8);
    expect(
      motionOver(process, 0)
        .noise.flat()
        .every((entry) => entry === 0),
    ).toBe(true);
    for (const bad of [-1, Number.NaN, 1e6]) {
      expect(() => motionOver(process, bad)).toThrow(expect.objectContaining({ code: 'out-of-range' }));
    }
  });
});
