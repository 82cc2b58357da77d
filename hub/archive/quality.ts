import type { Quality, QualityReason, Reading } from '../contract/reading.ts';

/** How a quality is kept: by its place in this list. Append only. */
const QUALITIES: readonly Quality[] = ['good', 'uncertain', 'bad'];

export interface StoredReading {
  at: number;
  value: number;
  quality: number;
  reason: QualityReason | null;
}

export function qualityCode(quality: Quality): number {
  return QUALITIES.indexOf(quality);
}

/** Only good readings are charted when thinned, and only they close a gap. */
export const GOOD = qualityCode('good');

/** A quality that nobody knows is bad: it must never be judged. */
export function toReading({ at, value, quality, reason }: StoredReading): Reading {
  const known = QUALITIES[quality] ?? 'bad';
  return reason === null ? { at, value, quality: known } : { at, value, quality: known, reason };
}
