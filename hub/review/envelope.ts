import type { Envelope } from '../contract/comparison.ts';

/**
 * Sample quantile by straight interpolation between order statistics at 1 + (n - 1) p.
 *
 * Source: definition 7 of Hyndman & Fan, The American Statistician 50 (1996) 361-365, as commonly computed.
 *
 * @param sorted rising, one value at least
 * @param share 0 to 1
 */
export function quantile(sorted: readonly number[], share: number): number {
  const at = (sorted.length - 1) * share;
  const low = sorted[Math.floor(at)] ?? Number.NaN;
  const high = sorted[Math.ceil(at)] ?? Number.NaN;
  return low + (high - low) * (at - Math.floor(at));
}

/** What a set of curves did together, entry by entry. Quartiles only where four or more are known. */
export function envelopeOf(curves: readonly (readonly (number | null)[])[]): Envelope {
  const entries = Math.max(0, ...curves.map((curve) => curve.length));
  const columns = Array.from({ length: entries }, (_, index) =>
    curves
      .map((curve) => curve[index] ?? null)
      .filter((value) => value !== null)
      .sort((a, b) => a - b),
  );
  const at = (share: number, least = 1) =>
    columns.map((column) => (column.length < least ? null : quantile(column, share)));
  return {
    size: curves.length,
    count: columns.map((column) => column.length),
    lowest: at(0),
    lowerQuartile: at(0.25, LEAST_FOR_QUARTILES),
    median: at(0.5),
    upperQuartile: at(0.75, LEAST_FOR_QUARTILES),
    highest: at(1),
  };
}

const LEAST_FOR_QUARTILES = 4;
