import BESSEL from 'bessel';
import { describe, expect, it } from 'vitest';
import { besselJ, halfTemperatureFourier } from '../../../hub/physics/steel/half-temperature.ts';

describe('half-temperature time of bar and plate', () => {
  it('uses Bessel functions that a library agrees with', () => {
    for (const x of [0, 0.1, 1, 2.4048, 5.52, 8.65, 9.9]) {
      expect(besselJ(0, x)).toBeCloseTo(BESSEL.besselj(x, 0), 6);
      expect(besselJ(1, x)).toBeCloseTo(BESSEL.besselj(x, 1), 6);
    }
    // Zeros of J0 and J1: Abramowitz & Stegun table 9.5.
    expect(besselJ(0, 2.404825557695773)).toBeCloseTo(0, 12);
    expect(besselJ(1, 3.831705970207512)).toBeCloseTo(0, 12);
  });

  it.each([
    ['bar', 0.1, 0.4417, 1.0246],
    ['bar', 0.5, 0.9408, 1.1143],
    ['bar', 1, 1.2558, 1.2071],
    ['plate', 0.1, 0.3111, 1.0161],
    ['plate', 0.5, 0.6533, 1.0701],
    ['plate', 1, 0.8603, 1.1191],
  ] as const)('%s at Bi %f meets the one-term table solution', (shape, biot, zeta, amplitude) => {
    // Roots and amplitudes: tables of the one-term solution (from memory: Cengel table 4-2).
    // Above Fo 0.2 one term is enough, so Fo = ln(2 A) / zeta^2.
    expect(halfTemperatureFourier(shape, biot)).toBeCloseTo(Math.log(2 * amplitude) / zeta ** 2, 2);
  });

  it('meets the ideal quench: centre half-way at Fo 0.2005 in a bar, 0.379 in a plate', () => {
    // Surface held at the bath: bar sum 2/(z J1(z)) exp(-z² Fo), plate 4/pi exp(-pi² Fo/4).
    expect(halfTemperatureFourier('bar', Number.POSITIVE_INFINITY)).toBeCloseTo(0.2005, 3);
    const plate =
      (4 / Math.PI) * Math.exp((-(Math.PI ** 2) / 4) * 0.3787) -
      (4 / (3 * Math.PI)) * Math.exp((-9 * Math.PI ** 2 * 0.3787) / 4);
    expect(plate).toBeCloseTo(0.5, 3);
    expect(halfTemperatureFourier('plate', Number.POSITIVE_INFINITY)).toBeCloseTo(0.3787, 3);
  });

  it('goes over into lumped cooling at small Biot numbers', () => {
    // Lumped: theta = exp(-Bi Fo V-ratio): 2 Bi Fo in a bar, Bi Fo in a plate.
    expect(halfTemperatureFourier('bar', 0.001) * 0.002).toBeCloseTo(Math.LN2, 2);
    expect(halfTemperatureFourier('plate', 0.001) * 0.001).toBeCloseTo(Math.LN2, 2);
  });

  it('shortens as the quench grows fiercer', () => {
    const times = [0.01, 0.1, 1, 10, 100, Number.POSITIVE_INFINITY].map((biot) =>
      halfTemperatureFourier('bar', biot),
    );
    expect(times).toEqual([...times].sort((a, b) => b - a));
  });
});
