import { type Composition, ELEMENTS, type Element } from '../../hub/contract/compute/steel-choice.ts';
import type { ApiError } from '../api/error.ts';
import { readNumber } from '../parts/number-entry.ts';

/** What a steel is made of, as typed and as asked. Pure. */

/** The elements of an ordinary certificate; the others wait behind a button. */
export const COMMON_ELEMENTS: readonly Element[] = ['C', 'Mn', 'Si', 'Cr', 'Ni', 'Mo', 'V', 'W', 'P', 'S'];

export type PercentTexts = Readonly<Partial<Record<Element, string>>>;
export type PercentFaults = Readonly<Partial<Record<Element, string>>>;

export type ReadComposition =
  | { readonly ok: true; readonly composition: Composition | null }
  | { readonly ok: false; readonly faults: PercentFaults };

/**
 * The composition that was typed; null when every field is empty. Only what is no number at all is refused here:
 * what a steel may hold is the hub's to say, so that the two never disagree.
 */
export function readComposition(texts: PercentTexts): ReadComposition {
  const percents: Partial<Record<Element, number>> = {};
  const faults: Partial<Record<Element, string>> = {};
  for (const element of ELEMENTS) {
    const entry = readNumber(texts[element] ?? '');
    if (!entry.ok) faults[element] = entry.message;
    else if (entry.value !== null) percents[element] = entry.value;
  }
  if (Object.keys(faults).length > 0) return { ok: false, faults };
  if (Object.keys(percents).length === 0) return { ok: true, composition: null };
  // Carbon left out is sent as left out: the hub refuses it, and its words appear beside the field.
  return { ok: true, composition: percents as Composition };
}

/** Percents as texts of the form. */
export function percentTexts(percents: Readonly<Record<string, number>>): PercentTexts {
  const texts: Partial<Record<Element, string>> = {};
  for (const element of ELEMENTS) {
    const percent = percents[element];
    if (percent !== undefined) texts[element] = String(percent);
  }
  return texts;
}

/** Full names that the hub's refusals begin with, besides the symbols. */
const NAMED: readonly (readonly [string, Element])[] = [
  ['Carbon ', 'C'],
  ['The composition names no carbon', 'C'],
];

/**
 * Where a refusal of the hub belongs: beside the field of the element that it speaks of, or null when it speaks of
 * the whole (a sum, a grade that does not exist).
 */
export function refusedElements(error: ApiError): PercentFaults {
  const faults: Partial<Record<Element, string>> = {};
  for (const element of ELEMENTS) {
    const message = error.fieldError(`/composition/${element}`);
    if (message !== undefined) faults[element] = message;
  }
  const detail = error.problem?.detail ?? '';
  const named =
    NAMED.find(([start]) => detail.startsWith(start))?.[1] ??
    ELEMENTS.find((element) => detail.startsWith(`${element} is `));
  if (named !== undefined) faults[named] ??= detail;
  return faults;
}

/** "C 0.85, Mn 0.75, Si 0.25 %", in the order of the elements; what is absent is left out. */
export function compositionText(percents: Readonly<Record<string, number | undefined>>, before = ''): string {
  const parts = ELEMENTS.flatMap((element) => {
    const percent = percents[element];
    return percent === undefined ? [] : [`${element} ${percent}`];
  });
  return `${before}${parts.join(', ')} %`;
}
