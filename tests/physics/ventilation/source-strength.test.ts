import { describe, expect, test } from 'vitest';
import { airNeededCubicMetresPerHour } from '../../../hub/physics/room-air.ts';
import { OTHER_GAS_LIMITS } from '../../../hub/physics/ventilation/other-gas-limits.ts';
import {
  carbonMonoxideSourceCubicMetresPerHour,
  combustionLoad,
  richFlameCarbonMonoxide,
  steadyOxygenShare,
} from '../../../hub/physics/ventilation/source-strength.ts';

describe('a kilogram of propane an hour, burnt in full', () => {
  // SOURCE: stoichiometry of C3H8 + 5 O2, volumes at 20 °C, computed.
  const load = combustionLoad(1);

  test('takes 2.73 m³ of oxygen out of 13.0 m³ of air and gives 12.9 kW', () => {
    expect(load.oxygenCubicMetresPerHour).toBeCloseTo(2.73, 2);
    expect(load.airCubicMetresPerHour).toBeCloseTo(13, 1);
    expect(load.kilowattsNet).toBeCloseTo(12.9, 1);
  });

  test('makes 1.64 m³ or 2.99 kg of CO2 and 1.63 kg of water', () => {
    expect(load.carbonDioxideCubicMetresPerHour).toBeCloseTo(1.64, 2);
    expect(load.carbonDioxideKilogramsPerHour).toBeCloseTo(2.99, 2);
    expect(load.waterKilogramsPerHour).toBeCloseTo(1.63, 2);
  });

  test('asks for 357 m³/h to stay at 5000 ppm of CO2 over 420', () => {
    const need = {
      sourceCubicMetresPerHour: load.carbonDioxideCubicMetresPerHour,
      targetPpm: 5000,
      backgroundPpm: 420,
      mixingFactor: 1,
    };
    expect(airNeededCubicMetresPerHour(need)).toBeCloseTo(357, 0);
  });

  test('leaves 20.0 % of oxygen at 300 m³/h of fresh air, and none where it takes all', () => {
    expect(steadyOxygenShare(load.oxygenCubicMetresPerHour, 300)).toBeCloseTo(0.2, 3);
    expect(steadyOxygenShare(load.oxygenCubicMetresPerHour, 1)).toBe(0);
  });
});

/** Fuel over stoichiometric; g of CO a kg of propane with products at 1600 and 1400 K.
 * SOURCE: equilibrium computed with Cantera 3.2.0 and GRI-Mech 3.0, 25 °C, one atmosphere. */
const RICH: readonly (readonly [number, number, number])[] = [
  [0.8, 0.2, 0],
  [0.9, 0.3, 0],
  [1, 3.4, 0.4],
  [1.05, 205, 184],
  [1.1, 382, 344],
  [1.2, 670, 608],
  [1.3, 891, 815],
  [1.4, 1063, 981],
  [1.5, 1199, 1116],
];

describe('a rich flame', () => {
  test.each(RICH)('at %d makes the CO of the table', (phi, hot, cold) => {
    const found = richFlameCarbonMonoxide(phi);
    expect(found.high * 1000).toBeCloseTo(hot, 9);
    expect(found.low * 1000).toBeCloseTo(cold, 9);
  });

  test('makes more the richer it runs, straight between the points', () => {
    let before = richFlameCarbonMonoxide(0.8).high;
    for (let phi = 0.81; phi <= 1.5; phi += 0.01) {
      const now = richFlameCarbonMonoxide(phi).high;
      expect(now).toBeGreaterThan(before);
      before = now;
    }
    expect(richFlameCarbonMonoxide(1.15).high).toBeCloseTo((0.382 + 0.67) / 2, 9);
    expect(() => richFlameCarbonMonoxide(1.6)).toThrowError(
      expect.objectContaining({ code: 'out-of-range' }),
    );
  });

  test('at 1.1 holds 0.30 to 0.33 m³ a kilogram, of which 1 % is 15 ppm in 200 m³/h', () => {
    // SOURCE: worked example, computed; 148 m³/h a 20 ppm rise.
    const { low, high } = richFlameCarbonMonoxide(1.1);
    expect(carbonMonoxideSourceCubicMetresPerHour(1, low, 1)).toBeCloseTo(0.3, 2);
    expect(carbonMonoxideSourceCubicMetresPerHour(1, high, 1)).toBeCloseTo(0.33, 2);
    const source = carbonMonoxideSourceCubicMetresPerHour(1, low, 0.01);
    expect((source / 200) * 1e6).toBeCloseTo(15, 0);
    expect(source / 20e-6).toBeCloseTo(148, 0);
  });
});

/** SOURCE: 29 CFR 1910.146, NIOSH pages and secondary tables; EU and ACGIH rows of NO and NO2 from memory. */
const OTHER: readonly (readonly [string, string, number, string])[] = [
  ['carbon-dioxide', 'twa', 5000, 'published-secondary'],
  ['carbon-dioxide', 'stel', 30_000, 'published-secondary'],
  ['carbon-dioxide', 'idlh', 40_000, 'published-secondary'],
  ['oxygen', 'hazardous-atmosphere', 195_000, 'published-secondary'],
  ['oxygen', 'hazardous-atmosphere', 235_000, 'published-secondary'],
  ['nitric-oxide', 'twa', 25, 'published-secondary'],
  ['nitric-oxide', 'idlh', 100, 'published-secondary'],
  ['nitric-oxide', 'twa', 2, 'from-memory'],
  ['nitrogen-dioxide', 'ceiling', 5, 'published-secondary'],
  ['nitrogen-dioxide', 'stel', 1, 'published-secondary'],
  ['nitrogen-dioxide', 'twa', 0.5, 'from-memory'],
  ['nitrogen-dioxide', 'stel', 1, 'from-memory'],
  ['nitrogen-dioxide', 'twa', 0.2, 'from-memory'],
  ['propane', 'twa', 1000, 'published-secondary'],
  ['propane', 'idlh', 2100, 'published-secondary'],
];

describe('limits of other gases', () => {
  test('are the rows of the table and no others', () => {
    expect(OTHER_GAS_LIMITS.map(({ gas, use, ppm, from }) => [gas, use, ppm, from.standing])).toEqual(OTHER);
  });

  test('oxygen is dangerous on both sides, everything else above', () => {
    const below = OTHER_GAS_LIMITS.filter((limit) => limit.side === 'below');
    expect(below.map(({ gas, ppm }) => [gas, ppm])).toEqual([['oxygen', 195_000]]);
  });
});
