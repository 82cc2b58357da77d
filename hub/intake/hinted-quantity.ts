import type { Quantity } from '../contract/units.ts';

/**
 * What a channel measures by its own name, for units that several quantities share (ppm, %). Only names that
 * leave no doubt: nobody has set the channel up yet.
 */
const HINTS: readonly (readonly [RegExp, Quantity])[] = [
  [/(^|[^a-z0-9])(co2|carbon-?dioxide)($|[^a-z0-9])/i, 'carbon-dioxide'],
  [/(^|[^a-z0-9])(o2|oxygen)($|[^a-z0-9])/i, 'oxygen'],
  [/(^|[^a-z0-9])(rh|humidity)($|[^a-z0-9])/i, 'relative-humidity'],
];

/** The quantity that a channel's name says, or null. */
export function hintedQuantity(name: string): Quantity | null {
  return HINTS.find(([pattern]) => pattern.test(name))?.[1] ?? null;
}
