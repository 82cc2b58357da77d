import { statSync } from 'node:fs';
import { airPart } from './air.ts';
import { alarmPart } from './alarms.ts';
import { bindingPart } from './bindings.ts';
import { certificatePart } from './certificates.ts';
import { channelPart } from './channels.ts';
import { guarded, makeContext } from './context.ts';
import { IN_MEMORY, type OpenDatabase } from './database.ts';
import { firingPart } from './firings.ts';
import { furnacePart } from './furnaces.ts';
import { gasPart } from './gas.ts';
import { hotDayPart } from './hot-days.ts';
import { intakePart } from './intake.ts';
import { nodePart } from './nodes.ts';
import { notePart } from './notes.ts';
import { notifyPart } from './notify.ts';
import { observationPart } from './observations.ts';
import { ownSteelPart } from './own-steels.ts';
import { piecePart } from './pieces.ts';
import { readingPart } from './readings.ts';
import { refusalPart } from './refusals.ts';
import { reviewPart } from './review.ts';
import { routeTemplatePart } from './route-templates.ts';
import { schedulePart } from './schedules.ts';
import { shopPart } from './shop.ts';
import type { Archive } from './types.ts';
import { verdictPart } from './verdicts.ts';

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

/** The archive over an open database: each part behind the one place where faults get their code. */
export function assemble(open: OpenDatabase, options: ArchiveOptions): Archive {
  const context = makeContext(open.db, options.ids);
  const hotDays = hotDayPart(context);
  const readings = readingPart(context, hotDays.noticed);
  const nodes = nodePart(context);
  const channels = channelPart(context, nodes, readings);
  const refusals = refusalPart(context);
  return {
    ...guarded(shopPart(context, options.simulated, options.now)),
    ...guarded(furnacePart(context)),
    ...guarded(nodes),
    ...guarded(channels),
    ...guarded(bindingPart(context)),
    ...guarded(schedulePart(context)),
    ...guarded(ownSteelPart(context)),
    ...guarded(certificatePart(context)),
    ...guarded(firingPart(context)),
    ...guarded(reviewPart(context)),
    ...guarded(verdictPart(context)),
    ...guarded(notePart(context)),
    ...guarded(notifyPart(context)),
    ...guarded(piecePart(context)),
    ...guarded(observationPart(context)),
    ...guarded(routeTemplatePart(context, options.now)),
    ...guarded(airPart(context)),
    ...guarded(gasPart(context)),
    ...guarded(alarmPart(context)),
    ...guarded(hotDays.store),
    ...guarded(refusals),
    ...guarded(intakePart(context, { nodes, channels, readings, refusals })),
    readings: guarded(readings.store),
    ...guarded({ alive: aliveness(open, options.path), close: open.close }),
  };
}

/** Alive: SQLite answers, and the file is still the one that was opened (not deleted, not replaced). */
function aliveness({ db }: OpenDatabase, path: string): () => boolean {
  const probe = db.prepare('SELECT count(*) FROM shop').pluck();
  const fileId = () => (path === IN_MEMORY ? 0n : statSync(path, { bigint: true }).ino);
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
