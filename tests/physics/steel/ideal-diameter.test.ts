import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { hardenabilityFactors, idealDiameter } from '../../../hub/physics/steel/ideal-diameter.ts';
import { codes, numberOf } from './support.ts';

/** SAE 4118 modified, the worked example of ASTM A255. */
const EXAMPLE = { C: 0.22, Mn: 0.8, Si: 0.18, Ni: 0.1, Cr: 0.43, Mo: 0.25, Cu: 0.1, V: 0.05 };

describe('ideal critical diameter', () => {
  it('meets every factor of the worked example in ASTM A255', () => {
    // Source: text quoting ASTM A255-10 (2014); the copper factor is printed 1.04.
    const factors = hardenabilityFactors(EXAMPLE);
    const printed = { C: 0.119, Mn: 3.667, Si: 1.126, Ni: 1.036, Cr: 1.929, Mo: 1.75, Cu: 1.0365, V: 1.0865 };
    for (const [element, factor] of Object.entries(printed)) {
      expect(Math.abs(factors[element as keyof typeof printed] - factor), element).toBeLessThan(0.0006);
    }
  });

  it('comes to 1.93 in, which the standard rounds factor by factor to 1.95', () => {
    const inches = numberOf(idealDiameter(EXAMPLE)) / 25.4;
    expect(inches).toBeCloseTo(1.932, 3);
    expect(0.119 * 3.667 * 1.126 * 1.036 * 1.929 * 1.75 * 1.04 * 1.09).toBeCloseTo(1.95, 2);
    expect(Math.abs(inches - 1.95)).toBeLessThan(0.02);
  });

  it.each([
    ['1045', { C: 0.45, Mn: 0.75, Si: 0.25 }, 23.5],
    ['1060', { C: 0.6, Mn: 0.75, Si: 0.25 }, 27.4],
    ['1080', { C: 0.8, Mn: 0.75, Si: 0.25 }, 31.6],
    ['1084', { C: 0.85, Mn: 0.75, Si: 0.25 }, 32.6],
    ['5160', { C: 0.6, Mn: 0.88, Si: 0.25, Cr: 0.8 }, 83.9],
    ['4140', { C: 0.4, Mn: 0.88, Si: 0.25, Cr: 0.95, Mo: 0.2 }, 122.6],
    ['4340', { C: 0.4, Mn: 0.7, Si: 0.25, Ni: 1.83, Cr: 0.8, Mo: 0.25 }, 171.9],
  ])('%s meets the independently worked value, %j', (_, steel, mm) => {
    expect(Math.abs(numberOf(idealDiameter(steel)) - mm)).toBeLessThan(0.06);
  });

  it('has no step of more than 3 % where a factor changes its form', () => {
    const at = (steel: Parameters<typeof idealDiameter>[0]) => numberOf(idealDiameter(steel));
    for (const carbon of [0.39, 0.55, 0.65, 0.75]) {
      const ratio = at({ C: carbon + 1e-6, Mn: 0.8 }) / at({ C: carbon, Mn: 0.8 });
      expect(Math.abs(ratio - 1), `C ${carbon}`).toBeLessThan(0.03);
    }
    expect(at({ C: 0.4, Mn: 1.2001 }) / at({ C: 0.4, Mn: 1.2 })).toBeCloseTo(1, 2);
    expect(at({ C: 0.4, Mn: 0.8, Ni: 1.5001 }) / at({ C: 0.4, Mn: 0.8, Ni: 1.5 })).toBeCloseTo(1, 1);
  });

  it('refuses what the standard has no factor for, and flags what it hardly covers', () => {
    expect(idealDiameter({ C: 0.95, Mn: 0.4 })).toMatchObject({
      value: null,
      reason: { code: 'outside-validity' },
    });
    expect(idealDiameter({ C: 0.4, Cr: 5 }).value).toBeNull();
    expect(codes(idealDiameter({ C: 0.85, Mn: 0.75, Si: 0.25 }))).toEqual(['outside-core-range']);
    expect(codes(idealDiameter({ C: 0.6, Mn: 0.8, Si: 0.3, W: 0.5 }))).toEqual(['element-ignored']);
  });

  it('grows with every alloying element', () => {
    const elements = ['Mn', 'Si', 'Ni', 'Cr', 'Mo', 'V'] as const;
    const amount = fc.double({ min: 0, max: 0.18, noNaN: true });
    fc.assert(
      fc.property(
        fc.constantFrom(...elements),
        amount,
        fc.double({ min: 0.01, max: 0.02, noNaN: true }),
        (element, low, more) => {
          const base = { C: 0.4, Mn: 0.7 };
          const [less, rich] = [low, low + more].map((percent) =>
            numberOf(idealDiameter({ ...base, [element]: percent })),
          );
          expect(rich).toBeGreaterThan(less ?? Number.POSITIVE_INFINITY);
        },
      ),
    );
  });
});
