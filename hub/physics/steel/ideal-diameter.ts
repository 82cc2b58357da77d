/**
 * Ideal critical diameter DI: the round bar that would be half martensite at
 * its centre in a perfect quench. ASTM A255 multiplying factors (inch-pound
 * form, after Grossmann, AIME Trans. 150 (1942) 227-259), austenite grain size
 * 7, phosphorus and sulphur left out as the standard does.
 */
import { type Composition, type ElementRanges, outsideOf, percentOf } from './composition.ts';
import { type Answer, estimate, type Flag, flag, noEstimate, type Provenance } from './estimate.ts';
import { describeOutside } from './formula.ts';

export const MM_PER_INCH = 25.4;

const A255: Provenance = {
  standing: 'published-secondary',
  source: 'ASTM A255-10 (2014), three transcriptions agree',
};

/** Beyond these the factors do not exist. */
const FACTOR_RANGE: ElementRanges = {
  C: [0.01, 0.9],
  Si: [0, 2],
  Mn: [0, 1.95],
  Cr: [0, 2.5],
  Ni: [0, 3.5],
  Cu: [0, 0.55],
  Mo: [0, 0.55],
  V: [0, 0.2],
  Zr: [0, 0.25],
};

/** Inside these the standard claims its hardenability curves. */
const CORE_RANGE: ElementRanges = {
  C: [0.1, 0.7],
  Si: [0.15, 0.6],
  Mn: [0.5, 1.65],
  Cr: [0, 1.35],
  Ni: [0, 1.5],
  Cu: [0, 0.35],
  Mo: [0, 0.55],
  V: [0, 0.2],
};

/** Heat to heat and calculation to test, as a share (common practice); double outside the core range. */
const SPREAD = 0.15;

function carbonFactor(c: number): number {
  if (c <= 0.39) return 0.54 * c;
  if (c <= 0.55) return 0.171 + 0.001 * c + 0.265 * c ** 2;
  if (c <= 0.65) return 0.115 + 0.268 * c - 0.038 * c ** 2;
  if (c <= 0.75) return 0.143 + 0.2 * c;
  return 0.062 + 0.409 * c - 0.135 * c ** 2;
}

function manganeseFactor(mn: number): number {
  return mn <= 1.2 ? 3.3333 * mn + 1 : 5.1 * mn - 1.12;
}

function nickelFactor(ni: number): number {
  return ni <= 1.5 ? 0.363 * ni + 1 : 0.3211 + 1.4501 * ni - 0.6119 * ni ** 2 + 0.1253 * ni ** 3;
}

export type FactorElement = 'C' | 'Mn' | 'Si' | 'Ni' | 'Cr' | 'Mo' | 'Cu' | 'V' | 'Zr';

/** The multiplying factors, dimensionless; the carbon factor is in inches. */
export function hardenabilityFactors(composition: Composition): Readonly<Record<FactorElement, number>> {
  const of = (element: FactorElement): number => percentOf(composition, element);
  return {
    C: carbonFactor(composition.C),
    Mn: manganeseFactor(of('Mn')),
    Si: 0.7 * of('Si') + 1,
    Ni: nickelFactor(of('Ni')),
    Cr: 2.16 * of('Cr') + 1,
    Mo: 3 * of('Mo') + 1,
    Cu: 0.365 * of('Cu') + 1,
    V: 1.73 * of('V') + 1,
    Zr: 2.5 * of('Zr') + 1,
  };
}

/**
 * Ideal critical diameter, mm.
 *
 * @param composition carbon in austenite up to 0.90 %, alloy within A255
 * @returns no estimate (`outside-validity`) beyond the standard's factors;
 *   flagged `outside-core-range` between its two ranges, `element-ignored` for
 *   tungsten and boron, which the factors do not know
 */
export function idealDiameter(composition: Composition): Answer {
  const beyond = outsideOf(composition, FACTOR_RANGE);
  if (beyond.length > 0) {
    return noEstimate('mm', 'outside-validity', `ASTM A255 has no factor for ${describeOutside(beyond)}`);
  }
  const flags = diameterFlags(composition);
  const inches = Object.values(hardenabilityFactors(composition)).reduce(
    (product, factor) => product * factor,
    1,
  );
  const value = inches * MM_PER_INCH;
  const spread = flags.length > 0 ? 2 * SPREAD : SPREAD;
  return estimate({
    value,
    low: value * (1 - spread),
    high: value * (1 + spread),
    unit: 'mm',
    formula: 'ASTM A255 multiplying factors, grain size 7',
    from: A255,
    flags,
  });
}

function diameterFlags(composition: Composition): Flag[] {
  const flags: Flag[] = [];
  const outside = outsideOf(composition, CORE_RANGE);
  if (outside.length > 0) {
    flags.push(flag('outside-core-range', `Factors only, no claimed curve: ${describeOutside(outside)}`));
  }
  if (percentOf(composition, 'W') > 0.1)
    flags.push(flag('element-ignored', 'Tungsten has no factor; DI is too low'));
  if (percentOf(composition, 'B') > 0.0003)
    flags.push(flag('element-ignored', 'Boron is not counted; DI is too low'));
  return flags;
}
