import { describe, expect, it } from 'vitest';
import { PhysicsError } from '../../../hub/physics/errors.ts';
import { radiativeCoefficient } from '../../../hub/physics/heat/exposure.ts';
import {
  conductivity,
  elongation,
  STEEL_DENSITY_KG_M3,
  specificEnthalpy,
  specificHeat,
} from '../../../hub/physics/heat/steel-properties.ts';
import {
  EN_CONDUCTIVITY,
  EN_DIFFUSIVITY,
  EN_ELONGATION,
  EN_ENTHALPY,
  EN_SPECIFIC_HEAT,
  RADIATIVE,
} from '../../reference/heat-values.ts';

describe('properties of carbon steel after EN 1993-1-2', () => {
  it.each(EN_SPECIFIC_HEAT)('specific heat at %d °C is %d J/(kg K)', (celsius, expected) => {
    expect(Math.abs(specificHeat(celsius) - expected)).toBeLessThanOrEqual(0.051);
  });

  it.each(EN_CONDUCTIVITY)('conductivity at %d °C is %d W/(m K)', (celsius, expected) => {
    expect(Math.abs(conductivity(celsius) - expected)).toBeLessThanOrEqual(0.006);
  });

  it.each(EN_ELONGATION)('elongation at %d °C is %d', (celsius, expected) => {
    expect(Math.abs(elongation(celsius) - expected)).toBeLessThanOrEqual(0.6e-5);
  });

  it.each(EN_ENTHALPY)('heat from %d to %d °C is %d kJ/kg', (from, to, expected) => {
    const kilojoules = (specificEnthalpy(to) - specificEnthalpy(from)) / 1000;
    expect(Math.abs(kilojoules - expected)).toBeLessThanOrEqual(0.051);
  });

  it.each(EN_DIFFUSIVITY)('diffusivity at %d °C is %d m²/s', (celsius, expected) => {
    const computed = conductivity(celsius) / (STEEL_DENSITY_KG_M3 * specificHeat(celsius));
    expect(computed / expected).toBeCloseTo(1, 2);
  });

  it('holds 84.8 kJ/kg in its peak above the straight line from 600 to 900 °C', () => {
    const line = ((specificHeat(600) + specificHeat(900)) / 2) * 300;
    const peak = specificEnthalpy(900) - specificEnthalpy(600) - line;
    expect(peak / 1000).toBeCloseTo(84.8, 0);
  });

  it('heat content is the integral of specific heat, summed the slow way', () => {
    const step = 0.05;
    let sum = 0;
    for (let t = 20 + step / 2; t < 1100; t += step) sum += specificHeat(t) * step;
    expect(sum / specificEnthalpy(1100)).toBeCloseTo(1, 5);
  });

  it.each([19.9, 1200.1, Number.NaN])('refuses %d °C, outside the standard', (celsius) => {
    for (const property of [specificHeat, conductivity, elongation, specificEnthalpy]) {
      expect(() => property(celsius)).toThrow(expect.objectContaining({ code: 'out-of-range' }));
    }
  });
});

describe('radiation as a film coefficient', () => {
  it.each(RADIATIVE)('emissivity %d from %d to %d °C is %d W/(m² K)', (eps, from, to, expected) => {
    expect(Math.abs(radiativeCoefficient(eps, from, to) - expected)).toBeLessThanOrEqual(0.051);
  });

  it('refuses an emissivity above 1', () => {
    expect(() => radiativeCoefficient(1.1, 800, 20)).toThrow(PhysicsError);
  });
});
