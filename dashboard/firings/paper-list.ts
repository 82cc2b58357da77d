import type { ChartMark } from '../charts/types.ts';

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

/** How much of each list goes on paper, so that a record fits two pages. */
export interface PaperBudget {
  readonly pieces: number;
  readonly marks: number;
  readonly alarms: number;
  readonly notes: number;
  /** All notes together. */
  readonly noteCharacters: number;
  /** `dense`: smaller rows, one reason each. `bare`: the verdicts alone. */
  readonly rows: 'full' | 'dense' | 'bare';
}

/** The tables of segments and of pieces are cut last, so what they take is taken from the lists. */
export function paperBudget(segments: number, pieces = 0): PaperBudget {
  const whole = budgetFor(segments);
  if (pieces === 0) return whole;
  return {
    ...whole,
    marks: Math.ceil(whole.marks / 2),
    alarms: Math.ceil(whole.alarms / 2),
    notes: Math.ceil(whole.notes / 2),
    noteCharacters: whole.noteCharacters / 2,
  };
}

function budgetFor(segments: number): PaperBudget {
  if (segments <= 5)
    return { pieces: 6, marks: 36, alarms: 10, notes: 8, noteCharacters: 1200, rows: 'full' };
  if (segments <= 12)
    return { pieces: 5, marks: 24, alarms: 8, notes: 5, noteCharacters: 800, rows: 'dense' };
  if (segments <= 24)
    return { pieces: 4, marks: 12, alarms: 4, notes: 2, noteCharacters: 300, rows: 'dense' };
  return { pieces: 3, marks: 12, alarms: 3, notes: 1, noteCharacters: 200, rows: 'bare' };
}

/** The gravest marks when there are too many, in the order of time again. */
export function marksForPaper(marks: readonly ChartMark[], most: number): PaperList<ChartMark> {
  const byGravity = [...marks].sort((a, b) => Number(a.shape === 'event') - Number(b.shape === 'event'));
  const { shown, more } = forPaper(byGravity, most);
  return { shown: [...shown].sort((a, b) => a.at - b.at), more };
}
