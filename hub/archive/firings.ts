import type { Firing } from '../contract/firing.ts';
import type { LoadPiece } from '../contract/load.ts';
import type { Schedule } from '../contract/schedule.ts';
import { type Context, fromJson, mustChange } from './context.ts';
import { ArchiveError } from './errors.ts';
import { firingWords } from './firing-search.ts';
import { firingStatements, type StoredFiring } from './firing-statements.ts';
import { summaryPart } from './firing-summaries.ts';
import { judgementPart } from './judgements.ts';
import { loadPart } from './loads.ts';
import type { Archive, FiringCourse, FiringRow } from './types.ts';

type FiringPart = Pick<
  Archive,
  | 'firings'
  | 'firing'
  | 'runningFirings'
  | 'finishedFiringsWatching'
  | 'createFiring'
  | 'saveFiring'
  | 'saveJudgement'
  | 'firingCourse'
  | 'confirmSegment'
  | 'deleteFiring'
  | 'saveLoad'
  | 'firingsOfPiece'
>;

export function firingPart(context: Context): FiringPart {
  const { ids, write } = context;
  const judgements = judgementPart(context);
  const statements = firingStatements(context);
  const loads = loadPart(context);

  function toCourse(row: StoredFiring): FiringCourse {
    return {
      ...row,
      simulated: row.simulated === 1,
      schedule: fromJson<Schedule>(row.schedule),
      watchedChannels: statements.watched.all(row.id),
      pieces: loads.read(row.id),
      confirmations: statements.confirmations.all(row.id),
    };
  }

  function toFiring(row: StoredFiring): FiringRow {
    return { ...toCourse(row), judgement: judgements.read(row.id) };
  }

  function firingCourse(id: string): FiringCourse | null {
    const row = statements.one.get(id);
    return row ? toCourse(row) : null;
  }

  function firing(id: string): FiringRow | null {
    const row = statements.one.get(id);
    return row ? toFiring(row) : null;
  }

  function createFiring(draft: Omit<Firing, 'id'>): FiringRow {
    const made: Firing = { ...draft, id: ids() };
    statements.insert.run({
      ...made,
      simulated: Number(made.simulated),
      schedule: JSON.stringify(made.schedule),
      scheduleName: made.schedule.name,
      search: firingWords(made),
    });
    made.watchedChannels.forEach((channel, position) => {
      statements.watch.run(made.id, position, channel);
    });
    loads.replace(made.id, made.pieces);
    return { ...made, judgement: null, confirmations: [] };
  }

  /** Alarms about the firing itself go with it; air and node alarms stay in the shop's record. */
  function deleteFiring(id: string): boolean {
    if (statements.one.get(id)?.status === 'running') {
      throw new ArchiveError('conflict', `firing "${id}" is running: finish it before deleting it`);
    }
    statements.removeAlarms.run({ id });
    statements.releaseAlarms.run(id);
    return statements.remove.run(id).changes > 0;
  }

  function saveLoad(firingId: string, pieces: readonly LoadPiece[]): void {
    loads.replace(firingId, pieces);
    const held = firing(firingId);
    if (held) statements.reword.run(firingWords(held), firingId);
  }

  return {
    ...summaryPart(context),
    firing,
    firingCourse,
    runningFirings: () => statements.running.all().map(toFiring),
    finishedFiringsWatching: (channelId, from, to) => statements.overWatching.all({ channelId, from, to }),
    createFiring: (draft) => write(() => createFiring(draft)),
    saveFiring(changed) {
      const row = { ...changed, search: firingWords(changed) };
      mustChange(statements.update.run(row).changes, 'firing', changed.id);
    },
    saveJudgement: (firingId, judgement) => write(() => judgements.save(firingId, judgement)),
    confirmSegment: (firingId, segment, at) => void statements.confirm.run(firingId, segment, at),
    deleteFiring: (id) => write(() => deleteFiring(id)),
    saveLoad: (firingId, pieces) => write(() => saveLoad(firingId, pieces)),
    firingsOfPiece: loads.firingsOfPiece,
  };
}
