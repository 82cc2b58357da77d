import type { z } from 'zod';
import type { SteelSummary } from '../../hub/contract/compute/steels.ts';

/** What a steel is found by. */
export type Named = Pick<z.infer<typeof SteelSummary>, 'id' | 'title' | 'names'>;

/** Text without what people leave out or write differently: case, spaces, dots, dashes. */
function plain(text: string): string {
  return text.toLowerCase().replaceAll(/[\s.\-_/]/g, '');
}

/**
 * The grades that any of their names fits: those whose name begins with the text first, then those that hold it.
 * Everything for an empty text. The catalogue's own order is kept otherwise.
 */
export function filterGrades<Grade extends Named>(grades: readonly Grade[], text: string): readonly Grade[] {
  const wanted = plain(text);
  if (wanted === '') return grades;
  const namesOf = (grade: Grade) =>
    [grade.id, grade.title, ...grade.names.map(({ name }) => name)].map(plain);
  const begins = grades.filter((grade) => namesOf(grade).some((name) => name.startsWith(wanted)));
  const holds = grades.filter(
    (grade) => !begins.includes(grade) && namesOf(grade).some((name) => name.includes(wanted)),
  );
  return [...begins, ...holds];
}

/** The other names of a grade, near equivalents marked as such. */
export function otherNames(grade: Named): { readonly name: string; readonly same: boolean }[] {
  return grade.names.filter(({ name }) => name !== grade.title).map(({ name, same }) => ({ name, same }));
}
