import { ApiError } from '../api/error.ts';

/** What the hub refused about one field ("/target/to/0" counts for "target.to"); undefined when nothing. */
export function refusedAt(error: unknown, path: string): string | undefined {
  if (!(error instanceof ApiError)) return undefined;
  const pointer = `/${path.replaceAll('.', '/')}`;
  const found = (error.problem?.errors ?? []).find(
    (entry) => entry.path === pointer || entry.path.startsWith(`${pointer}/`),
  );
  return found?.message;
}
