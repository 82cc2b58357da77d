/**
 * How a number about probes came to us, carried with the number so that the
 * product can say so too.
 */

/**
 * - `published-secondary`: seen in a reprint or transcription that names the source
 * - `from-memory`: recalled, not seen
 * - `common-practice`: trade habit, no source
 * - `derived-here`: computed in this project from the sources named
 */
export type ProbeStanding = 'published-secondary' | 'from-memory' | 'common-practice' | 'derived-here';

export interface ProbeProvenance {
  readonly standing: ProbeStanding;
  readonly source: string;
  /** What a reader should know before trusting it, e.g. that reprints disagree. */
  readonly note?: string;
}
