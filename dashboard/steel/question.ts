import type { Composition } from '../../hub/contract/compute/steel-choice.ts';

/** The steel that the page is about: a grade, a composition, or the certificate of a grade. */
export interface SteelQuestion {
  readonly steel?: string;
  readonly composition?: Composition;
}

/** Null while nothing is named. */
export function questionOf(grade: string, composition: Composition | null): SteelQuestion | null {
  if (grade === '' && composition === null) return null;
  return {
    ...(grade === '' ? {} : { steel: grade }),
    ...(composition === null ? {} : { composition }),
  };
}
