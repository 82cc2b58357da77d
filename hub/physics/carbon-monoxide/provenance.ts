/**
 * How a number about air or gas came to us, carried with the number so that the
 * product can say so too.
 */

/**
 * - `published-primary`: seen in the law, standard or paper itself
 * - `published-secondary`: seen in a public text that quotes it
 * - `from-memory`: recalled, not seen; to be confirmed before it carries weight
 * - `common-practice`: trade habit, no source
 * - `derived-here`: computed in this project from the sources named
 */
export type Standing =
  | 'published-primary'
  | 'published-secondary'
  | 'from-memory'
  | 'common-practice'
  | 'derived-here';

export interface Provenance {
  readonly standing: Standing;
  readonly source: string;
  /** What a reader should know before trusting it. */
  readonly note?: string;
}
