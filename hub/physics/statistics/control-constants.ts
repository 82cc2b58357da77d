/** Constants of Shewhart charts, computed from the normal distribution instead of copied with three digits. */
import { lgam } from 'cephes';
import { PhysicsError } from '../errors.ts';
import { normalShareBelow } from './distributions.ts';

/** Names as in ASTM and NIST tables; the sample is `size` independent normal values of standard deviation 1. */
export interface ControlConstants {
  readonly size: number;
  /** Mean of the range, and its standard deviation. */
  readonly d2: number;
  readonly d3: number;
  /** Mean of the sample standard deviation. */
  readonly c4: number;
  /** Limits of averages, from the mean range (A2) and from the mean standard deviation (A3). */
  readonly A2: number;
  readonly A3: number;
  /** Limits of ranges, as multiples of their mean. */
  readonly D3: number;
  readonly D4: number;
  /** Limits of standard deviations, as multiples of their mean. */
  readonly B3: number;
  readonly B4: number;
  /** Limits of individual values, from the mean (moving) range: 3 / d2. */
  readonly E2: number;
}

const LARGEST = 25;
/** Width of a step of the integrals, and where the tails end. The sums below err by less than 1e-9. */
const STEP = 0.02;
const TAIL = 8;
const LONGEST_RANGE = 12;

const known = new Map<number, ControlConstants>();

/**
 * The constants for samples of a size.
 *
 * @param size 2 to 25, whole
 * @throws PhysicsError `out-of-range`
 */
export function controlConstants(size: number): ControlConstants {
  if (!(Number.isInteger(size) && size >= 2 && size <= LARGEST)) {
    throw new PhysicsError('out-of-range', `A sample has 2 to ${LARGEST} values here, not ${size}`, { size });
  }
  const found = known.get(size) ?? compute(size);
  known.set(size, found);
  return found;
}

function compute(size: number): ControlConstants {
  const { mean: d2, deviation: d3 } = rangeMoments(size);
  const c4 = Math.sqrt(2 / (size - 1)) * Math.exp(lgam(size / 2) - lgam((size - 1) / 2));
  const root = Math.sqrt(size);
  const ofRange = (3 * d3) / d2;
  const ofDeviation = (3 * Math.sqrt(1 - c4 * c4)) / c4;
  return {
    size,
    d2,
    d3,
    c4,
    A2: 3 / (d2 * root),
    A3: 3 / (c4 * root),
    D3: Math.max(0, 1 - ofRange),
    D4: 1 + ofRange,
    B3: Math.max(0, 1 - ofDeviation),
    B4: 1 + ofDeviation,
    E2: 3 / d2,
  };
}

/** Mean and standard deviation of the range: integrals of P(range > w) and of 2 w P(range > w), by Simpson. */
function rangeMoments(size: number): { mean: number; deviation: number } {
  const below = normalTable();
  const steps = Math.round(LONGEST_RANGE / STEP);
  let first = 0;
  let second = 0;
  for (let i = 0; i <= steps; i++) {
    const weight = i === 0 || i === steps ? 1 : i % 2 === 1 ? 4 : 2;
    const longer = 1 - rangeShareBelow(size, i, below);
    first += weight * longer;
    second += weight * 2 * i * STEP * longer;
  }
  const mean = (first * STEP) / 3;
  return { mean, deviation: Math.sqrt((second * STEP) / 3 - mean * mean) };
}

/** P(range <= w) = n ∫ φ(x) (Φ(x + w) - Φ(x))^(n-1) dx, for w of `shift` steps. */
function rangeShareBelow(size: number, shift: number, below: readonly number[]): number {
  let total = 0;
  for (let i = 0; i * STEP <= 2 * TAIL; i++) {
    const x = i * STEP - TAIL;
    const density = Math.exp((-x * x) / 2) / Math.sqrt(2 * Math.PI);
    total += density * ((below[i + shift] ?? 1) - (below[i] ?? 1)) ** (size - 1);
  }
  return size * total * STEP;
}

function normalTable(): number[] {
  const length = Math.round((2 * TAIL + LONGEST_RANGE) / STEP) + 1;
  return Array.from({ length }, (_, i) => normalShareBelow(i * STEP - TAIL));
}
