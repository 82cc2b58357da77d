import { describe, expect, test } from 'vitest';
import { burn, FLUE_JOULES_PER_KILOGRAM_KELVIN } from '../../../sensors-sim/plant/burner.ts';

const ONE_KILOGRAM_AN_HOUR = 1 / 3600;

describe('a propane flame', () => {
  test('gives 12.9 kW from 1 kg/h', () => {
    // SOURCE: net heat of propane 46.34 MJ/kg.
    expect(burn(ONE_KILOGRAM_AN_HOUR, 1).watts).toBeCloseTo(12_872, 0);
  });

  test('of an exact mixture would reach about 1990 °C if it lost nothing', () => {
    // SOURCE: equilibrium flame temperature of propane in air, 1990 °C (Cantera, GRI-Mech 3.0).
    const flame = burn(ONE_KILOGRAM_AN_HOUR, 1);
    const rise = flame.watts / (flame.flueKilogramsPerSecond * FLUE_JOULES_PER_KILOGRAM_KELVIN);
    expect(Math.abs(25 + rise - 1990)).toBeLessThan(20);
  });

  test.each([
    [1, 3.4],
    [1.05, 205],
    [1.2, 670],
    [1.5, 1199],
    // Half way between two points of the table.
    [1.15, 526],
  ])('at an equivalence ratio of %d makes %d g of CO per kg of fuel', (ratio, grams) => {
    // SOURCE: Cantera 3.2.0, GRI-Mech 3.0, equilibrium at 1600 K.
    const flame = burn(1, ratio);
    expect(flame.carbonMonoxideKilogramsPerSecond * 1000).toBeCloseTo(grams, 6);
  });

  test('gives less heat when rich, and none without gas', () => {
    expect(burn(1, 1.25).watts).toBeCloseTo(burn(1, 1).watts * 0.8, 6);
    expect(burn(0, 1.2)).toEqual({
      watts: 0,
      flueKilogramsPerSecond: 0,
      carbonMonoxideKilogramsPerSecond: 0,
    });
  });
});
