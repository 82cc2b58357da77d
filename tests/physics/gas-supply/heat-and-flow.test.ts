import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { gasUse, heatInput } from '../../../hub/physics/gas-supply/heat-input.ts';
import { type OrificeQuestion, orificeReport } from '../../../hub/physics/gas-supply/orifice-report.ts';
import {
  CUBIC_METRES_PER_CUBIC_FOOT,
  celsiusOf,
  fahrenheitOf,
  JOULES_PER_BTU,
  KILOGRAMS_PER_POUND,
  PASCALS_PER_INCH_OF_WATER,
  PASCALS_PER_PSI,
} from '../../../hub/physics/gas-supply/trade-units.ts';
import { lowPressureJetCubicMetresPerHour } from '../../../hub/physics/orifice.ts';

describe('units of the trade', () => {
  test('1 psi is 6.895 kPa or 27.7 inches of water, 1 bar 14.504 psi, 11 inches 2.74 kPa', () => {
    // SOURCE: conversion factors, computed; the trade prints 27.71 inches for water at 60 °F, 27.68 at 4 °C.
    expect(PASCALS_PER_PSI / 1000).toBeCloseTo(6.895, 3);
    expect(PASCALS_PER_PSI / PASCALS_PER_INCH_OF_WATER).toBeCloseTo(27.68, 2);
    expect(1e5 / PASCALS_PER_PSI).toBeCloseTo(14.504, 3);
    expect((11 * PASCALS_PER_INCH_OF_WATER) / 1000).toBeCloseTo(2.74, 2);
  });

  test('Fahrenheit and Celsius are each other’s inverse', () => {
    expect(celsiusOf(70)).toBeCloseTo(21.111, 3);
    expect(fahrenheitOf(-40)).toBeCloseTo(-40, 9);
    expect(fahrenheitOf(celsiusOf(20))).toBeCloseTo(20, 9);
  });
});

describe('heat in propane', () => {
  test('is 13.98 kWh/kg gross and 12.87 net', () => {
    // SOURCE: 2219.2 kJ/mol over 44.0956 g/mol (NIST, from memory), computed.
    expect(heatInput(1).kilowattsGross).toBeCloseTo(13.98, 2);
    expect(heatInput(1).kilowattsNet).toBeCloseTo(12.87, 2);
  });

  test('is 21 637 Btu/lb pure, within half a percent of the trade’s 21 548 to 21 591', () => {
    // SOURCE: LP-gas handbooks for the trade values.
    const perPound = (heatInput(1).kilowattsGross * 3.6e6 * KILOGRAMS_PER_POUND) / JOULES_PER_BTU;
    expect(Math.abs(perPound - 21_637)).toBeLessThan(5);
    for (const trade of [21_548, 21_591]) expect(Math.abs(perPound / trade - 1)).toBeLessThan(0.005);
  });

  test('of a firing is shared by its pieces, and costs nothing known without a price', () => {
    const use = gasUse(3, 2.5, 4);
    expect(use.cost).toBe(7.5);
    expect(use.costPerPiece).toBe(1.875);
    expect(use.kilowattHoursNet).toBeCloseTo(38.6, 1);
    expect(gasUse(3, null, 0)).toMatchObject({ cost: null, kilogramsPerPiece: null, costPerPiece: null });
    expect(() => gasUse(-1, null, 0)).toThrowError(expect.objectContaining({ code: 'out-of-range' }));
  });
});

const JET: OrificeQuestion = {
  gas: 'propane',
  boreMm: 0.889,
  gaugePressurePa: 10 * PASCALS_PER_PSI,
  dischargeCoefficient: 0.85,
  gasCelsius: 15,
};

/** psi; kg/h and kW net for bores 0.80, 0.889, 1.092 and 1.50 mm, Cd 0.85, 15 °C.
 * SOURCE: isentropic nozzle flow, heat ratio 1.13, computed independently. */
const TABLE: readonly (readonly [number, readonly (readonly [number, number])[]])[] = [
  [
    1,
    [
      [0.244, 3.1],
      [0.301, 3.9],
      [0.455, 5.9],
      [0.858, 11.0],
    ],
  ],
  [
    2,
    [
      [0.342, 4.4],
      [0.422, 5.4],
      [0.636, 8.2],
      [1.201, 15.5],
    ],
  ],
  [
    5,
    [
      [0.525, 6.8],
      [0.648, 8.3],
      [0.978, 12.6],
      [1.845, 23.8],
    ],
  ],
  [
    10,
    [
      [0.713, 9.2],
      [0.88, 11.3],
      [1.328, 17.1],
      [2.505, 32.2],
    ],
  ],
  [
    15,
    [
      [0.857, 11.0],
      [1.059, 13.6],
      [1.597, 20.6],
      [3.014, 38.8],
    ],
  ],
  [
    20,
    [
      [1.002, 12.9],
      [1.237, 15.9],
      [1.866, 24.0],
      [3.522, 45.3],
    ],
  ],
  [
    30,
    [
      [1.29, 16.6],
      [1.594, 20.5],
      [2.404, 31.0],
      [4.537, 58.4],
    ],
  ],
];
const BORES = [0.8, 0.889, 1.092, 1.5];

describe('the flow of a jet', () => {
  test.each(TABLE)('at %d psi is the row of the table, kg/h and kW net', (psi, row) => {
    row.forEach(([kilograms, kilowatts], column) => {
      const boreMm = BORES[column] ?? Number.NaN;
      const found = orificeReport({ ...JET, boreMm, gaugePressurePa: psi * PASCALS_PER_PSI });
      expect(Math.abs(found.kilogramsPerHour - kilograms)).toBeLessThan(0.0015);
      expect(Math.abs(found.kilowattsNet - kilowatts)).toBeLessThan(0.06);
    });
  });

  test('is choked above 10.7 psi or 0.738 bar, subsonic below, none without pressure', () => {
    // SOURCE: (2/(k+1))^(k/(k-1)) = 0.5785 for k = 1.13.
    const regime = (gaugePressurePa: number) => orificeReport({ ...JET, gaugePressurePa }).regime;
    expect(regime(73_900)).toBe('choked');
    expect(regime(73_700)).toBe('subsonic');
    expect(regime(0)).toBe('none');
    expect(orificeReport(JET).chokedRatio).toBeCloseTo(0.5785, 4);
  });

  test('comes with at least 15 % either way, and only for propane', () => {
    const found = orificeReport(JET);
    expect(found.lowKilogramsPerHour / found.kilogramsPerHour).toBeCloseTo(0.85, 12);
    expect(found.highKilogramsPerHour / found.kilogramsPerHour).toBeCloseTo(1.15, 12);
    expect(() => orificeReport({ ...JET, gas: 'methane' })).toThrowError(
      expect.objectContaining({ code: 'not-applicable' }),
    );
    expect(() => orificeReport({ ...JET, boreMm: 20 })).toThrowError(
      expect.objectContaining({ code: 'out-of-range' }),
    );
  });

  test('agrees with the appliance formula at 11 inches of water within 3 %', () => {
    // SOURCE: BCcampus orifice capacity table: drill 65 (0.035 inch) passes 3.889 ft³/h at Cd 0.90. 2500 Btu/ft³ is
    // common practice; 2488 to 2516 in LP-gas handbooks.
    const trade = lowPressureJetCubicMetresPerHour({
      boreMetres: 0.000889,
      dischargeCoefficient: 0.9,
      differentialPascals: 11 * PASCALS_PER_INCH_OF_WATER,
      relativeDensity: 1.5,
    });
    expect(trade / CUBIC_METRES_PER_CUBIC_FOOT).toBeCloseTo(3.889, 2);
    const gaugePressurePa = 11 * PASCALS_PER_INCH_OF_WATER;
    const found = orificeReport({ ...JET, dischargeCoefficient: 0.9, gaugePressurePa, gasCelsius: 15.6 });
    const btuPerHour = (found.kilowattsGross * 3.6e6) / JOULES_PER_BTU;
    expect(Math.abs(btuPerHour / (3.889 * 2500) - 1)).toBeLessThan(0.03);
  });

  test('never falls with pressure, bore or coefficient', () => {
    const jets = fc.record({
      gas: fc.constant('propane'),
      boreMm: fc.double({ min: 0.2, max: 5, noNaN: true }),
      gaugePressurePa: fc.double({ min: 0, max: 4e5, noNaN: true }),
      dischargeCoefficient: fc.double({ min: 0.3, max: 0.9, noNaN: true }),
      gasCelsius: fc.double({ min: -20, max: 40, noNaN: true }),
    });
    fc.assert(
      fc.property(jets, (jet) => {
        const flow = (change: Partial<OrificeQuestion>) =>
          orificeReport({ ...jet, ...change }).kilogramsPerHour;
        const found = flow({});
        expect(flow({ gaugePressurePa: jet.gaugePressurePa + 1000 })).toBeGreaterThan(found);
        expect(flow({ boreMm: jet.boreMm * 2 })).toBeCloseTo(4 * found, 9);
        expect(flow({ dischargeCoefficient: jet.dischargeCoefficient * 1.1 })).toBeCloseTo(1.1 * found, 9);
      }),
    );
  });
});
