import { WatchError } from '../../watch/errors.ts';

/** The thing, or a not-found problem that says which. */
export function need<T>(found: T | null, what: string, id: string): T {
  if (found === null) throw new WatchError('not-found', `there is no ${what} with the id ${id}`);
  return found;
}

type Defined<T> = { [K in keyof T]: Exclude<T[K], undefined> };

/** Drops fields that a change does not name, so that they stay as they are. */
export function defined<T extends object>(patch: T): Partial<Defined<T>> {
  const named = Object.entries(patch).filter(([, value]) => value !== undefined);
  return Object.fromEntries(named) as Partial<Defined<T>>;
}
