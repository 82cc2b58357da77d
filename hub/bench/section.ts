import type { Section } from '../contract/load.ts';

/**
 * Volume over heated surface, mm: while the heat that reaches the surface rules (furnace air and radiation, not
 * the conduction inside), the time to heat through goes with it. Plate t/2, long bar d/4, sphere d/6.
 * Source: lumped capacity, rho c (V/A) / h, from memory: Incropera, Fundamentals of Heat and Mass Transfer, 5.1.
 */
export function heatLengthMm({ shape, thicknessMm }: Pick<Section, 'shape' | 'thicknessMm'>): number {
  switch (shape) {
    case 'plate':
      return thicknessMm / 2;
    case 'bar':
    case 'cylinder':
      return thicknessMm / 4;
    case 'sphere':
      return thicknessMm / 6;
    default:
      return shape satisfies never;
  }
}

/**
 * How much longer the slowest of a load may take to heat through than the quickest. Twice: the thin piece then
 * soaks for one heating-through of its own longer than it needs. Common practice, no source.
 */
export const MOST_SECTION_FACTOR = 2;

/** Slowest over quickest; 1 for a single piece. */
export function sectionFactor(lengthsMm: readonly number[]): number {
  return lengthsMm.length === 0 ? 1 : Math.max(...lengthsMm) / Math.min(...lengthsMm);
}
