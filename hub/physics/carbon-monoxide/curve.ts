/**
 * What a row of ppm readings says about the time between them.
 *
 * A reading is believed until the next comes, but no longer than `longestHoldMs`;
 * what is left over is a gap. A gap is never filled with zero: silence of a
 * sensor is no clean air. It is filled as the caller states, or stays unknown.
 */
import { PhysicsError, requireRange } from '../errors.ts';

/** Epoch ms UTC; ppm 0 to 1e6. Below zero (a drifted sensor) counts as zero and never lowers a sum. */
export interface PpmSample {
  readonly atMs: number;
  readonly ppm: number;
}

/**
 * What stands in a gap.
 * - `unknown`: nothing; the answer says that it does not know
 * - `hold`: the last level
 * - `highest`: the highest level since the start
 * - `level`: a stated worst case, or the last level where that was higher
 */
export type GapFill =
  | { readonly kind: 'unknown' }
  | { readonly kind: 'hold' }
  | { readonly kind: 'highest' }
  | { readonly kind: 'level'; readonly ppm: number };

export interface CurveRules {
  /** How long a reading is believed, ms, above 0. */
  readonly longestHoldMs: number;
  readonly gap: GapFill;
}

/** Five minutes; gaps hold the last level, and every answer says how much of it is held. */
export const USUAL_CURVE_RULES: CurveRules = {
  longestHoldMs: 300_000,
  gap: { kind: 'hold' },
};

/** Time at one level. `ppm` is null where nobody knows; `measured` is false in a gap. */
export interface Stretch {
  readonly fromMs: number;
  readonly toMs: number;
  readonly ppm: number | null;
  readonly measured: boolean;
}

/** How far a curve has been followed. */
export interface CurveState {
  readonly startMs: number;
  readonly atMs: number;
  readonly last: PpmSample | null;
  /** Highest level since the start, 0 before the first reading. */
  readonly highestPpm: number;
}

/** A new reading, or (`ppm` null) the news that time has passed without one. */
export interface CurveNews {
  readonly atMs: number;
  readonly ppm: number | null;
}

export function startCurve(startMs: number): CurveState {
  return { startMs, atMs: startMs, last: null, highestPpm: 0 };
}

/**
 * Refuses news that cannot follow.
 *
 * @throws PhysicsError `bad-input` when time runs back, `out-of-range` for a level outside -1000 to 1e6 ppm
 */
export function requireNews(state: CurveState, news: CurveNews): void {
  if (!(news.atMs >= state.atMs)) {
    throw new PhysicsError('bad-input', `time runs back from ${state.atMs} to ${news.atMs}`, { ...news });
  }
  if (news.ppm !== null) requireRange('Carbon monoxide', news.ppm, -1000, 1e6, 'ppm');
}

/** The state after the news. Levels below zero become zero. */
export function afterNews(state: CurveState, news: CurveNews): CurveState {
  if (news.ppm === null) return { ...state, atMs: news.atMs };
  const ppm = Math.max(0, news.ppm);
  const last = { atMs: news.atMs, ppm };
  return { ...state, atMs: news.atMs, last, highestPpm: Math.max(state.highestPpm, ppm) };
}

/**
 * The time between the state and the news: at most one measured stretch, then at most one gap.
 *
 * The earlier reading stands until the next, not a straight line between them: so ticks in between
 * change nothing, and a replay without them gives what the live run gave.
 */
export function stretchesUntil(state: CurveState, news: CurveNews, rules: CurveRules): Stretch[] {
  const { last, atMs: fromMs } = state;
  const believedMs =
    last === null ? fromMs : Math.min(news.atMs, Math.max(fromMs, last.atMs + rules.longestHoldMs));
  const stretches: Stretch[] = [];
  if (last !== null && believedMs > fromMs) {
    stretches.push({ fromMs, toMs: believedMs, ppm: last.ppm, measured: true });
  }
  if (news.atMs > believedMs) {
    stretches.push({ fromMs: believedMs, toMs: news.atMs, ppm: gapPpm(state, rules.gap), measured: false });
  }
  return stretches;
}

function gapPpm({ last, highestPpm }: CurveState, gap: GapFill): number | null {
  switch (gap.kind) {
    case 'unknown':
      return null;
    case 'hold':
      return last?.ppm ?? null;
    case 'highest':
      return last === null ? null : highestPpm;
    case 'level':
      return Math.max(gap.ppm, last?.ppm ?? 0);
    default:
      return gap satisfies never;
  }
}

/**
 * Refuses rules that mean nothing.
 *
 * @throws PhysicsError `out-of-range`
 */
export function requireCurveRules(rules: CurveRules): CurveRules {
  requireRange('Longest hold', rules.longestHoldMs, 1, 86_400_000, 'ms');
  if (rules.gap.kind === 'level') requireRange('Level in gaps', rules.gap.ppm, 0, 1e6, 'ppm');
  return rules;
}
