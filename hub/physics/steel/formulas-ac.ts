/** Ac1 and Ac3 from composition: the published regressions, first the one that gives the value. */
import type { ElementRanges } from './composition.ts';
import type { Provenance } from './estimate.ts';
import type { CompositionFormula } from './formula.ts';

const GORNI: Provenance = {
  standing: 'published-secondary',
  source: 'Gorni, Steel Forming and Heat Treating Handbook (2009 and 2012 texts)',
};

/** Plain and low-alloy steel, where a formula's paper states no limits of its own. */
const LOW_ALLOY: ElementRanges = {
  Mn: [0, 2],
  Si: [0, 2],
  Cr: [0, 2.5],
  Ni: [0, 4],
  Mo: [0, 1],
  V: [0, 0.5],
  W: [0, 1],
};

const NOT_STATED: Provenance = {
  standing: 'common-practice',
  source: 'limits not stated with the formula; low-alloy steel assumed',
};

const ANDREWS_RANGE: ElementRanges = { C: [0, 0.6], Mn: [0, 4.9], Cr: [0, 5], Ni: [0, 5], Mo: [0, 5.4] };
const ANDREWS_RANGE_FROM: Provenance = {
  standing: 'from-memory',
  source: 'Andrews 1965; C below 0.6 % also in Gorni',
};

export const ANDREWS_AC1: CompositionFormula = {
  name: 'Andrews 1965 Ac1',
  from: { standing: 'published-secondary', source: 'Andrews, JISI 203 (1965) 721-727, as given by Gorni' },
  unit: 'celsius',
  constant: 723,
  linear: { Mn: -10.7, Ni: -16.9, Si: 29.1, Cr: 16.9, As: 290, W: 6.38 },
  range: ANDREWS_RANGE,
  rangeFrom: ANDREWS_RANGE_FROM,
  errorCelsius: 11.5,
};

/**
 * Printed by Andrews as `910 - 203 sqrt(C) - 15.2 Ni + 44.7 Si + 104 V + 31.5 Mo
 * + 13.1 W - (30 Mn + 11 Cr + 20 Cu - 700 P - 400 Al - 120 As - 400 Ti)`.
 * Many copies drop the bracket and keep the inner signs. That would make the
 * ferrite formers P, Al, As and Ti lower Ac3, and copper raise it: both wrong.
 */
export const ANDREWS_AC3: CompositionFormula = {
  name: 'Andrews 1965 Ac3',
  from: {
    standing: 'published-secondary',
    source:
      'Andrews, JISI 203 (1965) 721-727, as given by Gorni; bracket signs by two further transcriptions',
  },
  unit: 'celsius',
  constant: 910,
  sqrtCarbon: -203,
  linear: {
    Ni: -15.2,
    Si: 44.7,
    V: 104,
    Mo: 31.5,
    W: 13.1,
    Mn: -30,
    Cr: -11,
    Cu: -20,
    P: 700,
    Al: 400,
    As: 120,
    Ti: 400,
  },
  range: ANDREWS_RANGE,
  rangeFrom: ANDREWS_RANGE_FROM,
  errorCelsius: 16.7,
};

export const GRANGE_AC1: CompositionFormula = {
  name: 'Grange 1961 Ae1',
  from: {
    standing: 'published-secondary',
    source: 'Grange, Metal Progress 79 (April 1961) 73-75, as given by Gorni',
  },
  unit: 'fahrenheit',
  constant: 1333,
  linear: { Mn: -25, Si: 40, Cr: 42, Ni: -26 },
  range: LOW_ALLOY,
  rangeFrom: NOT_STATED,
  errorCelsius: null,
};

export const GRANGE_AC3: CompositionFormula = {
  name: 'Grange 1961 Ae3',
  from: {
    standing: 'published-secondary',
    source: 'Grange, Metal Progress 79 (April 1961) 73-75, as given by Gorni',
  },
  unit: 'fahrenheit',
  constant: 1570,
  linear: { C: -323, Mn: -25, Si: 80, Cr: -3, Ni: -32 },
  range: { ...LOW_ALLOY, C: [0, 0.77] },
  rangeFrom: NOT_STATED,
  errorCelsius: null,
};

export const ELDIS_AC1: CompositionFormula = {
  name: 'Eldis 1982 Ae1',
  from: GORNI,
  unit: 'celsius',
  constant: 712,
  linear: { Mn: -17.8, Ni: -19.1, Si: 20.1, Cr: 11.9, Mo: 9.8 },
  range: { ...LOW_ALLOY, C: [0, 0.6] },
  rangeFrom: GORNI,
  errorCelsius: null,
};

export const ELDIS_AC3: CompositionFormula = {
  name: 'Eldis 1982 Ae3',
  from: GORNI,
  unit: 'celsius',
  constant: 871,
  sqrtCarbon: -254.4,
  linear: { Ni: -14.2, Si: 51.7 },
  range: { ...LOW_ALLOY, C: [0, 0.6] },
  rangeFrom: GORNI,
  errorCelsius: null,
};

export const HOUGARDY_AC1: CompositionFormula = {
  name: 'Hougardy 1984 Ac1',
  from: {
    standing: 'published-secondary',
    source:
      'Hougardy, Werkstoffkunde Stahl (1984) p. 229, start of the line as given by Gorni; V term from memory',
  },
  unit: 'celsius',
  constant: 739,
  linear: { C: -22, Mn: -7, Si: 2, Cr: 14, Mo: 13, Ni: -13, V: 20 },
  range: LOW_ALLOY,
  rangeFrom: NOT_STATED,
  errorCelsius: null,
};

export const HOUGARDY_AC3: CompositionFormula = {
  name: 'Hougardy 1984 Ac3',
  from: {
    standing: 'published-secondary',
    source: 'Hougardy, Werkstoffkunde Stahl (1984) p. 229, one transcription',
  },
  unit: 'celsius',
  constant: 902,
  linear: { C: -255, Mn: -11, Si: 19, Cr: -5, Mo: 13, Ni: -20, V: 55 },
  range: { ...LOW_ALLOY, C: [0, 0.77] },
  rangeFrom: NOT_STATED,
  errorCelsius: null,
};

const TRZASKA_RANGE: ElementRanges = {
  C: [0.06, 0.68],
  Mn: [0.13, 2.04],
  Si: [0.12, 1.75],
  Cr: [0, 2.3],
  Ni: [0, 3.85],
  Mo: [0, 1.05],
  V: [0, 0.38],
  Cu: [0, 0.38],
};
const TRZASKA: Provenance = {
  standing: 'from-memory',
  source: 'Trzaska, Arch. Metall. Mater. 61 (2016) 981-986',
};

export const TRZASKA_AC1: CompositionFormula = {
  name: 'Trzaska 2016 Ac1',
  from: TRZASKA,
  unit: 'celsius',
  constant: 742,
  linear: { C: -29, Mn: -14, Si: 13, Cr: 16, Ni: -17, Mo: -16, V: 45, Cu: 36 },
  range: TRZASKA_RANGE,
  rangeFrom: TRZASKA,
  errorCelsius: null,
};

export const TRZASKA_AC3: CompositionFormula = {
  name: 'Trzaska 2016 Ac3',
  from: TRZASKA,
  unit: 'celsius',
  constant: 925,
  sqrtCarbon: -219,
  linear: { Mn: -7, Si: 39, Ni: -16, Mo: 13, V: 97 },
  range: TRZASKA_RANGE,
  rangeFrom: TRZASKA,
  errorCelsius: null,
};
