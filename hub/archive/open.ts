import { statSync } from 'node:fs';
import { alarmPart } from './alarms.ts';
import { bindingPart } from './bindings.ts';
import { channelPart } from './channels.ts';
import { guarded, makeContext } from './context.ts';
import { IN_MEMORY, type OpenDatabase, openDatabase } from './database.ts';
import { asArchiveError } from './errors.ts';
import { firingPart } from './firings.ts';
import { furnacePart } from './furnaces.ts';
import { intakePart } from './intake.ts';
import { nodePart } from './nodes.ts';
import { notePart } from './notes.ts';
import { readingPart } from './readings.ts';
import { refusalPart } from './refusals.ts';
import { schedulePart } from './schedules.ts';
import { shopPart } from './shop.ts';
import type { Archive } from './types.ts';

export interface ArchiveOptions {
  /** The archive's file, made when there is none; `:memory:` keeps nothing. */
  readonly path: string;
  /** Makes ids that are unique across shops. */
  readonly ids: () => string;
  /** Whether this shop's readings come from a simulation; fixed at the first opening. */
  readonly simulated: boolean;
  /** The present instant, epoch ms. */
  readonly now: number;
}

/**
 * Opens or creates the archive. One hub at a time: a second opening of the same file is refused.
 *
 * @throws ArchiveError `not-an-archive`, `archive-too-new`, `sqlite-too-old`, `simulated-mismatch`,
 *   `archive-busy`, `disk`, `damaged`.
 */
export function openArchive({ path, ids, simulated, now }: ArchiveOptions): Archive {
  let open: OpenDatabase | null = null;
  try {
    open = openDatabase(path);
    return assemble(open, ids, simulated, now, path);
  } catch (thrown) {
    open?.close();
    throw asArchiveError(thrown);
  }
}

function assemble(
  open: OpenDatabase,
  ids: () => string,
  simulated: boolean,
  now: number,
  path: string,
): Archive {
  const context = makeContext(open.db, ids);
  const readings = readingPart(context);
  const nodes = nodePart(context);
  const channels = channelPart(context, nodes, readings);
  const refusals = refusalPart(context);
  return {
    ...guarded(shopPart(context, simulated, now)),
    ...guarded(furnacePart(context)),
    ...guarded(nodes),
    ...guarded(channels),
    ...guarded(bindingPart(context)),
    ...guarded(schedulePart(context)),
    ...guarded(firingPart(context)),
    ...guarded(notePart(context)),
    ...guarded(alarmPart(context)),
    ...guarded(refusals),
    ...guarded(intakePart(context, { nodes, channels, readings, refusals })),
    readings: guarded(readings.store),
    alive: aliveness(open, path),
    close: guarded({ close: open.close }).close,
  };
}

/** Alive: SQLite answers, and the file is still the one that was opened (not deleted, not replaced). */
function aliveness({ db }: OpenDatabase, path: string): () => boolean {
  const probe = db.prepare('SELECT count(*) FROM shop').pluck();
  const fileId = () => (path === IN_MEMORY ? 0 : statSync(path, { bigint: true }).ino);
  const opened = fileId();
  return () => {
    try {
      return probe.get() === 1 && fileId() === opened;
    } catch {
      // Whatever went wrong, the answer to "does it answer?" is no.
      return false;
    }
  };
}
