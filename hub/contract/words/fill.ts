/** Sentences as data: templates with named places, so that a language is a table and two languages can be compared. */

export type Values = Readonly<Record<string, string>>;

const PLACE = /\{([a-zA-Z]+)\}/g;

/**
 * The sentence of a template.
 *
 * @throws Error `word-place-unknown` when the template names a place that there is no value for
 */
export function fill(template: string, values: Values): string {
  return template.replace(PLACE, (_, name: string) => {
    const value = values[name];
    if (value !== undefined) return value;
    throw new Error(`word-place-unknown: "${template}" names {${name}}; there is ${Object.keys(values)}`);
  });
}

/** The names of the places of a template, sorted, each once. */
export function placesOf(template: string): string[] {
  return [...new Set([...template.matchAll(PLACE)].map((match) => match[1] ?? ''))].sort((a, b) =>
    a < b ? -1 : 1,
  );
}
