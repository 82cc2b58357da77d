/**
 * Ms from composition. Carbon here is carbon IN AUSTENITE.
 *
 * No formula is right everywhere: for 1095 they span 97 to 250 °C. So Ms is
 * always shown as the band over all of them, and the value is van Bohemen's,
 * whose carbon term flattens as measured at high carbon.
 */
import type { ElementRanges } from './composition.ts';
import type { Provenance } from './estimate.ts';
import type { CompositionFormula } from './formula.ts';

function seen(source: string): Provenance {
  return { standing: 'published-secondary', source };
}

const ANDREWS_RANGE: ElementRanges = { C: [0, 0.6], Mn: [0, 4.9], Cr: [0, 5], Ni: [0, 5], Mo: [0, 5.4] };
const ANDREWS_RANGE_FROM: Provenance = { standing: 'from-memory', source: 'Andrews 1965' };
const STRUCTURAL: ElementRanges = {
  C: [0.1, 0.6],
  Mn: [0, 2],
  Si: [0, 2],
  Cr: [0, 3.5],
  Ni: [0, 5],
  Mo: [0, 1.1],
};
const NOT_STATED: Provenance = {
  standing: 'common-practice',
  source: 'limits not stated with the formula; structural steel assumed',
};

export const VAN_BOHEMEN_MS: CompositionFormula = {
  name: 'van Bohemen 2012 Ms',
  from: seen('van Bohemen, Mater. Sci. Technol. 28 (2012) 487-495'),
  unit: 'celsius',
  constant: 565,
  linear: { Mn: -31, Si: -13, Cr: -10, Ni: -18, Mo: -12 },
  saturating: { k: -600, element: 'C', rate: 0.96 },
  range: { C: [0.1, 1.9], Mn: [0, 3], Si: [0, 3], Cr: [0, 5], Ni: [0, 5], Mo: [0, 2] },
  rangeFrom: { standing: 'from-memory', source: 'van Bohemen 2012; carbon range only, the rest assumed' },
  errorCelsius: null,
};

const ANDREWS_LINEAR_MS: CompositionFormula = {
  name: 'Andrews 1965 Ms, linear',
  from: seen('Andrews, JISI 203 (1965) 721-727'),
  unit: 'celsius',
  constant: 539,
  linear: { C: -423, Mn: -30.4, Ni: -17.7, Cr: -12.1, Mo: -7.5 },
  range: ANDREWS_RANGE,
  rangeFrom: ANDREWS_RANGE_FROM,
  errorCelsius: null,
};

export const MS_FORMULAS: readonly CompositionFormula[] = [
  VAN_BOHEMEN_MS,
  ANDREWS_LINEAR_MS,
  {
    name: 'Andrews 1965 Ms, product',
    from: seen('Andrews, JISI 203 (1965) 721-727'),
    unit: 'celsius',
    constant: 512,
    linear: { C: -453, Ni: -16.9, Cr: 15, Mo: -9.5 },
    products: [
      [217, 'C', 'C'],
      [-71.5, 'C', 'Mn'],
      [-67.6, 'C', 'Cr'],
    ],
    range: ANDREWS_RANGE,
    rangeFrom: ANDREWS_RANGE_FROM,
    errorCelsius: null,
  },
  {
    ...ANDREWS_LINEAR_MS,
    name: 'Kung & Rayment 1982 Ms',
    from: seen('Kung & Rayment, Metall. Trans. A 13 (1982) 328-331, on Andrews linear'),
    linear: { ...ANDREWS_LINEAR_MS.linear, Co: 10, Si: -7.5 },
  },
  {
    name: 'Steven & Haynes 1956 Ms',
    from: seen('Steven & Haynes, JISI 183 (1956) 349-359'),
    unit: 'celsius',
    constant: 561,
    linear: { C: -474, Mn: -33, Cr: -17, Ni: -17, Mo: -21 },
    range: { ...STRUCTURAL, C: [0.1, 0.55] },
    rangeFrom: { standing: 'from-memory', source: 'Steven & Haynes 1956' },
    errorCelsius: null,
  },
  {
    name: 'Grange & Stewart 1946 Ms',
    from: seen('Grange & Stewart 1946, several transcriptions'),
    unit: 'fahrenheit',
    constant: 1000,
    linear: { C: -650, Mn: -70, Cr: -70, Mo: -50, Ni: -35 },
    range: STRUCTURAL,
    rangeFrom: NOT_STATED,
    errorCelsius: null,
  },
  {
    name: 'Payson & Savage 1944 Ms',
    from: seen('Payson & Savage, Trans. ASM 33 (1944) 261'),
    unit: 'fahrenheit',
    constant: 930,
    linear: { C: -570, Mn: -60, Si: -20, Cr: -50, Mo: -20, Ni: -30 },
    range: STRUCTURAL,
    rangeFrom: NOT_STATED,
    errorCelsius: null,
  },
  {
    name: 'Nehrenberg 1946 Ms',
    from: seen('Nehrenberg 1946, several transcriptions'),
    unit: 'fahrenheit',
    constant: 930,
    linear: { C: -540, Mn: -60, Si: -20, Cr: -40, Mo: -20, Ni: -30 },
    range: STRUCTURAL,
    rangeFrom: NOT_STATED,
    errorCelsius: null,
  },
  {
    name: 'Trzaska 2016 Ms',
    from: seen('Trzaska, Arch. Metall. Mater. 61 (2016) 981-986'),
    unit: 'celsius',
    constant: 541,
    linear: { C: -401, Mn: -36, Si: -10.5, Cr: -14, Ni: -18, Mo: -17 },
    range: {
      C: [0.06, 0.68],
      Mn: [0.13, 2.04],
      Si: [0.12, 1.75],
      Cr: [0, 2.3],
      Ni: [0, 3.85],
      Mo: [0, 1.05],
    },
    rangeFrom: { standing: 'from-memory', source: 'Trzaska 2016' },
    errorCelsius: null,
  },
  {
    name: 'Ingber & Kunert 2022 Ms',
    from: {
      standing: 'published-primary',
      source: "Ingber & Kunert, steel research int. 93 (2022) 2100576, the authors' public code note",
    },
    unit: 'celsius',
    constant: 530.2,
    linear: { C: -290.3, Mn: -35.5, Si: -6.8, Ni: -17.2, Cr: -20.8, Mo: -10.4, Al: 7.1, Co: 4.8 },
    saturating: { k: -75, element: 'C', rate: 0.96 },
    range: { C: [0.5, 2], Mn: [0, 3], Si: [0, 3], Cr: [0, 5], Ni: [0, 5], Mo: [0, 2] },
    rangeFrom: { standing: 'common-practice', source: 'made for high-carbon steels; the rest assumed' },
    errorCelsius: null,
  },
];
