/**
 * How far a number of this folder can be trusted, so that a screen can say so.
 * - `published`: read in a published text, named in the source
 * - `derived`: worked out here from published numbers
 * - `common-practice`: shop lore without a source
 * - `memory`: recalled from a named source that nobody has opened yet
 */
export type Standing = 'published' | 'derived' | 'common-practice' | 'memory';

/** A number with the range that it may honestly lie in. All three share one unit. */
export interface Band {
  readonly low: number;
  readonly value: number;
  readonly high: number;
}
