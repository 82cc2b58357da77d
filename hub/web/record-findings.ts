import type { Archive } from '../archive/types.ts';
import type { VerdictRow } from '../archive/verdict-types.ts';
import type { FiringDetail } from '../contract/firing.ts';
import type { EarlierVerdict, FiringFindings, ProbeInForce, RecordAir } from '../contract/firing-record.ts';
import type { RecordPiece } from '../contract/firing-record-piece.ts';
import type { DisplayUnit } from '../contract/schedule.ts';
import type { Channel } from '../contract/shop.ts';
import type { RecordWords } from '../contract/words/say-record.ts';
import { words } from '../contract/words/words.ts';
import { recordAir } from '../record/air.ts';
import { RECORD_VERSION } from '../record/judge.ts';
import type { JudgedPiece } from '../record/types.ts';
import { judgedPieces } from '../watch/firing-verdicts.ts';
import type { Watch } from '../watch/watch.ts';
import { recordUncertainty } from './record-uncertainty.ts';

/** What came of a firing, without its readings: verdicts with their words, probes in force, ±, carbon monoxide. */

interface Known {
  readonly archive: Archive;
  readonly watch: Watch;
  readonly now: number;
}

export function firingFindings({ archive, watch, now }: Known, firing: FiringDetail): FiringFindings {
  const { settings } = archive.shop();
  const say = words(settings.language).record;
  const probes = probesInForce(archive, firing);
  const verdicts = verdictsOf({ archive, watch, now }, firing);
  const [newest, ...older] = verdicts;
  return {
    firingId: firing.id,
    judged: newest === undefined ? null : judgedBy(newest),
    pieces: (newest === undefined ? [] : judgedPieces(newest)).map((piece) =>
      wordedPiece(piece, say, firing.schedule.displayUnit),
    ),
    earlier: older.map((row, i) => earlier(row, verdicts[i] ?? row, say, firing.schedule.displayUnit)),
    probes,
    uncertainty: recordUncertainty(firing, channelsInForce(archive, probes), settings.displayUnit),
    air: airOf(archive, firing, now),
    gas: watch.gas(now).use.used(firing, now),
  };
}

/** The newest first. A firing that no rules of today have judged is judged now, and nothing of it is kept. */
function verdictsOf({ archive, watch, now }: Known, firing: FiringDetail): readonly VerdictRow[] {
  if (firing.status === 'running') return [];
  const kept = archive.firingVerdicts(firing.id);
  if (kept.length > 0) return kept;
  const { judgement, pieces } = watch.firings.judgedWhole(firing.id);
  const { judgeVersion, verdict } = judgement;
  return [
    { judgedAt: now, judgeVersion, recordVersion: RECORD_VERSION, why: 'newer-rules', verdict, pieces },
  ];
}

function judgedBy({ pieces: _, ...row }: VerdictRow): NonNullable<FiringFindings['judged']> {
  return row;
}

/** An old verdict, told by why the one after it came. */
function earlier(row: VerdictRow, after: VerdictRow, say: RecordWords, unit: DisplayUnit): EarlierVerdict {
  const rules = rulesOf(after);
  return {
    ...judgedBy(row),
    pieces: judgedPieces(row).map((piece) => {
      const { pieceId, mark, verdict } = piece;
      return { pieceId, mark, verdict, text: verdictText(piece, say, unit) };
    }),
    text: say.judgedAgain(after.why, rules, row.verdict),
  };
}

function rulesOf({ judgeVersion, recordVersion }: VerdictRow): string {
  return recordVersion === '' ? judgeVersion : `${judgeVersion}/${recordVersion}`;
}

function wordedPiece(piece: JudgedPiece, say: RecordWords, unit: DisplayUnit): RecordPiece {
  return {
    ...piece,
    text: verdictText(piece, say, unit),
    reasons: piece.reasons.map((reason) => ({
      ...reason,
      text: say.reason(reason.code, reason.params, unit),
    })),
    figures: piece.figures.map((figure) => ({
      ...figure,
      text: say.figure(figure),
      cautions: figure.cautions.map((code) => ({ code, text: say.caution(code) })),
      noClaim: figure.noClaim === null ? null : { code: figure.noClaim, text: say.noClaim(figure.noClaim) },
    })),
  };
}

/** The gravest reason stands for the verdict. */
function verdictText({ verdict, reasons }: JudgedPiece, say: RecordWords, unit: DisplayUnit): string {
  const [first] = reasons;
  return say.verdict(verdict, first === undefined ? null : say.reason(first.code, first.params, unit));
}

/** As they were written down with the firing; for one begun before that was done, as they are set up now. */
function probesInForce(archive: Archive, firing: FiringDetail): ProbeInForce[] {
  const frozen = archive.frozenProbes(firing.id);
  return watchedOf(archive, firing).map(({ id, label, name, probe }) => {
    const kept = frozen.find(({ channel }) => channel === id);
    const shown = label === '' ? name : label;
    if (kept === undefined) return { channel: id, label: shown, probe, frozenAt: null };
    return { channel: id, label: shown, probe: kept.probe, frozenAt: kept.frozenAt };
  });
}

function watchedOf(archive: Archive, { watchedChannels }: FiringDetail): Channel[] {
  const channels = archive.channels();
  return watchedChannels.flatMap((id) => channels.find((channel) => channel.id === id) ?? []);
}

/** The watched channels, each with the probe that was in force. */
function channelsInForce(archive: Archive, probes: readonly ProbeInForce[]): Channel[] {
  return archive.channels().flatMap((channel) => {
    const inForce = probes.find((each) => each.channel === channel.id);
    return inForce === undefined ? [] : [{ ...channel, probe: inForce.probe }];
  });
}

function airOf(archive: Archive, firing: FiringDetail, now: number): RecordAir[] {
  const to = firing.endedAt ?? now;
  return archive
    .channels()
    .filter(({ quantity, role, adopted }) => quantity === 'carbon-monoxide' && role === 'room-air' && adopted)
    .map(({ id, label, name, staleAfterSeconds }) =>
      recordAir({
        channel: id,
        label: label === '' ? name : label,
        from: firing.startedAt,
        to,
        readings: archive.readings.range(id, firing.startedAt, to),
        staleAfterSeconds,
      }),
    );
}
