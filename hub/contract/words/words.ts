import type { Language } from '../language.ts';
import { GERMAN } from './de.ts';
import { ENGLISH } from './en.ts';
import type { Words } from './types.ts';

/** What the hub says, language by language. */
const SPOKEN: Readonly<Record<Language, Words>> = { en: ENGLISH, de: GERMAN };

/** The words of one language. */
export function words(language: Language): Words {
  return SPOKEN[language];
}
