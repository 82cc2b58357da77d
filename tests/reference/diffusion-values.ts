/** Published and computed values for what time at temperature does, each beside its source. */

/**
 * Carbon in austenite, m²/s, worked out from the formulas named in the columns
 * (Tibbetts 1980 at 0.8 and 0.4 %C; Slycke and Ericsson 1981, Ågren 1986 at
 * 0.8 %C; Wells, Batz and Mehl 1950).
 */
export const AUSTENITE_D: readonly (readonly [
  celsius: number,
  tibbetts08: number,
  tibbetts04: number,
  slycke08: number,
  agren08: number,
  wells: number,
])[] = [
  [780, 3.42e-12, 1.84e-12, 3.23e-12, 2.92e-12, 2.75e-12],
  [800, 4.53e-12, 2.49e-12, 4.3e-12, 3.91e-12, 3.65e-12],
  [850, 8.79e-12, 5.11e-12, 8.41e-12, 7.77e-12, 7.12e-12],
  [900, 1.61e-11, 9.85e-12, 1.55e-11, 1.46e-11, 1.31e-11],
  [950, 2.81e-11, 1.8e-11, 2.73e-11, 2.59e-11, 2.3e-11],
  [1000, 4.69e-11, 3.13e-11, 4.58e-11, 4.4e-11, 3.86e-11],
  [1100, 1.17e-10, 8.42e-11, 1.16e-10, 1.13e-10, 9.69e-11],
];

/** Textbook pair (Callister): D0 m²/s and Q J/mol; kept here only to show what it would say. */
export const TEXTBOOK_PAIR = { d0: 2.3e-5, q: 148_000 } as const;

/** Carbon in ferrite, measured: Budke and Herzig, phys. stat. sol. (a) 127 (1991) 87; K and m²/s. */
export const FERRITE_D: readonly (readonly [kelvin: number, m2s: number])[] = [
  [1123, 3.13e-10],
  [1072, 1.85e-10],
  [1021, 8.02e-11],
  [972, 4.7e-11],
  [884, 1.44e-11],
  [788, 3.27e-12],
  [716, 7.88e-13],
  [648, 1.45e-13],
  [596, 2.72e-14],
];

/** Decarburised depth, 0.8 %C, Tibbetts, surface carbon 0, µm to 90 and 50 % of the carbon: computed. */
export const DECARBURISED: readonly (readonly [
  celsius: number,
  hours: number,
  to90: number,
  to50: number,
])[] = [
  [800, 0.25, 149, 61],
  [800, 1, 297, 122],
  [850, 1, 414, 170],
  [900, 1, 560, 230],
  [1000, 1, 956, 392],
  [1200, 0.5, 1583, 649],
];

/**
 * One hour in air: mm of scale from Paidassi's kp, mg/cm² from Davies, Simnad and
 * Birchenall's kw, that gain as mm of FeO (5.7 g/cm³, 22.27 % O), mm of metal. Computed.
 */
export const SCALE: readonly (readonly [
  celsius: number,
  fromKp: number,
  gain: number,
  fromKw: number,
  metal: number,
])[] = [
  [800, 0.111, 15.9, 0.125, 0.071],
  [900, 0.25, 30.8, 0.243, 0.137],
  [1000, 0.495, 53.7, 0.423, 0.238],
  [1200, 1.47, 130, 1.03, 0.577],
];

/** Lee and Lee, ISIJ Int. 48 (2008) 1755: carbon, °C, µm after one hour; computed from the formula. */
export const LEE_LEE: readonly (readonly [carbon: number, celsius: number, micrometres: number])[] = [
  [0.4, 900, 40.1],
  [0.8, 850, 22.8],
  [0.8, 900, 34.6],
  [0.8, 1000, 72.7],
  [0.8, 1100, 136.8],
];

/** ASTM E112 (from memory): intercept µm and grain number. */
export const GRAIN_NUMBERS: readonly (readonly [micrometres: number, g: number])[] = [
  [320, 0],
  [113.1, 3],
  [56.6, 5],
  [40, 6],
  [20, 8],
  [10, 10],
];
