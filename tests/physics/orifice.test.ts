import { describe, expect, test } from 'vitest';
import {
  chokedPressureRatio,
  lowPressureJetCubicMetresPerHour,
  PROPANE_HEAT_RATIO,
  propaneJetKilogramsPerSecond,
} from '../../hub/physics/orifice.ts';

const ATMOSPHERE = 101_325;
const PSI = 6894.757293;

/** kg/h by gauge psi for bores 0.80, 0.889, 1.092 and 1.50 mm; Cd 0.85, heat ratio 1.13, 15 °C.
 * SOURCE: isentropic nozzle flow computed independently (ideal gas). */
const HIGH_PRESSURE: readonly (readonly [number, readonly number[]])[] = [
  [1, [0.244, 0.301, 0.455, 0.858]],
  [2, [0.342, 0.422, 0.636, 1.201]],
  [5, [0.525, 0.648, 0.978, 1.845]],
  [10, [0.713, 0.88, 1.328, 2.505]],
  [15, [0.857, 1.059, 1.597, 3.014]],
  [20, [1.002, 1.237, 1.866, 3.522]],
  [30, [1.29, 1.594, 2.404, 4.537]],
];
const BORES_MILLIMETRES = [0.8, 0.889, 1.092, 1.5];

/** Drill bore in inches and ft³/h of propane at 11 inches of water, Cd 0.90, relative density 1.50.
 * SOURCE: BCcampus open plumbing text, orifice capacity table. */
const LOW_PRESSURE: readonly (readonly [number, number])[] = [
  [0.0135, 0.579],
  [0.0145, 0.667],
  [0.016, 0.813],
  [0.018, 1.029],
  [0.02, 1.27],
  [0.021, 1.4],
  [0.0225, 1.607],
  [0.024, 1.829],
  [0.025, 1.984],
  [0.026, 2.146],
  [0.028, 2.489],
  [0.0292, 2.707],
  [0.031, 3.051],
  [0.032, 3.251],
  [0.033, 3.457],
  [0.035, 3.889],
  [0.036, 4.114],
  [0.037, 4.346],
  [0.038, 4.584],
];

function jet(boreMetres: number, gaugePascals: number) {
  return {
    boreMetres,
    dischargeCoefficient: 0.85,
    upstreamPascals: ATMOSPHERE + gaugePascals,
    downstreamPascals: ATMOSPHERE,
    gasCelsius: 15,
  };
}

describe('a propane jet under forge pressure', () => {
  test.each(HIGH_PRESSURE)('at %d psi flows as the table of nozzle flow says', (psi, expected) => {
    const flows = BORES_MILLIMETRES.map(
      (bore) => propaneJetKilogramsPerSecond(jet(bore / 1000, psi * PSI)) * 3600,
    );
    flows.forEach((flow, column) => {
      expect(Math.abs(flow - (expected[column] ?? Number.NaN))).toBeLessThan(0.0015);
    });
  });

  test('is choked from 0.738 bar gauge on, and the two regimes meet there', () => {
    // SOURCE: (2/(k+1))^(k/(k-1)) = 0.5785 for k = 1.13.
    const ratio = chokedPressureRatio(PROPANE_HEAT_RATIO);
    expect(ratio).toBeCloseTo(0.5785, 4);
    const edge = ATMOSPHERE / ratio - ATMOSPHERE;
    expect(edge / 1e5).toBeCloseTo(0.738, 3);
    const below = propaneJetKilogramsPerSecond(jet(0.001, edge - 1));
    expect(propaneJetKilogramsPerSecond(jet(0.001, edge + 1)) / below).toBeCloseTo(1, 4);
  });

  test('does not care what lies behind a choked jet', () => {
    const open = propaneJetKilogramsPerSecond(jet(0.001, 2e5));
    const vacuum = propaneJetKilogramsPerSecond({ ...jet(0.001, 2e5), downstreamPascals: 1000 });
    expect(vacuum).toBe(open);
  });

  test('does not flow backwards', () => {
    expect(propaneJetKilogramsPerSecond(jet(0.001, 0))).toBe(0);
    expect(propaneJetKilogramsPerSecond(jet(0.001, -5000))).toBe(0);
  });

  test('refuses a bore of one metre', () => {
    const refused = expect.objectContaining({ code: 'out-of-range' });
    expect(() => propaneJetKilogramsPerSecond(jet(1, 1e5))).toThrowError(refused);
  });
});

describe('a propane jet under appliance pressure', () => {
  test.each(LOW_PRESSURE)('of %d inch passes %d ft³/h at 11 inches of water', (inches, cubicFeet) => {
    const flow = lowPressureJetCubicMetresPerHour({
      boreMetres: inches * 0.0254,
      dischargeCoefficient: 0.9,
      differentialPascals: 11 * 249.08891,
      relativeDensity: 1.5,
    });
    // Half a unit of the last printed digit.
    expect(Math.abs(flow / 0.028316846592 - cubicFeet)).toBeLessThan(0.0006);
  });

  test('of 0.043 inch gives the 12,916 Btu/h of a public chart within 1 %', () => {
    // SOURCE: a public jet chart for No. 57 at 11 inches of water; it fits Cd 0.80 and 2488 Btu/ft³.
    const flow = lowPressureJetCubicMetresPerHour({
      boreMetres: 0.043 * 0.0254,
      dischargeCoefficient: 0.8,
      differentialPascals: 11 * 249.08891,
      relativeDensity: 1.5,
    });
    expect(Math.abs(((flow / 0.028316846592) * 2488) / 12_916 - 1)).toBeLessThan(0.01);
  });

  test('refuses forge pressure, where gas is no longer incompressible', () => {
    const refused = expect.objectContaining({ code: 'out-of-range' });
    const forge = {
      boreMetres: 0.001,
      dischargeCoefficient: 0.8,
      differentialPascals: 5e4,
      relativeDensity: 1.5,
    };
    expect(() => lowPressureJetCubicMetresPerHour(forge)).toThrowError(refused);
  });
});
