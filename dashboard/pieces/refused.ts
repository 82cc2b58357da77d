import { ApiError } from '../api/error.ts';

/** What the hub refuses about one field, so that it stands beside it. Pure. */

/** A refusal that names no path, by its code: the field that would mend it. */
const FIELD_OF_CODE: Readonly<Record<string, string>> = { 'already-exists': 'mark' };

/** `path` as a form writes it: "section.thicknessMm". Undefined: nothing is wrong there. */
export function refusedAt(error: unknown, path: string): string | undefined {
  if (!(error instanceof ApiError)) return undefined;
  const said = error.fieldError(`/${path.replaceAll('.', '/')}`);
  if (said !== undefined) return said;
  return FIELD_OF_CODE[error.code] === path ? error.message : undefined;
}
