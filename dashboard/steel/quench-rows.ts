import type { z } from 'zod';
import type {
  HardenabilityAnswer,
  Quench,
  ThroughHardening,
} from '../../hub/contract/compute/hardenability.ts';
import { readNumber } from '../parts/number-entry.ts';

/** The section that is to be hardened, as entered, and what comes of it in each medium. Pure; mm. */

export type Hardenability = z.infer<typeof HardenabilityAnswer>;
export type MediumRow = Hardenability['media'][number];
export type Through = z.infer<typeof ThroughHardening>;

export interface SectionEntry {
  readonly shape: 'bar' | 'plate';
  readonly thickness: string;
  readonly medium: Quench;
}

/** What a blade maker has in hand most often; anything may be entered. */
export const USUAL_SECTION: SectionEntry = { shape: 'bar', thickness: '25', medium: 'good-oil' };

/** The thickness entered in mm, or what is wrong with the text. What is too thin or too thick is the hub's to say. */
export function readThickness(text: string): { readonly mm: number } | { readonly fault: string } {
  const entry = readNumber(text);
  if (!entry.ok) return { fault: entry.message };
  return entry.value === null ? { fault: 'a thickness is needed here' } : { mm: entry.value };
}

/** The row of a medium; undefined when the answer does not hold it. */
export function rowOf(answer: Hardenability, medium: Quench): MediumRow | undefined {
  return answer.media.find((row) => row.medium === medium);
}

/** The right end of the drawing, mm: room for the section and for every band that is known. */
export function drawnToMm(media: readonly MediumRow[], sectionMm: number): number {
  const highs = media.flatMap(({ criticalMm }) => (criticalMm.value === null ? [] : [criticalMm.high]));
  return Math.max(sectionMm * 1.2, ...highs) * 1.04;
}
