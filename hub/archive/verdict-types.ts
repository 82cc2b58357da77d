import type { FiringVerdict } from '../contract/firing.ts';
import type { JudgedWhy } from '../contract/firing-record.ts';
import type { Probe } from '../contract/probe.ts';

/** What the archive keeps of verdicts on pieces. The document of a piece is kept as it is given. */
export interface VerdictDraft {
  readonly judgedAt: number;
  readonly judgeVersion: string;
  readonly recordVersion: string;
  readonly why: JudgedWhy;
  readonly verdict: FiringVerdict;
  /** Each piece as it was judged; `pieceId` and `verdict` are looked at here, the rest is kept. */
  readonly pieces: readonly { readonly pieceId: string; readonly verdict: FiringVerdict }[];
}

/** One verdict as it was kept. `pieces` is what was given, to be read by whoever wrote it. */
export interface VerdictRow extends Omit<VerdictDraft, 'pieces'> {
  readonly pieces: readonly unknown[];
}

export interface FrozenProbe {
  readonly channel: string;
  readonly frozenAt: number;
  readonly probe: Probe | null;
}

export interface VerdictStore {
  /** The newest first. */
  firingVerdicts(firingId: string): readonly VerdictRow[];
  /** Takes the place of the newest row when `replace` says so, else is added to the rows. */
  saveFiringVerdict(firingId: string, verdict: VerdictDraft, replace: boolean): void;
  /** What was said last of this piece in this firing; null: nothing. */
  pieceVerdict(firingId: string, pieceId: string): FiringVerdict | null;
  /**
   * Ids of firings that are over and whose newest verdict, if there is one, is by other rules: the newest first.
   */
  firingsJudgedByOthers(judgeVersion: string, recordVersion: string, limit: number): readonly string[];
  freezeProbes(firingId: string, probes: readonly FrozenProbe[]): void;
  /** Empty for a firing that was begun before probes were frozen. */
  frozenProbes(firingId: string): readonly FrozenProbe[];
}
