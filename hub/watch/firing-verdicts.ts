import type { Archive, FiringRow } from '../archive/types.ts';
import type { VerdictDraft, VerdictRow } from '../archive/verdict-types.ts';
import type { FiringJudgement } from '../contract/firing.ts';
import type { JudgedWhy } from '../contract/firing-record.ts';
import type { LoadPiece } from '../contract/load.ts';
import type { RouteHeat } from '../contract/route-template.ts';
import { PhysicsError } from '../physics/errors.ts';
import { requireComposition } from '../physics/steel/composition.ts';
import { ownSteel } from '../physics/steel/own-steel.ts';
import type { PlanPiece, PlanSteel } from '../planning/types.ts';
import { judgePieces, RECORD_VERSION } from '../record/judge.ts';
import type { JudgedPiece, RecordedPiece } from '../record/types.ts';
import { CurveGatherer } from './firing-curves.ts';
import { caseOf, FiringTrack, type TrackParts } from './firing-track.ts';
import { likeness } from './other-bodies.ts';
import { type SteelBook, steelBook, steelOfOwn } from './steel-book.ts';

/** Verdicts on the pieces of a firing: judged with it in one replay, and kept with what earlier rules said. */

export interface JudgedFiring {
  readonly judgement: FiringJudgement;
  readonly pieces: readonly JudgedPiece[];
}

/** A firing that is over, judged whole from the archive: its segments, and what each piece went through. */
export function judgeWhole(archive: Archive, parts: TrackParts): JudgedFiring {
  const row = parts.row();
  const gatherer = new CurveGatherer(caseOf(parts));
  const track = new FiringTrack(parts, (state) => gatherer.see(state));
  track.advance(row.endedAt ?? row.startedAt);
  const judgement = track.judgement();
  const book = steelBook(archive);
  const pieces = judgePieces({
    status: row.status,
    schedule: row.schedule,
    segments: judgement.segments,
    curves: gatherer.curves(),
    pieces: row.pieces.map((piece) => recordedPiece(book, piece)),
  });
  return { judgement, pieces };
}

/**
 * Keeps what was judged. The row of the newest rules is replaced as long as no verdict changes under them; where one
 * does, or the rules are others, the old row stays beside the new.
 */
export function keepVerdict(
  archive: Archive,
  before: FiringRow,
  judged: JudgedFiring,
  said: { readonly why: JudgedWhy; readonly now: number },
): void {
  const { judgement, pieces } = judged;
  const draft: VerdictDraft = {
    judgedAt: said.now,
    judgeVersion: judgement.judgeVersion,
    recordVersion: RECORD_VERSION,
    why: said.why,
    verdict: judgement.verdict,
    pieces,
  };
  const [newest] = archive.firingVerdicts(before.id);
  if (newest === undefined) keepUnrecorded(archive, before, judgement.judgeVersion);
  const replace = newest !== undefined && saysTheSame(newest, draft);
  archive.saveFiringVerdict(before.id, { ...draft, why: replace ? newest.why : said.why }, replace);
}

/** The verdict of a firing that was judged before verdicts were kept apart: it would be lost with the next. */
function keepUnrecorded(archive: Archive, { id, judgement }: FiringRow, judgeVersion: string): void {
  if (judgement === null || judgement.verdict === 'pending' || judgement.judgeVersion === judgeVersion)
    return;
  const { judgedTo, verdict } = judgement;
  const old = { judgedAt: judgedTo, judgeVersion: judgement.judgeVersion, recordVersion: '', verdict };
  archive.saveFiringVerdict(id, { ...old, why: 'ended', pieces: [] }, false);
}

function saysTheSame(row: VerdictRow, draft: VerdictDraft): boolean {
  if (row.judgeVersion !== draft.judgeVersion || row.recordVersion !== draft.recordVersion) return false;
  const verdicts = (pieces: readonly { pieceId: string; verdict: string }[]) =>
    pieces.map(({ pieceId, verdict }) => `${pieceId} ${verdict}`).join();
  return row.verdict === draft.verdict && verdicts(judgedPieces(row)) === verdicts(draft.pieces);
}

/** The pieces of a row as they were judged: this file wrote them. */
export function judgedPieces(row: VerdictRow): readonly JudgedPiece[] {
  return row.pieces as readonly JudgedPiece[];
}

function recordedPiece(book: SteelBook, piece: LoadPiece): RecordedPiece {
  const { pieceId, mark } = piece;
  return { pieceId, mark, plan: planOf(book, piece), likeness: likeness(piece) };
}

/** The step that an austenitising is for is hardening: a route that only austenitises does not exist. */
function heatOf(step: LoadPiece['step']): RouteHeat | null {
  return step === 'austenitise' ? 'harden' : step;
}

function planOf(book: SteelBook, piece: LoadPiece): PlanPiece | null {
  const { shape, thicknessMm } = piece.section;
  try {
    return {
      id: piece.pieceId,
      mark: piece.mark,
      steel: planSteel(book, piece.steel),
      shape: shape === 'cylinder' ? 'bar' : shape,
      thicknessMm,
      step: heatOf(piece.step),
    };
  } catch (fault) {
    if (fault instanceof PhysicsError) return null;
    throw fault;
  }
}

/** The frozen composition, with the windows that are known for that steel today. */
function planSteel(book: SteelBook, { id, title, composition }: LoadPiece['steel']): PlanSteel {
  const frozen = requireComposition(composition);
  const known = id === null ? null : book.find(id);
  if (known?.origin === 'own') {
    const own = steelOfOwn({ ...known.own, name: title, composition });
    return { ...own, quench: null, notRecommended: [] };
  }
  const grade = known?.grade ?? null;
  const steel = ownSteel({ id: id ?? '', title, composition: frozen, ...(grade === null ? {} : { grade }) });
  return { ...steel, quench: grade?.quench ?? null, notRecommended: grade?.notRecommended ?? [] };
}
