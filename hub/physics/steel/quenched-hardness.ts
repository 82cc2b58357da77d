/** How hard martensite is before tempering: a matter of its carbon. */
import { requireRange } from '../errors.ts';
import { type Estimate, estimate, flag, type Provenance } from './estimate.ts';
import { hvToHrc } from './hardness-scale.ts';
import { interpolate, type Point } from './interpolate.ts';

const A255: Provenance = {
  standing: 'published-secondary',
  source: 'ASTM A255-10, initial hardness polynomial',
};
const HJ: Provenance = {
  standing: 'published-secondary',
  source: 'as-quenched points of Hollomon & Jaffe, Trans. AIME 162 (1945), via a public compilation',
};
const A255_TABLE: Provenance = { standing: 'from-memory', source: 'ASTM A255 table, 50 % martensite' };

/** The polynomial is not to be used above this carbon content, mass %. */
const A255_MAX_CARBON = 0.7;

/** HRC of 100 % martensite, ASTM A255; 0.10 to 0.70 % C only, hence not exported bare. */
function a255Hrc(c: number): number {
  return 33.087 + 50.723 * c + 33.662 * c ** 2 - 2.7048 * c ** 3 - 107.02 * c ** 4 + 43.523 * c ** 5;
}

/** Measured above 0.70 % C. The fall at 1.15 % is retained austenite. */
const MEASURED: readonly Point[] = [
  [A255_MAX_CARBON, a255Hrc(A255_MAX_CARBON)],
  [0.74, 66.5],
  [0.89, 67],
  [0.98, 66.5],
  [1.15, 64.5],
];
const MAX_CARBON = 1.15;

/** "HV = 92 + 828 sqrt(C)": two-point fit to Hodge & Orehoski, Trans. AIME 167 (1946) 627, second-hand. */
function hodgeHrc(c: number): number | null {
  const reading = hvToHrc(92 + 828 * Math.sqrt(c));
  return reading.outcome === 'converted' ? reading.value : null;
}

/** Repeatability of a Rockwell C reading, HRC. */
const READING_HRC = 1;

/**
 * Hardness of untempered martensite, HRC.
 *
 * @param carbonPercent carbon in austenite, 0.10 to 1.15 mass %: ASTM A255 up
 *   to 0.70, measured points above (flag `above-a255`, and
 *   `retained-austenite` from 0.9 %)
 * @throws PhysicsError `out-of-range`
 */
export function quenchedHardness(carbonPercent: number): Estimate {
  const carbon = requireRange('Carbon in austenite', carbonPercent, 0.1, MAX_CARBON, '%');
  const byA255 = carbon <= A255_MAX_CARBON;
  const value = byA255 ? a255Hrc(carbon) : (interpolate(MEASURED, carbon) ?? a255Hrc(A255_MAX_CARBON));
  const other = hodgeHrc(carbon) ?? value;
  const flags = byA255 ? [] : [flag('above-a255', 'Above 0.70 % C: measured points, not the standard')];
  if (carbon >= 0.9)
    flags.push(flag('retained-austenite', 'Retained austenite makes this vary by several points'));
  return estimate({
    value,
    low: Math.min(value, other) - READING_HRC,
    high: Math.max(value, other) + READING_HRC,
    unit: 'HRC',
    formula: byA255 ? 'ASTM A255 initial hardness' : 'Hollomon & Jaffe 1945 as quenched',
    from: byA255 ? A255 : HJ,
    flags,
  });
}

const HALF_MARTENSITE: readonly Point[] = [
  [0.2, 32],
  [0.3, 37],
  [0.4, 43],
  [0.45, 45],
  [0.5, 47],
  [0.6, 51],
];

/**
 * Hardness where half of the steel is martensite, HRC: what the centre of a bar
 * of the critical diameter shows.
 *
 * @param carbonPercent 0.20 to 0.60 mass %
 * @throws PhysicsError `out-of-range`
 */
export function halfMartensiteHardness(carbonPercent: number): Estimate {
  const carbon = requireRange('Carbon', carbonPercent, 0.2, 0.6, '%');
  const value = interpolate(HALF_MARTENSITE, carbon) ?? Number.NaN;
  return estimate({
    value,
    low: value - 2,
    high: value + 2,
    unit: 'HRC',
    formula: 'ASTM A255, 50 % martensite',
    from: A255_TABLE,
  });
}
