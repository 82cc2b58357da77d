import { schedulesWords } from '../words/schedules.ts';

const MOST_CHARACTERS = 80;

/** A free name for a copy: "Anneal, copy", then "Anneal, copy 2"; never longer than a name may be. */
export function copyName(name: string, taken: readonly string[]): string {
  for (let count = 1; ; count += 1) {
    const tail = count === 1 ? schedulesWords.copyOf('') : `${schedulesWords.copyOf('')} ${count}`;
    const candidate = `${name.slice(0, MOST_CHARACTERS - tail.length)}${tail}`;
    if (!taken.includes(candidate)) return candidate;
  }
}
