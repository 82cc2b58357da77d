import type { FiringVerdict } from '../contract/firing.ts';
import type { Probe } from '../contract/probe.ts';
import { type Context, fromJson } from './context.ts';
import type { FrozenProbe, VerdictDraft, VerdictRow, VerdictStore } from './verdict-types.ts';

/** A firing whose readings keep changing keeps its newest verdicts; earlier ones than these are let go. */
const MOST_VERDICTS = 40;

type Stored = Omit<VerdictRow, 'pieces'> & { readonly pieces: string };
type StoredProbe = Omit<FrozenProbe, 'probe'> & { readonly probe: string | null };

/** Verdicts by each set of rules, and the probes that were in force. */
export function verdictPart({ db, write }: Context): VerdictStore {
  const statements = verdictStatements(db);
  const { all, insert, newest, remove, trim, piece, byOthers, freeze, frozen } = statements;

  function save(firingId: string, verdict: VerdictDraft, replace: boolean): void {
    const last = replace ? newest.get(firingId) : undefined;
    if (last !== undefined) remove.run(last);
    const verdicts = Object.fromEntries(verdict.pieces.map((each) => [each.pieceId, each.verdict]));
    insert.run({
      ...verdict,
      firingId,
      verdicts: JSON.stringify(verdicts),
      pieces: JSON.stringify(verdict.pieces),
    });
    trim.run({ firingId, most: MOST_VERDICTS });
  }

  return {
    firingVerdicts: (firingId) =>
      all.all(firingId).map((row) => ({ ...row, pieces: fromJson<unknown[]>(row.pieces) })),
    saveFiringVerdict: (firingId, verdict, replace) => write(() => save(firingId, verdict, replace)),
    pieceVerdict(firingId, pieceId) {
      const verdicts = piece.get(firingId);
      if (verdicts === undefined) return null;
      return fromJson<Record<string, FiringVerdict>>(verdicts)[pieceId] ?? null;
    },
    firingsJudgedByOthers: (judge, record, limit) => byOthers.all(judge, record, limit),
    freezeProbes: (firingId, probes) =>
      write(() => {
        for (const { channel, frozenAt, probe } of probes) {
          freeze.run(firingId, channel, frozenAt, probe === null ? null : JSON.stringify(probe));
        }
      }),
    frozenProbes: (firingId) =>
      frozen.all(firingId).map((row) => ({
        ...row,
        probe: row.probe === null ? null : fromJson<Probe>(row.probe),
      })),
  };
}

function verdictStatements(db: Context['db']) {
  return {
    all: db.prepare<[string], Stored>(
      `SELECT judged_at AS judgedAt, judge_version AS judgeVersion, record_version AS recordVersion, why, verdict,
         pieces FROM firing_verdicts WHERE firing_id = ? ORDER BY seq DESC`,
    ),
    insert: db.prepare(
      `INSERT INTO firing_verdicts (firing_id, judged_at, judge_version, record_version, why, verdict, verdicts, pieces)
       VALUES (@firingId, @judgedAt, @judgeVersion, @recordVersion, @why, @verdict, @verdicts, @pieces)`,
    ),
    newest: db
      .prepare<[string], number>(
        'SELECT max(seq) FROM firing_verdicts WHERE firing_id = ? HAVING max(seq) > 0',
      )
      .pluck(),
    remove: db.prepare<[number]>('DELETE FROM firing_verdicts WHERE seq = ?'),
    trim: db.prepare(
      `DELETE FROM firing_verdicts WHERE firing_id = @firingId AND seq NOT IN
         (SELECT seq FROM firing_verdicts WHERE firing_id = @firingId ORDER BY seq DESC LIMIT @most)`,
    ),
    piece: db
      .prepare<[string], string>(
        'SELECT verdicts FROM firing_verdicts WHERE firing_id = ? ORDER BY seq DESC LIMIT 1',
      )
      .pluck(),
    byOthers: db
      .prepare<[string, string, number], string>(
        `SELECT id FROM firings f WHERE status <> 'running' AND NOT EXISTS
           (SELECT 1 FROM firing_verdicts v WHERE v.firing_id = f.id AND v.judge_version = ? AND v.record_version = ?)
         ORDER BY started_at DESC LIMIT ?`,
      )
      .pluck(),
    freeze: db.prepare(
      'INSERT OR IGNORE INTO firing_probes (firing_id, channel_id, frozen_at, probe) VALUES (?, ?, ?, ?)',
    ),
    frozen: db.prepare<[string], StoredProbe>(
      `SELECT channel_id AS channel, frozen_at AS frozenAt, probe FROM firing_probes WHERE firing_id = ?
       ORDER BY channel_id`,
    ),
  };
}
