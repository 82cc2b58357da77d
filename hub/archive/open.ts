import { type ArchiveOptions, assemble } from './assemble.ts';
import { type OpenDatabase, openDatabase } from './database.ts';
import { asArchiveError } from './errors.ts';
import type { Archive } from './types.ts';

/**
 * Opens or creates the archive. One hub at a time: a second opening of the same file is refused.
 *
 * @throws ArchiveError `not-an-archive`, `archive-too-new`, `sqlite-too-old`, `simulated-mismatch`,
 *   `archive-busy`, `disk`, `damaged`.
 */
export function openArchive(options: ArchiveOptions): Archive {
  let open: OpenDatabase | null = null;
  try {
    open = openDatabase(options.path);
    return assemble(open, options);
  } catch (thrown) {
    open?.close();
    throw asArchiveError(thrown);
  }
}
