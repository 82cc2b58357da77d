/**
 * Tolerance classes of thermocouples: IEC 60584-1 classes 1 to 3 and ASTM E230
 * standard and special limits of error.
 *
 * Each row says: over this range, the half-width is the greater of a constant
 * and a fraction of |t| (t in °C).
 */

import type { ProbeProvenance } from './probe-provenance.ts';
import type { ThermocoupleType } from './thermocouple-direct-table.ts';

export type ToleranceClass = 'iec-1' | 'iec-2' | 'iec-3' | 'astm-standard' | 'astm-special';

export interface ToleranceRow {
  readonly types: readonly ThermocoupleType[];
  readonly class: ToleranceClass;
  readonly lowCelsius: number;
  readonly highCelsius: number;
  /** Constant part: the half-width is never less than this, °C. */
  readonly floorCelsius: number;
  /** Fraction of |t|; with `beyondCelsius`, of what t exceeds it by, on top of the floor. */
  readonly fraction: number;
  readonly beyondCelsius?: number;
  readonly from: ProbeProvenance;
}

const iec: ProbeProvenance = {
  standing: 'published-secondary',
  source: 'IEC 60584-1 (as IEC 584-2 / JIS C1602) tolerance table, reprinted by a sensor maker',
};

const iecRSClass1: ProbeProvenance = {
  standing: 'from-memory',
  source: 'IEC 60584-1, class 1 of types R and S',
  note: 'the part up to 1100 °C is in the reprint; the slope above it is from memory',
};

const astm: ProbeProvenance = {
  standing: 'published-secondary',
  source: 'ASTM E230 Table 1, reprinted by three wire and sensor makers',
};

const astmColdK: ProbeProvenance = {
  ...astm,
  note: 'most reprints give 2 %, one gives 1 %; the wider is used',
};

type Span = readonly [lowCelsius: number, highCelsius: number];
type Size = readonly [floorCelsius: number, fraction: number];

function row(
  types: readonly ThermocoupleType[],
  toleranceClass: ToleranceClass,
  [lowCelsius, highCelsius]: Span,
  [floorCelsius, fraction]: Size,
  from: ProbeProvenance,
): ToleranceRow {
  return { types, class: toleranceClass, lowCelsius, highCelsius, floorCelsius, fraction, from };
}

/** Searched in order: where two rows share an end, the first one answers. */
export const toleranceRows: readonly ToleranceRow[] = [
  row(['K', 'N'], 'iec-1', [-40, 1000], [1.5, 0.004], iec),
  row(['K', 'N'], 'iec-2', [-40, 1200], [2.5, 0.0075], iec),
  row(['K', 'N', 'E'], 'iec-3', [-200, 40], [2.5, 0.015], iec),
  row(['J'], 'iec-1', [-40, 750], [1.5, 0.004], iec),
  row(['J'], 'iec-2', [-40, 750], [2.5, 0.0075], iec),
  row(['E'], 'iec-1', [-40, 800], [1.5, 0.004], iec),
  row(['E'], 'iec-2', [-40, 900], [2.5, 0.0075], iec),
  row(['T'], 'iec-1', [-40, 350], [0.5, 0.004], iec),
  row(['T'], 'iec-2', [-40, 350], [1, 0.0075], iec),
  row(['T'], 'iec-3', [-200, 40], [1, 0.015], iec),
  row(['R', 'S'], 'iec-1', [0, 1100], [1, 0], iec),
  { ...row(['R', 'S'], 'iec-1', [1100, 1600], [1, 0.003], iecRSClass1), beyondCelsius: 1100 },
  row(['R', 'S'], 'iec-2', [0, 1600], [1.5, 0.0025], iec),
  row(['B'], 'iec-2', [600, 1700], [0, 0.0025], iec),
  row(['B'], 'iec-3', [600, 1700], [4, 0.005], iec),
  row(['K', 'N'], 'astm-standard', [0, 1260], [2.2, 0.0075], astm),
  row(['K', 'N'], 'astm-special', [0, 1260], [1.1, 0.004], astm),
  row(['J'], 'astm-standard', [0, 760], [2.2, 0.0075], astm),
  row(['J'], 'astm-special', [0, 760], [1.1, 0.004], astm),
  row(['E'], 'astm-standard', [0, 870], [1.7, 0.005], astm),
  row(['E'], 'astm-special', [0, 870], [1, 0.004], astm),
  row(['T'], 'astm-standard', [0, 370], [1, 0.0075], astm),
  row(['T'], 'astm-special', [0, 370], [0.5, 0.004], astm),
  row(['R', 'S'], 'astm-standard', [0, 1480], [1.5, 0.0025], astm),
  row(['R', 'S'], 'astm-special', [0, 1480], [0.6, 0.001], astm),
  row(['B'], 'astm-standard', [870, 1700], [0, 0.005], astm),
  row(['B'], 'astm-special', [870, 1700], [0, 0.0025], astm),
  row(['T'], 'astm-standard', [-200, 0], [1, 0.015], astm),
  row(['E'], 'astm-standard', [-200, 0], [1.7, 0.01], astm),
  row(['K'], 'astm-standard', [-200, 0], [2.2, 0.02], astmColdK),
];
