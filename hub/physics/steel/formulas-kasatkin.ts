/**
 * Kasatkin 1984, the long regression with interactions.
 *
 * Copies differ. Ac1: the nickel term is printed with both signs; minus is used
 * because nickel lowers Ac1 in every other formula. Ac3: copies print Nb 64.5 or
 * 65.6 and Si-Ni -18.6 or +18.6; the pair used here is the one that two of three
 * agree on. A further copy has Ti 70.2 and N -485, which no other supports.
 */
import type { ElementRanges } from './composition.ts';
import type { Provenance } from './estimate.ts';
import type { CompositionFormula } from './formula.ts';

const KASATKIN: Provenance = {
  standing: 'published-secondary',
  source:
    'Kasatkin, Vinokur & Pilyushenko, Met. Sci. Heat Treat. 26 (1984) 27-31, public transcriptions that differ',
};

const RANGE: ElementRanges = {
  C: [0, 0.83],
  Mn: [0, 2],
  Si: [0, 1],
  Cr: [0, 2],
  Mo: [0, 1],
  Ni: [0, 3],
  V: [0, 0.5],
  W: [0, 1],
  Ti: [0, 0.15],
  Al: [0, 0.2],
  Cu: [0, 1],
  Nb: [0, 0.2],
  P: [0, 0.04],
  S: [0, 0.04],
  N: [0, 0.025],
  B: [0, 0.01],
};
const RANGE_FROM: Provenance = { standing: 'from-memory', source: 'Kasatkin 1984, as given by Gorni' };

export const KASATKIN_AC1: CompositionFormula = {
  name: 'Kasatkin 1984 Ac1',
  from: KASATKIN,
  unit: 'celsius',
  constant: 723,
  linear: {
    Mn: -7.08,
    Si: 37.7,
    Cr: 18.1,
    Mo: 44.2,
    Ni: -8.95,
    V: 50.1,
    Al: 21.7,
    W: 3.18,
    S: 297,
    N: -830,
  },
  products: [
    [-11.5, 'C', 'Si'],
    [-14, 'Mn', 'Si'],
    [-3.1, 'Si', 'Cr'],
    [-57.9, 'C', 'Mo'],
    [-15.5, 'Mn', 'Mo'],
    [-5.28, 'C', 'Ni'],
    [-6, 'Mn', 'Ni'],
    [6.77, 'Si', 'Ni'],
    [-0.8, 'Cr', 'Ni'],
    [-27.4, 'C', 'V'],
    [30.8, 'Mo', 'V'],
    [-0.84, 'Cr', 'Cr'],
    [-3.46, 'Mo', 'Mo'],
    [-0.46, 'Ni', 'Ni'],
    [-28, 'V', 'V'],
  ],
  range: RANGE,
  rangeFrom: RANGE_FROM,
  errorCelsius: 10.8,
};

export const KASATKIN_AC3: CompositionFormula = {
  name: 'Kasatkin 1984 Ac3',
  from: KASATKIN,
  unit: 'celsius',
  constant: 912,
  linear: {
    C: -370,
    Mn: -27.4,
    Si: 27.3,
    Cr: -6.35,
    Ni: -32.7,
    V: 95.2,
    Ti: 190,
    Al: 72,
    Nb: 64.5,
    W: 5.57,
    S: 332,
    P: 276,
    N: 485,
    B: -900,
  },
  products: [
    [16.2, 'C', 'Mn'],
    [32.3, 'C', 'Si'],
    [15.4, 'C', 'Cr'],
    [48, 'C', 'Ni'],
    [4.32, 'Si', 'Cr'],
    [-17.3, 'Si', 'Mo'],
    [-18.6, 'Si', 'Ni'],
    [4.8, 'Mn', 'Ni'],
    [40.5, 'Mo', 'V'],
    [174, 'C', 'C'],
    [2.46, 'Mn', 'Mn'],
    [-6.86, 'Si', 'Si'],
    [0.322, 'Cr', 'Cr'],
    [9.9, 'Mo', 'Mo'],
    [1.24, 'Ni', 'Ni'],
    [-60.2, 'V', 'V'],
  ],
  range: RANGE,
  rangeFrom: RANGE_FROM,
  errorCelsius: 14.5,
};
