import vectors from './senml-vectors.json' with { type: 'json' };

/**
 * RFC 8428 section 5.1 examples with their resolved forms, and vectors derived from the rules of RFC 8428, RFC
 * 8798 and RFC 9100; the file says of each where it comes from.
 */
export interface SenmlExample {
  readonly id: string;
  readonly input: readonly object[];
  readonly nowUsed?: number;
  readonly resolvedInPackOrder: readonly object[];
  readonly resolvedChronological: readonly object[];
}

export const SENML_EXAMPLES: readonly SenmlExample[] = vectors.vectors;

/** RFC 8428 section 5.1.4, as printed there. */
export const SENML_PRINTED_5_1_4: readonly object[] =
  vectors.vectors.find((vector) => 'printedInRfc514' in vector)?.printedInRfc514 ?? [];

type Derived = Readonly<Record<string, unknown>>;

/** A derived vector by its number, such as `D5`. Throws when the file has none of that name. */
export function derived(number: string): Derived {
  const found = vectors.derivedVectors.find((vector) => vector.id.startsWith(`${number}-`));
  if (!found) throw new Error(`no derived SenML vector ${number}`);
  return found;
}

/** The `cases` of a derived vector. */
export function derivedCases<T>(number: string): readonly T[] {
  const { cases } = derived(number);
  if (!Array.isArray(cases)) throw new Error(`derived SenML vector ${number} has no cases`);
  return cases as readonly T[];
}
