/** Paper is bounded: a record that must fit two pages shows the first of each list and says what it left out. */

export interface PaperList<T> {
  readonly shown: readonly T[];
  /** How many were left out. */
  readonly more: number;
}

/** The first `most` entries, and how many there are beyond. */
export function forPaper<T>(entries: readonly T[], most: number): PaperList<T> {
  return { shown: entries.slice(0, most), more: Math.max(0, entries.length - most) };
}

export interface PaperText {
  readonly text: string;
  readonly cut: boolean;
}

/** Texts cut so that all of them together stay within `most` characters, in the order given. */
export function textsForPaper(texts: readonly string[], most: number): PaperText[] {
  let left = most;
  return texts.map((text) => {
    const kept = text.slice(0, Math.max(0, left));
    left -= text.length;
    return { text: kept, cut: kept.length < text.length };
  });
}
