import type { Firing } from '../contract/firing.ts';
import type { FiringFilter } from './types.ts';

/** More words than this narrow nothing down. */
const MOST_WORDS = 8;

/** What a search looks in, in small letters: SQLite itself folds ASCII alone. */
export function firingWords({ title, note, schedule, pieces }: FiringText): string {
  return [title, note, schedule.name, ...pieces.map(({ mark }) => mark)].join('\n').toLowerCase();
}

type FiringText = Pick<Firing, 'title' | 'note'> & {
  readonly schedule: Pick<Firing['schedule'], 'name'>;
  readonly pieces: readonly { readonly mark: string }[];
};

interface NamedFurnace {
  readonly id: string;
  readonly name: string;
}

export interface FiringTerms {
  /** Of firings `f`, joined by AND. */
  readonly terms: readonly string[];
  readonly values: Readonly<Record<string, unknown>>;
  /** The index to walk, as SQL; empty: SQLite chooses. */
  readonly index: string;
}

/**
 * The terms of a filter. Each word must stand in the firing's words or in the name of its furnace. Only what is asked
 * for stands in it, and every column of a search is in the index that it walks.
 */
export function firingTerms(filter: FiringFilter, furnaces: readonly NamedFurnace[]): FiringTerms {
  const words = (filter.q ?? '').toLowerCase().split(/\s+/).filter(Boolean).slice(0, MOST_WORDS);
  const terms = [
    filter.status === undefined ? null : 'f.status = @status',
    filter.furnaceId === undefined ? null : 'f.furnace_id = @furnaceId',
    filter.scheduleId === undefined ? null : "f.schedule ->> '$.id' = @scheduleId",
    filter.verdict === undefined ? null : 'f.verdict = @verdict',
    filter.simulated === undefined ? null : 'f.simulated = @simulated',
    filter.from === undefined ? null : 'f.started_at >= @from',
    filter.before === undefined ? null : 'f.started_at < @before',
    filter.after === undefined
      ? null
      : '(f.started_at, f.id) < (SELECT started_at, id FROM firings WHERE id = @after)',
    ...words.map(
      (_, n) =>
        `(instr(f.search, @word${n}) > 0 OR f.furnace_id IN (SELECT value FROM json_each(@furnaces${n})))`,
    ),
  ].filter((term) => term !== null);
  const values = Object.fromEntries(
    words.flatMap((word, n) => [
      [`word${n}`, word],
      [`furnaces${n}`, JSON.stringify(namesWith(furnaces, word))],
    ]),
  );
  const simulated = filter.simulated === undefined ? null : Number(filter.simulated);
  return { terms, values: { ...filter, ...values, simulated }, index: indexFor(filter, words.length) };
}

function namesWith(furnaces: readonly NamedFurnace[], word: string): string[] {
  return furnaces.filter(({ name }) => name.toLowerCase().includes(word)).map(({ id }) => id);
}

/** Where nothing narrows it, SQLite might walk the widest index there is: so it is told. */
function indexFor(filter: FiringFilter, words: number): string {
  if (filter.scheduleId !== undefined) return 'INDEXED BY firings_by_schedule';
  if (words > 0 || filter.verdict !== undefined || filter.simulated !== undefined) {
    return 'INDEXED BY firings_by_words';
  }
  const narrowed = filter.status !== undefined || filter.furnaceId !== undefined;
  return narrowed ? '' : 'INDEXED BY firings_by_start';
}
