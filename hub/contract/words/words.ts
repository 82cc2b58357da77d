import { ENGLISH } from './en.ts';
import type { Words } from './types.ts';

/** The languages the hub speaks. A second one is a second file and a row here. */
const LANGUAGES = { en: ENGLISH } as const satisfies Record<string, Words>;
export type Language = keyof typeof LANGUAGES;

/** The words of one language. */
export function words(language: Language): Words {
  return LANGUAGES[language];
}
