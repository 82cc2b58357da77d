/** Charts of counts: faults per piece or batch (c), and the share of pieces that failed (p). */
import { PhysicsError } from '../errors.ts';
import { meanOf, requireValues, sum } from './describe.ts';
import type { ControlLimits } from './individuals-chart.ts';

export interface CountChart {
  readonly limits: ControlLimits;
  /** Indices strictly above and strictly below the limits. */
  readonly above: readonly number[];
  readonly below: readonly number[];
}

/** One batch of a p chart. */
export interface Batch {
  readonly pieces: number;
  readonly failed: number;
}

export interface ShareChart {
  /** Share of failed pieces over all batches, 0 to 1. */
  readonly centre: number;
  readonly shares: readonly number[];
  /** One for every batch: small batches have wider limits. */
  readonly limits: readonly ControlLimits[];
  readonly above: readonly number[];
  readonly below: readonly number[];
}

/**
 * Chart of counts over equal opportunities: mean ± 3 √mean, never below 0.
 *
 * Source: NIST/SEMATECH e-Handbook 6.3.3.1. The limits are those of a normal curve, poor below a mean of about 5.
 *
 * @throws PhysicsError `bad-input` for no counts, or one that is not a whole number of 0 or more
 */
export function countChart(counts: readonly number[]): CountChart {
  requireValues(counts, 1);
  for (const count of counts) requireCount(count);
  const limits = limitsAround(meanOf(counts), Math.sqrt(meanOf(counts)), Number.POSITIVE_INFINITY);
  return { limits, ...outside(counts, () => limits) };
}

/**
 * Chart of the failed share of each batch: mean ± 3 √(p (1 - p) / pieces), within 0 and 1.
 *
 * Source: NIST/SEMATECH e-Handbook 6.3.3.2.
 *
 * @throws PhysicsError `bad-input` for no batches, an empty one, or more failed than pieces
 */
export function shareChart(batches: readonly Batch[]): ShareChart {
  if (batches.length === 0) throw new PhysicsError('bad-input', 'A chart wants at least one batch');
  for (const batch of batches) requireBatch(batch);
  const centre = sum(batches.map((batch) => batch.failed)) / sum(batches.map((batch) => batch.pieces));
  const shares = batches.map((batch) => batch.failed / batch.pieces);
  const limits = batches.map(({ pieces }) =>
    limitsAround(centre, Math.sqrt((centre * (1 - centre)) / pieces), 1),
  );
  return { centre, shares, limits, ...outside(shares, (index) => limits[index]) };
}

function limitsAround(centre: number, sigma: number, most: number): ControlLimits {
  return { centre, lower: Math.max(0, centre - 3 * sigma), upper: Math.min(most, centre + 3 * sigma) };
}

function outside(values: readonly number[], limitsAt: (index: number) => ControlLimits | undefined) {
  const where = (isOutside: (value: number, limits: ControlLimits) => boolean): number[] =>
    [...values.keys()].filter((index) => {
      const limits = limitsAt(index);
      return limits !== undefined && isOutside(values[index] ?? 0, limits);
    });
  return {
    above: where((value, { upper }) => value > upper),
    below: where((value, { lower }) => value < lower),
  };
}

function requireCount(count: number): void {
  if (Number.isInteger(count) && count >= 0) return;
  throw new PhysicsError('bad-input', `A count is a whole number of 0 or more, not ${count}`);
}

function requireBatch({ pieces, failed }: Batch): void {
  requireCount(pieces);
  requireCount(failed);
  if (pieces > 0 && failed <= pieces) return;
  throw new PhysicsError('bad-input', `A batch of ${pieces} pieces cannot have ${failed} failed`);
}
